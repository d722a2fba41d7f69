// One doe's year: from her latest kidding to the one to come and the milk after it.
import type { Book, Kidding } from '../herd/types.ts';
import { LACTATION_DAYS, NIGHTS_APART_DAYS, PEAK_DAYS, WITH_KIDS_DAYS } from './defaults.ts';
import { DRY_DAYS, dryOffFor, type DayRange } from './gestation.ts';
import { nextKidding, type Basis, type Breeding, type NextKidding } from './nextKidding.ts';

/** Things that happen in a doe's year. */
export type YearMark = 'kidded' | 'due' | 'apart' | 'weaned' | 'first milk' | 'most milk' | 'dry';

/** One of them, when, and what that rests on. Days are day numbers. */
export interface YearEvent extends DayRange {
  readonly what: YearMark;
  readonly basis: Basis;
  /** Which lactation it belongs to. */
  readonly of: 'this lactation' | 'the next one';
}

/** A doe's year. */
export interface DoeYear {
  readonly doe: string;
  /** In order of day. */
  readonly events: readonly YearEvent[];
  readonly next: NextKidding;
  /** Her rest before the next kidding, where the book dates both, in days; short below 45. */
  readonly rest: { readonly days: number; readonly isShort: boolean } | null;
}

const exactly = (day: number): DayRange => ({ day, from: day, to: day });
const later = (range: DayRange, low: number, usual: number, high: number): DayRange => ({
  day: range.day + usual,
  from: range.from + low,
  to: range.to + high,
});

/** Lays out a doe's year as of a day. Where the book is silent, each event says what it rests on. */
export function doeYear(book: Book, asOf: number, doe: string, breedings: readonly Breeding[] = []): DoeYear {
  const own = book.kiddings.filter((one) => one.doe === doe).sort((a, b) => a.day - b.day);
  const next = nextKidding(
    own,
    breedings.filter((one) => one.doe === doe),
    asOf,
  );
  const last = own.filter((one) => one.day <= asOf).at(-1);
  const planned = own.find((one) => one.day > asOf);
  const events = [
    ...(last ? thisLactation(last, next) : []),
    ...(next.ok ? nextLactation(next, planned, last) : []),
  ].sort((a, b) => a.day - b.day);
  return { doe, events, next, rest: restOf(last, next) };
}

// Both days empty means kids reared by bottle: she is milked from the day after.
const isBottle = (kidding: Kidding) => kidding.apart === null && kidding.weaned === null;

function thisLactation(kidding: Kidding, next: NextKidding): YearEvent[] {
  const of = 'this lactation';
  const event = (what: YearMark, range: DayRange, basis: Basis): YearEvent => ({ what, ...range, basis, of });
  const start = exactly(kidding.day);
  const apart = kidding.apart === null ? null : exactly(kidding.apart);
  const weaned = weanedOf(kidding, apart);
  const milk = isBottle(kidding) ? exactly(kidding.day + 1) : (apart ?? weaned?.range ?? start);
  const dry = dryOf(kidding, next);
  const kidded = event('kidded', start, 'book');
  if (dry.range.day <= milk.day) return [kidded, event('dry', dry.range, dry.basis)];
  return [
    kidded,
    ...(apart ? [event('apart', apart, 'book')] : []),
    ...(weaned ? [event('weaned', weaned.range, weaned.basis)] : []),
    event('first milk', milk, 'book'),
    event('most milk', mostMilk(start), 'counted'),
    event('dry', dry.range, dry.basis),
  ];
}

function weanedOf(kidding: Kidding, apart: DayRange | null): { range: DayRange; basis: Basis } | null {
  if (kidding.weaned !== null) return { range: exactly(kidding.weaned), basis: 'book' };
  if (!apart) return null;
  const { low, usual, high } = NIGHTS_APART_DAYS;
  return { range: later(apart, low, usual, high), basis: 'common practice' };
}

function dryOf(kidding: Kidding, next: NextKidding): { range: DayRange; basis: Basis } {
  if (kidding.dry !== null) return { range: exactly(kidding.dry), basis: 'book' };
  // A kidding that is only a custom of the herd says less of her rest than the length of a lactation.
  if (next.ok && next.basis !== 'common practice') {
    const range = { day: dryOffFor(next.day), from: dryOffFor(next.from), to: dryOffFor(next.to) };
    return { range, basis: 'counted' };
  }
  const day = kidding.day + LACTATION_DAYS.usual;
  return { range: { day, from: kidding.day + LACTATION_DAYS.low, to: day }, basis: 'common practice' };
}

const mostMilk = (kidded: DayRange): DayRange =>
  later(kidded, PEAK_DAYS.low, (PEAK_DAYS.low + PEAK_DAYS.high) / 2, PEAK_DAYS.high);

function nextLactation(
  next: Extract<NextKidding, { ok: true }>,
  planned: Kidding | undefined,
  last: Kidding | undefined,
): YearEvent[] {
  const of = 'the next one';
  const event = (what: YearMark, range: DayRange, basis: Basis): YearEvent => ({ what, ...range, basis, of });
  const due: DayRange = { day: next.day, from: next.from, to: next.to };
  // Reared as the kids of the last time were, unless the row ahead says more; a first kidding with the mother.
  const hasDates = planned !== undefined && !isBottle(planned);
  const bottle = !hasDates && last !== undefined && isBottle(last);
  const apart = planned?.apart
    ? exactly(planned.apart)
    : later(due, WITH_KIDS_DAYS, WITH_KIDS_DAYS, WITH_KIDS_DAYS);
  const { low, usual, high } = NIGHTS_APART_DAYS;
  const weaned = planned?.weaned ? exactly(planned.weaned) : later(apart, low, usual, high);
  const by = (day: number | null | undefined): Basis => (day ? 'book' : 'common practice');
  const dry = planned?.dry
    ? exactly(planned.dry)
    : later(due, LACTATION_DAYS.low, LACTATION_DAYS.usual, LACTATION_DAYS.usual);
  // Dried off before she was milked at all: her kids had it, or she lost them.
  if (dry.day <= (bottle ? due.day + 1 : apart.day))
    return [event('due', due, next.basis), event('dry', dry, by(planned?.dry))];
  const rearing = bottle
    ? [event('first milk', later(due, 1, 1, 1), next.basis)]
    : [
        event('apart', apart, by(planned?.apart)),
        event('first milk', apart, by(planned?.apart)),
        event('weaned', weaned, by(planned?.weaned)),
      ];
  const peakBasis: Basis = next.basis === 'common practice' ? 'common practice' : 'counted';
  return [
    event('due', due, next.basis),
    ...rearing,
    event('most milk', mostMilk(due), peakBasis),
    event('dry', dry, by(planned?.dry)),
  ];
}

function restOf(last: Kidding | undefined, next: NextKidding): DoeYear['rest'] {
  if (!last || last.dry === null || !next.ok || next.basis === 'common practice') return null;
  const days = next.day - last.dry;
  return { days, isShort: days < DRY_DAYS.short };
}
