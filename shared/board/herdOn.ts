// The herd's lists as they stand on the day of the figures: births up to it, and where each doe is on it.
import { civilFromDay, dayNumber, isoDate } from '../calendar/day.ts';
import { phaseOn, phaseSpans, type Phase } from '../herd/expected.ts';
import type { Kidding } from '../herd/types.ts';
import { dateText } from '../quantity/show.ts';
import type { NamedDoe } from './goatPicture.ts';
import type { BoardInput, ProofRow } from './types.ts';

/** A birth whose number of kids is written down. */
export type KnownBirth = Kidding & { readonly kids: number };

/** The day number of the figures. */
export function dayOf({ week }: BoardInput): number {
  return dayNumber(week.asOf) ?? 0;
}

/** Births up to the day of the figures that say how many kids, in the order of the list. */
export function knownBirths(input: BoardInput): KnownBirth[] {
  const asOf = dayOf(input);
  return input.kiddings.filter((one): one is KnownBirth => one.day <= asOf && one.kids !== null);
}

/** The year that the board's counts of kids speak of: that of the last day with milk, else of the figures' day. */
export function kidYear(input: BoardInput): number {
  return civilFromDay(dayNumber(input.week.window?.to ?? '') ?? dayOf(input)).year;
}

/** Those of the births that fall in that year. */
export function birthsOfYear(input: BoardInput): KnownBirth[] {
  const year = kidYear(input);
  return knownBirths(input).filter((birth) => civilFromDay(birth.day).year === year);
}

/** The kids of some births. */
export function kidsOf(births: readonly KnownBirth[]): number {
  return births.reduce((sum, birth) => sum + birth.kids, 0);
}

/** A doe's phase on the day of the figures, which may lie after the last day with milk. */
export function phaseNow(input: BoardInput, doe: string): Phase {
  return phaseOn(phaseSpans(input.kiddings.filter((one) => one.doe === doe)), dayOf(input));
}

/** A doe by her id; an id that the list lacks stands for itself. */
export function doeNamed(input: BoardInput, id: string): NamedDoe {
  const doe = input.does.find((one) => one.id === id);
  return { id, name: doe?.name ?? id, breed: doe?.breed ?? '' };
}

/** Headings of rows of births, keys under `barn.proof.column`. */
export const BIRTH_COLUMNS: readonly string[] = Object.freeze(['date', 'doe', 'kids']);

/** A birth as the proof lists it, with its year where the list spans several. */
export function birthRow(input: BoardInput, birth: Kidding, style: 'day' | 'long' = 'day'): ProofRow {
  return {
    cells: [
      dateText(isoDate(birth.day), input.lang, style),
      doeNamed(input, birth.doe).name,
      birth.kids === null ? '?' : String(birth.kids),
    ],
    place: 'kiddings.csv',
  };
}

/** Some counts and their sum, as a calculator takes them: `2 + 1 = 3`. */
export function countSum(counts: readonly number[]): string {
  const total = counts.reduce((sum, one) => sum + one, 0);
  return `${counts.length === 0 ? '0' : counts.join(' + ')} = ${total}`;
}
