// A month of the milk book to look at: every milking of every doe, what is missing, what was corrected, and sums.
import Fraction from 'fraction.js';
import { dayFromCivil, isoDate } from '../calendar/day.ts';
import { milkingsOf, phaseOn, type Phase } from '../herd/expected.ts';
import type { Ledger } from '../herd/ledger.ts';
import { nearestDouble } from '../herd/nearestDouble.ts';
import type { Book, Farm, MilkingRow, MilkingTime, Use } from '../herd/types.ts';
import { amount_mL, type Amount } from '../quantity/amount.ts';
import { shownUnit, UNIT_ML, type AmountUnit } from '../quantity/units.ts';

/** Both milkings, in the order of a day. */
export const BOTH: readonly MilkingTime[] = Object.freeze(['am', 'pm']);

/** A row as somebody wrote it. */
export interface MonthRow {
  /** As written; null strikes the entry out. */
  readonly amount: Amount | null;
  /** The same in the month's unit, the nearest double. */
  readonly shown: number | null;
  readonly use: Use;
  readonly note: string;
  readonly entered_ms: number | null;
  readonly file: string;
  readonly line: number;
}

/**
 * What is known of a milking. `missing`: expected and not entered; `open`: the same, but today; `ahead`: a day still to
 * come; `none`: neither expected nor entered; `struck`: entered, and struck out since.
 */
export type CellState = 'entered' | 'missing' | 'open' | 'struck' | 'ahead' | 'none';

/** One milking of one doe. */
export interface MonthCell {
  readonly state: CellState;
  readonly expected: boolean;
  /** The row that was written last, be it an amount or a strike; null where there is none. */
  readonly row: MonthRow | null;
  /** The rows that it stands over, newest first. */
  readonly older: readonly MonthRow[];
}

/** Milk of some rows, in the month's unit: all of it, and the part with use kept. */
export interface MilkSum {
  readonly all: number;
  readonly kept: number;
  /** Standing rows. */
  readonly rows: number;
}

/** A doe's day. */
export interface DoeDay {
  readonly phase: Phase;
  readonly am: MonthCell;
  readonly pm: MonthCell;
  readonly sum: MilkSum;
  /** At least one milking was expected of her and each that was is entered. */
  readonly whole: boolean;
}

/** A doe with something expected or entered in the month. */
export interface MonthDoe {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  /** In the order of the month's days. */
  readonly days: readonly DoeDay[];
  readonly sum: MilkSum;
  readonly missing: number;
}

/** A day of the herd. */
export interface MonthDay {
  readonly date: string;
  readonly sum: MilkSum;
  readonly missing: number;
  readonly open: number;
  readonly whole: boolean;
}

/** The month of one herd; plain numbers and texts, as it is sent to a page. */
export interface MonthView {
  /** `2026-05`. */
  readonly month: string;
  /** The book's day, ISO. */
  readonly today: string;
  /** The unit of every sum and shown amount. */
  readonly unit: AmountUnit;
  readonly days: readonly MonthDay[];
  readonly does: readonly MonthDoe[];
  readonly sum: MilkSum;
  /** All milk of the month, L, the nearest double. */
  readonly total_L: number;
  readonly kept_L: number;
  readonly missing: number;
  /** Milkings that a later row stands over. */
  readonly corrected: number;
  /** Every month with an entry or an expected milking, oldest first; what a reader may step to. */
  readonly months: readonly string[];
}

/** The unit that the book is written in, where the farm's pages use its system; else the one that pages show. */
export function bookUnit({ units, recordUnit }: Pick<Farm, 'units' | 'recordUnit'>): AmountUnit {
  const metric = ['mL', 'L', 'kg', 'g'].includes(recordUnit);
  return metric === (units === 'metric') ? recordUnit : shownUnit(units);
}

/** First and last day number of a month `YYYY-MM`, or null where the text is none. */
export function monthSpan(month: string): { from: number; to: number } | null {
  const match = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month);
  if (!match) return null;
  const [year, number] = [Number(match[1]), Number(match[2])];
  const next = number === 12 ? dayFromCivil(year + 1, 1, 1) : dayFromCivil(year, number + 1, 1);
  return { from: dayFromCivil(year, number, 1), to: next - 1 };
}

/** The months with an entry or an expected milking up to the ledger's day, oldest first. */
export function monthsOf(ledger: Ledger): string[] {
  const months = new Set<string>();
  for (const [day, { rows, expected }] of ledger.herdDays)
    if (rows > 0 || expected > 0) months.add(isoDate(day).slice(0, 7));
  return [...months].sort();
}

/** Lays out a month from all rows of the book, those that stand and those they stand over. Throws on no month. */
export function monthView(
  book: Book,
  ledger: Ledger,
  farm: Pick<Farm, 'units' | 'recordUnit'>,
  month: string,
): MonthView {
  const span = monthSpan(month);
  if (!span) throw new Error(`"${month}" is no month.`);
  const unit = bookUnit(farm);
  const dates = Array.from({ length: span.to - span.from + 1 }, (_, index) => span.from + index);
  const written = writtenIn(book, ledger, span);
  const sums = openSums(ledger, span, unit);
  const all = book.does.map((doe): MonthDoe => {
    const days = dates.map((day) => doeDay(doe.id, day, { ledger, written, sums, unit }));
    const missing = countCells(days, ({ state }) => state === 'missing');
    return { id: doe.id, name: doe.name, breed: doe.breed, days, sum: sums.of(doe.id, null), missing };
  });
  const does = all.filter(({ days }) => days.some(({ am, pm }) => isShown(am) || isShown(pm)));
  const days = dates.map((day, index): MonthDay => {
    const own = all.flatMap((doe) => doe.days[index] ?? []);
    const missing = countCells(own, ({ state }) => state === 'missing');
    const open = countCells(own, ({ state }) => state === 'open');
    const whole = own.some(({ whole }) => whole) && missing + open === 0;
    return { date: isoDate(day), sum: sums.of(null, day), missing, open, whole };
  });
  return {
    month,
    today: isoDate(ledger.asOf),
    unit,
    days,
    does,
    sum: sums.of(null, null),
    ...sums.litres(),
    missing: days.reduce((sum, one) => sum + one.missing, 0),
    corrected: countCells(
      all.flatMap((doe) => doe.days),
      ({ older }) => older.length > 0,
    ),
    months: monthsOf(ledger),
  };
}

