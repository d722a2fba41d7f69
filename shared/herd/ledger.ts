// The book laid out by doe and day in exact whole numbers, ready to be summed.
import Fraction from 'fraction.js';
import type { Amount } from '../quantity/amount.ts';
import { UNIT_ML, type AmountUnit } from '../quantity/units.ts';
import { milkingsOf, phaseSpans, type PhaseSpan } from './expected.ts';
import { nearestDouble } from './nearestDouble.ts';
import { standingRows } from './standing.ts';
import type { Book, MilkingRow } from './types.ts';

/** A standing row with its volume as a whole number of the ledger's grains. */
export interface Entry {
  readonly row: MilkingRow;
  readonly grains: bigint;
  /** Whether this milking was expected of her that day. */
  readonly expected: boolean;
}

/** What is known of one doe-day or herd-day. */
export interface DaySum {
  grains: bigint;
  rows: number;
  /** Milkings expected, and those of them that have a standing entry. */
  expected: number;
  entered: number;
}

/** The book up to `asOf`: entries, and sums by day, for each doe and for the herd. */
export interface Ledger {
  readonly asOf: number;
  /** Litres in one grain: the largest volume of which every amount in the book is a whole number. */
  readonly grain_L: Fraction;
  readonly entries: readonly Entry[];
  readonly phases: ReadonlyMap<string, readonly PhaseSpan[]>;
  readonly doeDays: ReadonlyMap<string, ReadonlyMap<number, DaySum>>;
  readonly herdDays: ReadonlyMap<number, DaySum>;
}

const emptyDay = (): DaySum => ({ grains: 0n, rows: 0, expected: 0, entered: 0 });

/** Whether at least one milking was expected and every expected one is entered. */
export function isWhole(day: DaySum | undefined): boolean {
  return day !== undefined && day.expected > 0 && day.entered === day.expected;
}

/** Litres of a number of grains, as the nearest double. */
export function litres(ledger: Ledger, grains: bigint): number {
  return nearestDouble(ledger.grain_L.mul(new Fraction(grains)));
}

/**
 * Lays out the book for a day: rows after `asOf` are not counted, of the others the standing ones
 * are. Sums are whole numbers of one small grain, so nothing is rounded however many rows there are.
 */
export function openLedger(book: Book, asOf: number): Ledger {
  const counted = book.rows.filter((row) => row.day <= asOf);
  const standing = standingRows(counted).rows;
  const { grain_mL, factors } = commonGrain(standing);
  const phases = new Map(
    book.does.map((doe) => [doe.id, phaseSpans(book.kiddings.filter((kidding) => kidding.doe === doe.id))]),
  );
  const doeDays = new Map<string, Map<number, DaySum>>();
  const herdDays = new Map<number, DaySum>();
  for (const doe of book.does) doeDays.set(doe.id, expectedDays(phases.get(doe.id) ?? [], asOf, herdDays));
  const entries = standing.map((row) => {
    const amount = row.amount as Amount;
    const grains = BigInt(amount.num) * (factors.get(amount.unit)?.get(amount.den) ?? 0n);
    return enter(row, grains, doeDays, herdDays);
  });
  return { asOf, grain_L: grain_mL.div(1000), entries, phases, doeDays, herdDays };
}

function expectedDays(
  spans: readonly PhaseSpan[],
  asOf: number,
  herdDays: Map<number, DaySum>,
): Map<number, DaySum> {
  const days = new Map<number, DaySum>();
  for (const span of spans) {
    const expected = milkingsOf(span.phase).length;
    if (expected === 0) continue;
    const last = Math.min(span.to ?? asOf, asOf);
    for (let day = span.from; day <= last; day += 1) {
      days.set(day, { ...emptyDay(), expected });
      dayIn(herdDays, day).expected += expected;
    }
  }
  return days;
}

function dayIn(days: Map<number, DaySum>, day: number): DaySum {
  let sum = days.get(day);
  if (sum === undefined) days.set(day, (sum = emptyDay()));
  return sum;
}

function enter(
  row: MilkingRow,
  grains: bigint,
  doeDays: Map<string, Map<number, DaySum>>,
  herdDays: Map<number, DaySum>,
): Entry {
  let days = doeDays.get(row.doe);
  if (days === undefined) doeDays.set(row.doe, (days = new Map<number, DaySum>()));
  const doeDay = dayIn(days, row.day);
  // One milking expected is always the morning one.
  const expected = doeDay.expected === 2 || (doeDay.expected === 1 && row.milking === 'am');
  for (const sum of [doeDay, dayIn(herdDays, row.day)]) {
    sum.grains += grains;
    sum.rows += 1;
    if (expected) sum.entered += 1;
  }
  return { row, grains, expected };
}

/** The largest volume that divides every written amount, and how many of it each unit's part holds. */
function commonGrain(rows: readonly MilkingRow[]): {
  grain_mL: Fraction;
  factors: Map<AmountUnit, Map<number, bigint>>;
} {
  const written = new Map<AmountUnit, Set<number>>();
  for (const { amount } of rows) {
    if (!amount) continue;
    let dens = written.get(amount.unit);
    if (dens === undefined) written.set(amount.unit, (dens = new Set()));
    dens.add(amount.den);
  }
  let grain_mL = new Fraction(0);
  for (const [unit, dens] of written) for (const den of dens) grain_mL = UNIT_ML[unit].div(den).gcd(grain_mL);
  const factors = new Map<AmountUnit, Map<number, bigint>>();
  for (const [unit, dens] of written) {
    const perDen = [...dens].map((den) => [den, UNIT_ML[unit].div(den).div(grain_mL).n] as const);
    factors.set(unit, new Map(perDen));
  }
  return { grain_mL, factors };
}
