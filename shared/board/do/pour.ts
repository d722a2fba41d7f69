// Pour a day's milk into jars: first a guess how many jars it takes, then cup by cup, or all at once.
import { decimalText } from '../../quantity/show.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { choicesAround } from './choicesAround.ts';
import { textsOf, type Told } from './told.ts';

/** One doe's day, to be poured. */
export interface PourRound {
  readonly name: string;
  readonly doe: string;
  /** Dips of the cup until the pail is empty. */
  readonly dips: number;
  /** The day's milk in its unit. */
  readonly amount: string;
  readonly n: number;
  /** Jars that it fills, to the quarter, as they are written; whether that is exact. */
  readonly jarsText: string;
  readonly exact: boolean;
  /** Jars that are touched by milk. */
  readonly needed: number;
}

/** What can be poured. */
export interface PourPlan {
  readonly dip_mL: number;
  readonly jar_mL: number;
  /** The key of the unit under `barn.unit`. */
  readonly unit: 'cup' | 'L';
  /** The doe in the middle comes first. */
  readonly rounds: readonly PourRound[];
}

/** A round and the numbers of jars to guess from. Each next turn takes the next doe; the seed picks the first. */
export function pourRound(
  plan: PourPlan,
  seed: number,
  turn: number,
): { readonly round: PourRound; readonly choices: readonly number[] } {
  const round = chanceOf(`pour/${seed}`).shuffle(plan.rounds)[turn % plan.rounds.length] as PourRound;
  return { round, choices: choicesAround(chanceOf(`pour/${seed}/${turn}`), round.needed, 1) };
}

/** How full each of some jars is once a number of dips is poured, 0..1, left to right. */
export function jarFills(plan: PourPlan, dipped: number, jars: number): number[] {
  const poured = (dipped * plan.dip_mL) / plan.jar_mL;
  return Array.from({ length: jars }, (_, place) => Math.min(1, Math.max(0, poured - place)));
}

/** What the board says once all is poured: whether it was so, and why. */
export function pourVerdict(words: Words, plan: PourPlan, round: PourRound, guess: number): Told {
  const found = guess === round.needed ? 'right' : guess < round.needed ? 'more' : 'fewer';
  const slots = pourSlots(words, plan, round);
  const dips = plan.jar_mL / plan.dip_mL;
  const even = Math.abs(dips - Math.round(dips)) < 1e-9;
  const more = say(words, `barn.do.pour.why.${even ? 'even' : 'uneven'}`, {
    ...slots,
    dips: Math.round(dips),
    poured: round.dips,
    share: shareText(round.dips / dips, words.lang),
  });
  return { right: found === 'right', text: say(words, `barn.do.pour.${found}`, slots), more };
}

/** Everything that this page may say, so that it can be recorded beforehand. */
export function pourSays(words: Words, plan: PourPlan): string[] {
  return [
    ...plan.rounds.map((round) => say(words, 'barn.do.pour.ask', pourSlots(words, plan, round))),
    say(words, 'barn.do.pour.pour'),
    ...plan.rounds.flatMap((round) => {
      const guesses = [round.needed - 1, round.needed, round.needed + 1];
      return textsOf(guesses.map((guess) => pourVerdict(words, plan, round, guess)));
    }),
  ];
}

/** The slots of this page's texts. */
export function pourSlots(words: Words, plan: PourPlan, round: PourRound) {
  return {
    name: round.name,
    n: round.needed,
    amount: `${round.amount} ${say(words, `barn.unit.${plan.unit}`, { n: Math.max(1, round.n) })}`,
    jars: round.exact ? round.jarsText : say(words, 'barn.do.pour.about', { jars: round.jarsText }),
  };
}

// Three decimals hold every eighth; what needs more is told as near.
function shareText(share: number, lang: string): string {
  const places = [0, 1, 2, 3].find((one) => Math.abs(share - Number(share.toFixed(one))) < 1e-9);
  return `${places === undefined ? '≈' : '='} ${decimalText(share, places ?? 2, lang)}`;
}
