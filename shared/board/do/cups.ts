// How many children can have a cup: jars of one day's milk, a guess, and then the children come with their cups.
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { textsOf, type Told } from './told.ts';

/** A day's milk to share out. */
export interface CupsRound {
  /** The doe's name, or empty where it is the milk of all the does. */
  readonly name: string;
  /** The milk as it is written, in the day's unit. */
  readonly amount: string;
  readonly n: number;
  readonly jarsText: string;
  /** Fills of the drawn jars, 0..1; one jar drawn stands for `jarEach` jars. */
  readonly fills: readonly number[];
  readonly jarEach: number;
  /** Children who can have a cup. */
  readonly children: number;
  /** Children that one figure stands for. */
  readonly each: number;
}

/** The milk that can be shared out. */
export interface CupsPlan {
  readonly unit: 'cup' | 'L';
  /** Whole school servings in the farm's jar; null where they do not come out even. */
  readonly perJar: number | null;
  readonly rounds: readonly CupsRound[];
}

// Taps until all are served, so that nobody taps all day.
const MOST_TAPS = 4;

/** A round and the numbers of children to guess from, about half and double of each other. */
export function cupsRound(
  plan: CupsPlan,
  seed: number,
  turn: number,
): { readonly round: CupsRound; readonly choices: readonly number[] } {
  const round = chanceOf(`cups/${seed}`).shuffle(plan.rounds)[turn % plan.rounds.length] as CupsRound;
  return { round, choices: cupsChoices(round.children, chanceOf(`cups/${seed}/${turn}`).int(0, 3)) };
}

// Halves are rounded and kept apart, so that few children give 1, 2, 3 … and not the same number twice.
function cupsChoices(children: number, place: number): number[] {
  const below: number[] = [];
  for (let next = Math.round(children / 2); below.length < place && next >= 1; next = Math.round(next / 2)) {
    if (next >= (below[0] ?? children)) break;
    below.unshift(next);
  }
  const row = [...below, children];
  while (row.length < 4) row.push(Math.max(2 * (row.at(-1) ?? 1), 2));
  return row;
}

/** Children served at each tap: groups of whole figures, four taps at most, together all of them. */
export function cupsGroups({ children, each }: CupsRound): number[] {
  const figures = Math.ceil(children / each);
  const perTap = Math.ceil(figures / MOST_TAPS) * each;
  return Array.from({ length: Math.ceil(children / perTap) }, (_, tap) =>
    Math.min(perTap, children - tap * perTap),
  );
}

/** The slots of this page's texts. */
export function cupsSlots(words: Words, plan: CupsPlan, round: CupsRound) {
  return {
    name: round.name,
    n: round.children,
    amount: `${round.amount} ${say(words, `barn.unit.${plan.unit}`, { n: Math.max(1, round.n) })}`,
    jars: round.jarsText,
    each: round.each,
    perJar: plan.perJar ?? 0,
  };
}

/** What is asked in a round. */
export function cupsAsk(words: Words, plan: CupsPlan, round: CupsRound): string {
  const of = round.name === '' ? 'herd' : 'doe';
  return say(words, `barn.do.cups.ask.${of}`, cupsSlots(words, plan, round));
}

/** What the board says once all children have their cup. */
export function cupsVerdict(words: Words, plan: CupsPlan, round: CupsRound, guess: number): Told {
  const found = guess === round.children ? 'right' : guess < round.children ? 'more' : 'fewer';
  const slots = cupsSlots(words, plan, round);
  const why = plan.unit === 'L' ? 'liters' : plan.perJar === null ? 'cups' : 'jars';
  return {
    right: found === 'right',
    text: `${say(words, `barn.do.cups.${found}`, slots)} ${say(words, 'barn.do.cups.heated')}`,
    more: say(words, `barn.do.cups.why.${why}`, slots),
  };
}

/** Everything that this page may say. */
export function cupsSays(words: Words, plan: CupsPlan): string[] {
  return plan.rounds.flatMap((round) => {
    const guesses = [round.children - 1, round.children, round.children + 1];
    return [
      cupsAsk(words, plan, round),
      say(words, 'barn.do.cups.serve'),
      ...(round.each > 1 ? [say(words, 'barn.do.cups.eachChild', { n: round.each })] : []),
      ...(round.jarEach > 1 ? [say(words, 'barn.do.cups.eachJar', { n: round.jarEach })] : []),
      ...textsOf(guesses.map((guess) => cupsVerdict(words, plan, round, guess))),
    ];
  });
}
