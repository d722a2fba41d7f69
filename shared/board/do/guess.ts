// Guess, then see: whose pail held more at one milking, or how many cups one doe gave. Facts and reasons, no contest.
import type { DoeLook } from '../../drawing/doeLook.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { choicesAround } from './choicesAround.ts';
import { textsOf, type Told } from './told.ts';

/** A doe and her milk of one milking. */
export interface GuessDoe {
  readonly id: string;
  readonly name: string;
  readonly look: DoeLook;
  /** Her milk in parts of the unit: whole cups, or halves of a litre. */
  readonly parts: number;
}

/** Why one gave more than the other, as far as the book tells; `surprise` where the smaller doe gave more. */
export type GuessWhy = 'size' | 'surprise' | 'young' | 'later' | 'unknown';

/** One thing to guess: two does of one milking, or one doe. */
export interface GuessRound {
  readonly does: readonly [GuessDoe] | readonly [GuessDoe, GuessDoe];
  /** The day in words. */
  readonly day: string;
  readonly milking: 'am' | 'pm';
  readonly why: GuessWhy;
}

/** All that this week gives to guess. */
export interface GuessPlan {
  readonly unit: 'cup' | 'L';
  readonly perUnit: 1 | 2;
  /** The jar, in parts of the unit. */
  readonly jarParts: number;
  readonly rounds: readonly GuessRound[];
}

/** A round as it is shown: what there is to choose from, and which of them is right. Amounts are in parts. */
export interface GuessShown {
  readonly round: GuessRound;
  /** Ids of two does, or amounts in parts. */
  readonly choices: readonly (string | number)[];
  readonly right: string | number;
  /** Jars that are drawn for each doe, full or not. */
  readonly jars: number;
}

/** A round by its seed; each next turn takes another, until all have been. */
export function guessShown(plan: GuessPlan, seed: number, turn: number): GuessShown {
  const round = chanceOf(`guess/${seed}`).shuffle(plan.rounds)[turn % plan.rounds.length] as GuessRound;
  const [one, two] = round.does;
  if (two) {
    const jars = jarsFor(plan, Math.max(one.parts, two.parts));
    return { round, choices: [one.id, two.id], right: one.parts > two.parts ? one.id : two.id, jars };
  }
  const step = Math.max(1, Math.round(one.parts / 4));
  const choices = choicesAround(chanceOf(`guess/${seed}/${turn}`), one.parts, step);
  return { round, choices, right: one.parts, jars: jarsFor(plan, choices.at(-1) ?? one.parts) };
}

const jarsFor = (plan: GuessPlan, parts: number) => Math.max(1, Math.ceil(parts / plan.jarParts - 1e-9));

/** How full each of some jars is with so many parts, 0..1, left to right. */
export function fillsOf({ jarParts }: GuessPlan, parts: number, jars: number): number[] {
  return Array.from({ length: jars }, (_, place) => Math.min(1, Math.max(0, parts / jarParts - place)));
}

/** An amount with its unit, such as `8 cups`. */
export function partsText(words: Words, plan: GuessPlan, parts: number): string {
  const n = parts / plan.perUnit;
  // Half a liter is told in the singular.
  const half = Number.isInteger(n) ? '' : '½';
  const whole = half !== '' && n < 1 ? '' : Math.floor(n);
  return `${whole}${half} ${say(words, `barn.unit.${plan.unit}`, { n: Math.max(1, n) })}`;
}

/** What is asked in a round. */
export function guessAsk(words: Words, plan: GuessPlan, round: GuessRound): string {
  const when = `${round.day}, ${say(words, `barn.milking.${round.milking}`)}`;
  const [one, two] = round.does;
  return two
    ? say(words, 'barn.do.guess.two', { one: one.name, two: two.name, when })
    : say(words, `barn.do.guess.one.${plan.unit}`, { name: one.name, when });
}

/** What the board says after a guess: what was in the pails, and the reason as far as the book tells it. */
export function guessVerdict(
  words: Words,
  plan: GuessPlan,
  { round, right }: GuessShown,
  guess: string | number,
): Told {
  const [one, two] = round.does;
  const isRight = guess === right;
  if (!two) {
    const found = isRight ? 'right' : Number(guess) < one.parts ? 'more' : 'less';
    const slots = { name: one.name, amount: partsText(words, plan, one.parts) };
    const text = say(words, `barn.do.guess.found.${found}`, slots);
    return { right: isRight, text, more: say(words, 'barn.do.guess.alone', slots) };
  }
  const [low, high] = one.parts < two.parts ? [one, two] : [two, one];
  const slots = {
    low: low.name,
    high: high.name,
    more: partsText(words, plan, high.parts),
    less: partsText(words, plan, low.parts),
  };
  const found = say(words, `barn.do.guess.pails.${isRight ? 'right' : 'other'}`, slots);
  const reason = say(words, `barn.do.guess.why.${round.why}.short`, slots);
  const more = say(words, `barn.do.guess.why.${round.why}.more`, slots);
  return { right: isRight, text: `${found} ${reason}`, more };
}

/** Everything that this page may say. */
export function guessSays(words: Words, plan: GuessPlan): string[] {
  return plan.rounds.flatMap((round) => {
    const [one, two] = round.does;
    const right = two ? (one.parts > two.parts ? one.id : two.id) : one.parts;
    const guesses = two ? [one.id, two.id] : [one.parts - 1, one.parts, one.parts + 1];
    const told = guesses.map((guess) =>
      guessVerdict(words, plan, { round, choices: guesses, right, jars: 1 }, guess),
    );
    return [guessAsk(words, plan, round), ...textsOf(told)];
  });
}
