// The herd's figures by their contract: every number with its method, span and rows.
import Fraction from 'fraction.js';
import { civilFromDay, dayFromCivil, isoDate } from '../calendar/day.ts';
import { doeFigures } from './doeFigures.ts';
import { findLastDay, type HerdState, type LastDay } from './lastDay.ts';
import { isWhole, litres, openLedger, type DaySum, type Entry, type Ledger } from './ledger.ts';
import { nearestDouble } from './nearestDouble.ts';
import type { Book } from './types.ts';

/** A number, or null where there is none, and what it stands on. */
export interface Figure {
  readonly value: number | null;
  readonly unit: 'L' | 'day' | 'count';
  /** The rule in one English sentence; the words of a page are the page's business. */
  readonly method: string;
  /** The dates it stands on, both included; null where there are none. */
  readonly span: { readonly from: string; readonly to: string } | null;
  /** Standing rows it stands on. */
  readonly rows: number;
}

/** What a build writes to `figures.json`. */
export interface FiguresFile {
  readonly asOf: string;
  readonly state: HerdState;
  readonly wholeDay: boolean;
  readonly window: { readonly from: string; readonly to: string } | null;
  readonly figures: Readonly<Record<string, Figure>>;
}

/**
 * Computes every figure of the contract for a day (a day number). Sums are exact; a value is the
 * nearest double to the exact one.
 */
export function computeFigures(book: Book, asOf: number): FiguresFile {
  return figuresOf(book, openLedger(book, asOf));
}

/** The same from a ledger that is open already. */
export function figuresOf(book: Book, ledger: Ledger): FiguresFile {
  const last = findLastDay(ledger);
  const weekEntries = ledger.entries.filter(({ row }) => inWindow(row.day, last));
  const figures: Record<string, Figure> = { ...herdFigures(ledger, last, weekEntries) };
  for (const doe of book.does) Object.assign(figures, doeFigures(book, ledger, last, weekEntries, doe.id));
  return {
    asOf: isoDate(ledger.asOf),
    state: last.state,
    wholeDay: last.wholeDay,
    window: last.window && { from: isoDate(last.window.from), to: isoDate(last.window.to) },
    figures,
  };
}

/** A figure over a span of days. */
export function figure(
  unit: Figure['unit'],
  method: string,
  value: number | null,
  span: { from: number; to: number } | null,
  rows: number,
): Figure {
  return { value, unit, method, span: span && { from: isoDate(span.from), to: isoDate(span.to) }, rows };
}

/** Sum of some days: grains and rows. */
export function sumDays(days: readonly DaySum[]): { grains: bigint; rows: number } {
  return {
    grains: days.reduce((sum, day) => sum + day.grains, 0n),
    rows: days.reduce((sum, day) => sum + day.rows, 0),
  };
}

/** The mean of the day sums in litres, or null of none. */
export function mean_L(ledger: Ledger, days: readonly DaySum[]): number | null {
  if (days.length === 0) return null;
  return nearestDouble(ledger.grain_L.mul(new Fraction(sumDays(days).grains)).div(days.length));
}

function daysBetween(days: ReadonlyMap<number, DaySum>, from: number, to: number): DaySum[] {
  return [...days].filter(([day]) => from <= day && day <= to).map(([, sum]) => sum);
}

function herdFigures(ledger: Ledger, last: LastDay, weekEntries: readonly Entry[]): Record<string, Figure> {
  const { day, window } = last;
  const week = window ? daysBetween(ledger.herdDays, window.from, window.to) : [];
  const all = sumDays(week);
  const kept = weekEntries.filter(({ row }) => row.use === 'kept');
  const keptGrains = kept.reduce((sum, entry) => sum + entry.grains, 0n);
  const whole = week.filter(isWhole);
  const wholeRows = sumDays(whole).rows;
  const today = day === null ? undefined : ledger.herdDays.get(day);
  const missing = week.reduce((sum, one) => sum + one.expected - one.entered, 0);
  return {
    'herd.day.total': figure('L', 'The sum of all milk on the last day.', today ? litres(ledger, today.grains) : null,
      day === null ? null : { from: day, to: day }, today?.rows ?? 0),
    'herd.week.total': figure('L', 'The sum of all milk in the window, whatever its use.',
      window ? litres(ledger, all.grains) : null, window, all.rows),
    'herd.week.kept': figure('L', 'The sum of the milk in the window with use kept.',
      window ? litres(ledger, keptGrains) : null, window, kept.length),
    'herd.week.missing': figure('count', 'Milkings expected in the window that have no entry.',
      window ? missing : null, window, all.rows),
    'herd.week.dailyMean': figure('L', 'The mean of the day totals over the whole days of the window.',
      mean_L(ledger, whole), window, wholeRows),
    'herd.week.does': doesInMilk(last, weekEntries),
    'herd.year.total': yearTotal(ledger, day),
    'herd.best.day': bestDay(ledger),
  }; // prettier-ignore
}

/** Whether a day lies in the window. */
export function inWindow(day: number, { window }: LastDay): boolean {
  return window !== null && window.from <= day && day <= window.to;
}

function doesInMilk(last: LastDay, weekEntries: readonly Entry[]): Figure {
  const milk = weekEntries.filter(({ grains }) => grains > 0n);
  const does = new Set(milk.map(({ row }) => row.doe)).size;
  return figure(
    'count',
    'Does with milk in the window.',
    last.window ? does : null,
    last.window,
    milk.length,
  );
}

function yearTotal(ledger: Ledger, day: number | null): Figure {
  const method = "All milk in the last day's calendar year, up to the day the figures are made for.";
  if (day === null) return figure('L', method, null, null, 0);
  const { year } = civilFromDay(day);
  const span = { from: dayFromCivil(year, 1, 1), to: Math.min(dayFromCivil(year, 12, 31), ledger.asOf) };
  const sum = sumDays(daysBetween(ledger.herdDays, span.from, span.to));
  return figure('L', method, litres(ledger, sum.grains), span, sum.rows);
}

function bestDay(ledger: Ledger): Figure {
  let best: { day: number; sum: DaySum } | null = null;
  for (const [day, sum] of ledger.herdDays) {
    if (!isWhole(sum)) continue;
    // Of two equal days the older one holds the record.
    const better =
      best === null || sum.grains > best.sum.grains || (sum.grains === best.sum.grains && day < best.day);
    if (better) best = { day, sum };
  }
  const method = 'The largest total of a whole day on record.';
  if (best === null) return figure('L', method, null, null, 0);
  return figure(
    'L',
    method,
    litres(ledger, best.sum.grains),
    { from: best.day, to: best.day },
    best.sum.rows,
  );
}
