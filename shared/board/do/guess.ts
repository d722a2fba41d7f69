// Guess, then see: whose pail held more at one milking, or how many cups one doe gave. Facts and reasons, no contest.
import { doeBreed, doeLook, type DoeLook } from '../../drawing/doeLook.ts';
import type { DoeWeek, WeekMilking } from '../../herd/week.ts';
import { dateText, inParts, mixedText } from '../../quantity/show.ts';
import { UNIT_ML } from '../../quantity/units.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { dayUnit } from '../shown.ts';
import type { BoardInput } from '../types.ts';
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
  readonly date: string;
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

const MOST_PAIRS = 5;
const MOST_ALONE = 3;
const MOST_JARS = 3;
// Does of about the same weight do not differ by their size.
const MUCH_LIGHTER = 0.75;
const YOUNG_years = 3;
// A month and a half: about as long as milk rises after the kids are born (fact "peak-weeks": 28 to 56 days).
const MUCH_LATER_days = 45;

/** Pairs of the newest milking that two does have, and single does at their last one; null where nobody has milk. */
export function guessPlan(input: BoardInput): GuessPlan | null {
  const unit = dayUnit(input) === 'L' ? 'L' : 'cup';
  const perUnit = unit === 'L' ? 2 : 1;
  const jarParts = (input.jar_mL / UNIT_ML[unit].valueOf()) * perUnit;
  const seen = (doe: DoeWeek, row: WeekMilking) => {
    const { id, name, breed } = doe;
    return { id, name, look: doeLook(breed, id), parts: inParts(row.amount_mL, unit, perUnit) };
  };
  const fits = ({ parts }: GuessDoe) => parts > 0 && parts <= MOST_JARS * jarParts;
  const chance = chanceOf(`guess/${input.week.window?.to ?? ''}`);
  const alone = chance.shuffle(input.week.does).flatMap((doe): GuessRound[] => {
    const row = doe.milkings.at(-1);
    if (!row) return [];
    const one = seen(doe, row);
    return fits(one) ? [{ does: [one], date: row.date, milking: row.milking, why: 'unknown' }] : [];
  });
  const pairs = chance.shuffle(pairsOf(input)).flatMap(([first, second]): GuessRound[] => {
    const two = [seen(first.doe, first.row), seen(second.doe, second.row)] as const;
    // A pair that is shown alike has nothing to guess.
    if (!two.every(fits) || two[0].parts === two[1].parts) return [];
    const [low, high] = two[0].parts < two[1].parts ? [first.doe, second.doe] : [second.doe, first.doe];
    const { date, milking } = first.row;
    return [{ does: two, date, milking, why: whyOf(input, low, high) }];
  });
  const rounds = [...pairs.slice(0, MOST_PAIRS), ...alone.slice(0, MOST_ALONE)];
  return rounds.length === 0 ? null : { unit, perUnit, jarParts, rounds };
}

interface Milked {
  readonly doe: DoeWeek;
  readonly row: WeekMilking;
}

// Pairs of does at the newest milking that at least two does have a row of.
function pairsOf({ week }: BoardInput): [Milked, Milked][] {
  const rows = week.does.flatMap((doe) => doe.milkings.map((row): Milked => ({ doe, row })));
  const byMilking = Map.groupBy(rows, ({ row }) => `${row.date} ${row.milking}`);
  const shared = [...byMilking].filter(([, milked]) => milked.length > 1);
  const newest = shared.toSorted(([a], [b]) => a.localeCompare(b)).at(-1)?.[1] ?? [];
  return newest.flatMap((first, place) =>
    newest.slice(place + 1).map((second): [Milked, Milked] => [first, second]),
  );
}

function whyOf(input: BoardInput, low: DoeWeek, high: DoeWeek): GuessWhy {
  if (isSmaller(input, low, high)) return 'size';
  if (isSmaller(input, high, low)) return 'surprise';
  if (isYoung(input, low) && !isYoung(input, high)) return 'young';
  const [lowBorn, highBorn] = [lastKidding(input, low), lastKidding(input, high)];
  if (lowBorn !== null && highBorn !== null && highBorn - lowBorn >= MUCH_LATER_days) return 'later';
  return 'unknown';
}

// Nigerian Dwarf does are half as heavy as a Saanen (fact "breed-size"); else the farm's own scale tells.
function isSmaller({ does }: BoardInput, one: DoeWeek, other: DoeWeek): boolean {
  const isDwarf = ({ breed }: DoeWeek) => doeBreed(breed) === 'nigerian';
  if (isDwarf(one) !== isDwarf(other)) return isDwarf(one);
  const weightOf = ({ id }: DoeWeek) => does.find((doe) => doe.id === id)?.weight_kg ?? null;
  const [light, heavy] = [weightOf(one), weightOf(other)];
  return light !== null && heavy !== null && light <= MUCH_LIGHTER * heavy;
}

// Does in their first lactation give less than grown ones: from memory of dairy textbooks.
function isYoung({ week }: BoardInput, { born }: DoeWeek): boolean {
  if (born === null) return false;
  const limit = `${Number(born.slice(0, 4)) + YOUNG_years}${born.slice(4)}`;
  return week.asOf < limit;
}

function lastKidding({ kiddings, week }: BoardInput, { id }: DoeWeek): number | null {
  const to = week.window ? Date.parse(week.window.to) / 86_400_000 : 0;
  const days = kiddings.filter(({ doe, day }) => doe === id && day <= to).map(({ day }) => day);
  return days.length === 0 ? null : Math.max(...days);
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
  const unit = say(words, `barn.unit.${plan.unit}`, { n: parts / plan.perUnit });
  return `${mixedText(parts, plan.perUnit, words.lang)} ${unit}`;
}

/** What is asked in a round. */
export function guessAsk(words: Words, plan: GuessPlan, round: GuessRound): string {
  const when = `${dateText(round.date, words.lang, 'day')}, ${say(words, `barn.milking.${round.milking}`)}`;
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
