// What to expect on a day, in whole sentences of a language: for the panel, and for the letter to the teacher.
import { clockText, decimalText, inParts } from '../quantity/show.ts';
import { say, type Words } from '../words/words.ts';
import type { DayTold, DoeTold, Sight } from './dayTold.ts';
import type { DoeState } from './doeOn.ts';
import type { TripSeason } from './visitTypes.ts';

const STATES: readonly DoeState[] = [
  'twice a day',
  'nights apart',
  'with kids',
  'dry',
  'not kidded',
  'unknown',
];
// Below half a cup on a day nobody would call it milk.
const LEAST_L = 0.12;
const mL = 1000;
const EVENING_min = 16 * 60;

/** Does that are in one state for one reason, in the herd's order. */
export interface StateGroup {
  readonly state: DoeState;
  readonly likely: boolean;
  readonly does: readonly DoeTold[];
}

/** The does by what they do, milked ones first; what is only likely apart from what the book says. */
export function stateGroups({ does }: Pick<DayTold, 'does'>): StateGroup[] {
  return STATES.flatMap((state) =>
    [false, true].map((likely) => ({
      state,
      likely,
      does: does.filter((one) => one.state === state && one.likely === likely),
    })),
  ).filter((group) => group.does.length > 0);
}

/** An amount in the farm's unit: whole cups, or litres with one decimal. */
export function amountText(amount_L: number, season: Pick<TripSeason, 'unit'>, words: Words): string {
  const { n } = rounded(amount_L, season);
  return say(words, `trip-expect.amount.${season.unit}`, { n, amount: numberText(amount_L, season, words) });
}

function numberText(amount_L: number, season: Pick<TripSeason, 'unit'>, words: Words): string {
  const { n, places } = rounded(amount_L, season);
  return decimalText(n, places, words.lang);
}

function rounded(amount_L: number, { unit }: Pick<TripSeason, 'unit'>): { n: number; places: number } {
  const places = unit === 'cup' ? 0 : 1;
  return { n: inParts(amount_L * mL, unit, 10 ** places) / 10 ** places, places };
}

/** The sentences on the day's milk. */
export function milkLines(told: DayTold, season: TripSeason, words: Words): string[] {
  const tell = (key: string, slots = {}) => say(words, `trip-expect.milk.${key}`, slots);
  const without = told.without.map(({ name }) => name);
  const partly = without.length > 0 ? [tell('without', { names: listOf(words, without) })] : [];
  if (told.when !== 'ahead' || told.kind === 'empty') return [];
  if (told.milk === null) return [tell('unknown'), ...partly];
  const [middle, low, high] = told.milk;
  const amount = (amount_L: number) => amountText(amount_L, season, words);
  if (high < LEAST_L) return [tell('none'), ...partly];
  if (middle < LEAST_L) return [tell('little', { high: amount(high) }), ...partly];
  // A hair over a full jar is no reason for another one.
  const jars = Math.max(1, Math.ceil((middle * mL) / season.jar_mL - 0.05));
  return [
    tell('about', { middle: amount(middle) }),
    tell('jars', { n: jars }),
    tell('range', { low: numberText(low, season, words), high: amount(high) }),
    ...partly,
  ];
}

/** How much there is to draw, L: nought is an empty jar; null where nobody can say. */
export function milkToDraw({ milk, kind }: Pick<DayTold, 'milk' | 'kind'>): number | null {
  if (milk === null || kind === 'empty') return null;
  return milk[0] >= LEAST_L ? milk[0] : 0;
}

/** One thing that children can see, as a sentence. */
export function sightText(sight: Sight, { ground }: Pick<DayTold, 'ground'>, words: Words): string {
  const tell = (key: string, slots = {}) => say(words, `trip-expect.sights.${key}`, slots);
  if (sight !== 'milking') return tell(sight);
  // Schools come by day: an evening milking is told only where there is no other.
  const byDay = ground.milkings.filter(({ from }) => from < EVENING_min);
  const [first, second] = (byDay.length > 0 ? byDay : ground.milkings).map(({ from, to }) => ({
    from: clockText(from, words.lang),
    to: clockText(to, words.lang),
  }));
  if (!second) return tell('milking', first ?? {});
  return tell('milking-also', { ...first, from2: second.from, to2: second.to });
}

/** What the day's sheets are about, in one sentence. */
export function topicsLine({ topics }: Pick<DayTold, 'topics'>, words: Words): string {
  const all = topics.map((topic) => say(words, `trip-expect.topics.${topic}`));
  return say(words, 'trip-expect.topics.line', { topics: listOf(words, all) });
}

/** The notes that go with it: the day is not ahead, kids are near, or it rests on what is only likely. */
export function expectNotes(told: DayTold, words: Words): string[] {
  const tell = (key: string) => say(words, `trip-expect.${key}`);
  return [
    ...(told.when === 'ahead' ? [] : [tell(`when.${told.when}`)]),
    ...(told.ground.kiddingNear ? [tell('near')] : []),
    ...(told.likely ? [tell('likely')] : []),
  ];
}

/** All of it in sentences, for a letter. */
export function expectLines(told: DayTold, season: TripSeason, words: Words): string[] {
  const does = stateGroups(told).map(({ state, likely, does: of }) => {
    const names = listOf(words, of.map(({ doe }) => doe.name));
    const line = say(words, `trip-expect.does.line.${state}`, { n: of.length, names });
    return likely ? say(words, 'trip-expect.does.likely', { line }) : line;
  }); // prettier-ignore
  const isTold = told.when !== 'beyond' && told.kind !== 'empty' && told.kind !== 'unknown';
  return [
    ...(told.when === 'beyond' ? [] : [say(words, `trip-expect.kind.${told.kind}`)]),
    ...milkLines(told, season, words),
    ...(isTold ? does : []),
    ...expectNotes(told, words),
    ...(told.kind === 'empty' ? [] : [topicsLine(told, words)]),
  ];
}

function listOf(words: Words, parts: readonly string[]): string {
  return new Intl.ListFormat(words.lang, { type: 'conjunction' }).format(parts);
}
