// The week that pages and sheets speak of, row by row: plain JSON, so that a page can carry it to the browser.
import { isoDate } from '../calendar/day.ts';
import type { Amount } from '../quantity/amount.ts';
import { milkingsOf, phaseOn, type Phase } from './expected.ts';
import { inWindow } from './figures.ts';
import { findLastDay, WINDOW_DAYS, type HerdState, type LastDay } from './lastDay.ts';
import { isWhole, litres, type Entry, type Ledger } from './ledger.ts';
import { USES, type Book, type Doe, type MilkingTime, type Use } from './types.ts';

/** A standing row of the week, with the place in the book where it is written. Its note is the farm's own business. */
export interface WeekMilking {
  readonly date: string;
  readonly milking: MilkingTime;
  readonly amount_mL: number;
  /** As written in the book. */
  readonly amount: Amount;
  readonly use: Use;
  readonly file: string;
  readonly line: number;
}

/** One doe's week. */
export interface DoeWeek {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  readonly born: string | null;
  /** Her phase on the last day. */
  readonly phase: Phase;
  /** Kids of her latest kidding up to the last day; null where the book does not say. */
  readonly kids: number | null;
  /** In order of date, a.m. before p.m. */
  readonly milkings: readonly WeekMilking[];
  /** Milkings expected of her in the window that have no entry. */
  readonly missing: readonly { readonly date: string; readonly milking: MilkingTime }[];
  /** Days of the window on which milkings were expected of her and all are entered. */
  readonly wholeDates: readonly string[];
  /** All her milk in the window; null where she has no entry in it. */
  readonly total_mL: number | null;
}

/** A day of the herd. */
export interface HerdDay {
  readonly date: string;
  readonly total_mL: number;
  readonly rows: number;
  readonly whole: boolean;
}

/** The window's week. Does stand in the order of `does.csv`. */
export interface WeekView {
  readonly asOf: string;
  readonly state: HerdState;
  readonly wholeDay: boolean;
  /** Whether a milking is expected of any doe on `asOf`: a resting herd of such does is only silent. */
  readonly expectedNow: boolean;
  readonly window: { readonly from: string; readonly to: string } | null;
  readonly does: readonly DoeWeek[];
  /** The window's milk by what became of it. */
  readonly uses_mL: Readonly<Record<Use, number>>;
  /** The seven days of the window, days without milk too; empty in an empty book. */
  readonly days: readonly HerdDay[];
  /** Up to 28 days that end on the last day, those with an entry. */
  readonly recentDays: readonly HerdDay[];
}

const RECENT_SPAN_DAYS = 28;

/**
 * Lays out the window's week from an open ledger, or the week that ends on another last day. Volumes are the
 * nearest doubles to the exact ones, mL.
 */
export function weekView(book: Book, ledger: Ledger, last: LastDay = findLastDay(ledger)): WeekView {
  const entries = ledger.entries.filter(({ row }) => inWindow(row.day, last));
  const inOrder = [...entries].sort(
    (a, b) => a.row.day - b.row.day || a.row.milking.localeCompare(b.row.milking),
  );
  const used = (use: Use) =>
    litres(
      ledger,
      entries.reduce((sum, { row, grains }) => (row.use === use ? sum + grains : sum), 0n),
    ) * 1000;
  return {
    asOf: isoDate(ledger.asOf),
    state: last.state,
    wholeDay: last.wholeDay,
    expectedNow: [...ledger.phases.values()].some(
      (spans) => milkingsOf(phaseOn(spans, ledger.asOf)).length > 0,
    ),
    window: last.window && { from: isoDate(last.window.from), to: isoDate(last.window.to) },
    does: book.does.map((doe) => doeWeek(book, ledger, doe, inOrder, last.day)),
    uses_mL: Object.fromEntries(USES.map((use) => [use, used(use)])) as Record<Use, number>,
    days: last.day === null ? [] : herdDays(ledger, last.day, WINDOW_DAYS),
    recentDays:
      last.day === null ? [] : herdDays(ledger, last.day, RECENT_SPAN_DAYS).filter((day) => day.rows > 0),
  };
}

function herdDays(ledger: Ledger, lastDay: number, span_days: number): HerdDay[] {
  return Array.from({ length: span_days }, (_, index) => {
    const day = lastDay - span_days + 1 + index;
    const sum = ledger.herdDays.get(day);
    const total_mL = sum ? litres(ledger, sum.grains) * 1000 : 0;
    return { date: isoDate(day), total_mL, rows: sum?.rows ?? 0, whole: isWhole(sum) };
  });
}

function doeWeek(
  book: Book,
  ledger: Ledger,
  doe: Doe,
  entries: readonly Entry[],
  lastDay: number | null,
): DoeWeek {
  const own = entries.filter(({ row }) => row.doe === doe.id);
  const spans = ledger.phases.get(doe.id) ?? [];
  const kiddings = book.kiddings.filter(
    (one) => one.doe === doe.id && lastDay !== null && one.day <= lastDay,
  );
  const latest = [...kiddings].sort((a, b) => b.day - a.day)[0];
  const missing = [];
  for (let day = (lastDay ?? 0) - WINDOW_DAYS + 1; lastDay !== null && day <= lastDay; day += 1) {
    for (const milking of milkingsOf(phaseOn(spans, day))) {
      const entered = own.some(({ row }) => row.day === day && row.milking === milking);
      if (!entered) missing.push({ date: isoDate(day), milking });
    }
  }
  const total = own.reduce((sum, entry) => sum + entry.grains, 0n);
  return {
    id: doe.id,
    name: doe.name,
    breed: doe.breed,
    born: doe.born,
    phase: lastDay === null ? 'none' : phaseOn(spans, lastDay),
    kids: latest?.kids ?? null,
    milkings: own.map((entry) => weekMilking(ledger, entry)),
    missing,
    wholeDates: wholeDatesOf(ledger, doe.id, lastDay),
    total_mL: own.length > 0 ? litres(ledger, total) * 1000 : null,
  };
}

function wholeDatesOf(ledger: Ledger, doe: string, lastDay: number | null): string[] {
  if (lastDay === null) return [];
  const days = ledger.doeDays.get(doe);
  return Array.from({ length: WINDOW_DAYS }, (_, index) => lastDay - WINDOW_DAYS + 1 + index)
    .filter((day) => isWhole(days?.get(day)))
    .map(isoDate);
}

function weekMilking(ledger: Ledger, { row, grains }: Entry): WeekMilking {
  return {
    date: isoDate(row.day),
    milking: row.milking,
    amount_mL: litres(ledger, grains) * 1000,
    amount: row.amount as Amount,
    use: row.use,
    file: row.file,
    line: row.line,
  };
}