const isShown = ({ state, row }: MonthCell) => row !== null || state === 'missing' || state === 'open';

function countCells(days: readonly DoeDay[], wanted: (cell: MonthCell) => boolean): number {
  return days.reduce((sum, { am, pm }) => sum + Number(wanted(am)) + Number(wanted(pm)), 0);
}

const keyOf = (doe: string, day: number, milking: MilkingTime) => `${day} ${milking} ${doe}`;

/** All counted rows of the span by milking, the newest first. */
function writtenIn(
  book: Book,
  ledger: Ledger,
  span: { from: number; to: number },
): Map<string, MilkingRow[]> {
  const written = new Map<string, MilkingRow[]>();
  for (const row of book.rows) {
    if (row.day < span.from || row.day > Math.min(span.to, ledger.asOf)) continue;
    const key = keyOf(row.doe, row.day, row.milking);
    const group = written.get(key);
    if (group) group.push(row);
    else written.set(key, [row]);
  }
  const at = (row: MilkingRow) => row.entered_ms ?? Number.NEGATIVE_INFINITY;
  for (const group of written.values()) group.sort((a, b) => (at(a) === at(b) ? 0 : at(b) - at(a)));
  return written;
}

interface Laying {
  readonly ledger: Ledger;
  readonly written: ReadonlyMap<string, readonly MilkingRow[]>;
  readonly sums: Sums;
  readonly unit: AmountUnit;
}

function doeDay(doe: string, day: number, laying: Laying): DoeDay {
  const phase = phaseOn(laying.ledger.phases.get(doe) ?? [], day);
  const expected = milkingsOf(phase);
  const [am, pm] = BOTH.map((milking) =>
    cellOf(laying.written.get(keyOf(doe, day, milking)) ?? [], expected.includes(milking), day, laying),
  ) as [MonthCell, MonthCell];
  const cells = [am, pm].filter((cell) => cell.expected);
  const whole = cells.length > 0 && cells.every(({ state }) => state === 'entered');
  return { phase, am, pm, sum: laying.sums.of(doe, day), whole };
}

function cellOf(
  rows: readonly MilkingRow[],
  expected: boolean,
  day: number,
  { ledger, unit }: Laying,
): MonthCell {
  const [row = null, ...older] = rows.map((one) => rowOf(one, unit));
  return { state: stateOf(row, expected, day, ledger.asOf), expected, row, older };
}

function stateOf(row: MonthRow | null, expected: boolean, day: number, asOf: number): CellState {
  if (day > asOf) return 'ahead';
  if (row?.amount) return 'entered';
  // A milking that was struck out and is expected is one that somebody still has to enter.
  if (expected) return day === asOf ? 'open' : 'missing';
  return row ? 'struck' : 'none';
}

function rowOf(row: MilkingRow, unit: AmountUnit): MonthRow {
  const { amount, use, note, entered_ms, file, line } = row;
  const shown = amount && nearestDouble(amount_mL(amount).div(UNIT_ML[unit]));
  return { amount, shown, use, note, entered_ms, file, line };
}

interface Grains {
  all: bigint;
  kept: bigint;
  rows: number;
}

/** Sums by doe and day; null stands for all of them. */
interface Sums {
  of(doe: string | null, day: number | null): MilkSum;
  litres(): { total_L: number; kept_L: number };
}

// Whole numbers of the ledger's grain, as in the figures: nothing is rounded before a sum is whole.
function openSums(ledger: Ledger, span: { from: number; to: number }, unit: AmountUnit): Sums {
  const sums = new Map<string, Grains>();
  const keyed = (doe: string | null, day: number | null) => `${day ?? ''} ${doe ?? ''}`;
  for (const { row, grains } of ledger.entries) {
    if (row.day < span.from || row.day > span.to) continue;
    for (const doe of [row.doe, null])
      for (const day of [row.day, null]) {
        const key = keyed(doe, day);
        const sum = sums.get(key) ?? { all: 0n, kept: 0n, rows: 0 };
        sum.all += grains;
        if (row.use === 'kept') sum.kept += grains;
        sum.rows += 1;
        sums.set(key, sum);
      }
  }
  const perUnit = ledger.grain_L.mul(1000).div(UNIT_ML[unit]);
  const told = (grains: bigint, one: Fraction) => nearestDouble(one.mul(new Fraction(grains)));
  return {
    of: (doe, day) => {
      const { all, kept, rows } = sums.get(keyed(doe, day)) ?? { all: 0n, kept: 0n, rows: 0 };
      return { all: told(all, perUnit), kept: told(kept, perUnit), rows };
    },
    litres: () => {
      const { all, kept } = sums.get(keyed(null, null)) ?? { all: 0n, kept: 0n };
      return { total_L: told(all, ledger.grain_L), kept_L: told(kept, ledger.grain_L) };
    },
  };
}
