// Which dated copies of the farm folder are kept: many of late, few of long ago.
import { civilFromDay } from '../calendar/day.ts';

/** A copy of the farm folder. */
export interface FarmCopy {
  /** Its file's name without the ending: `2026-05-21`. */
  readonly name: string;
  /** The day it is of, on the farm's clock, a day number. */
  readonly day: number;
}

/** Every copy of so many days, today's among them, is kept. */
export const DAYS_KEPT = 14;
/** Of so many months, this one among them, the newest copy is kept. Of every year the newest copy is kept for good. */
export const MONTHS_KEPT = 12;

/**
 * The names of the copies that are not needed any more, oldest first: all but those of the last 14 days, the newest of each of
 * the last 12 months and the newest of each year. Never the only copy, none of today, and none from the future, since then a
 * clock is wrong. Copies of one day count in the order of their names, a later one as newer.
 * @example copiesToDrop([{ name: '1970-01-05', day: 4 }, { name: '1970-01-06', day: 5 }], 100) // => ['1970-01-05']
 */
export function copiesToDrop(copies: readonly FarmCopy[], today: number): string[] {
  const inOrder = [...copies].sort((a, b) => a.day - b.day || (a.name < b.name ? -1 : 1));
  const thisMonth = monthOf(today);
  const kept = new Set<string>();
  const newest = new Map<string, string>();
  for (const { name, day } of inOrder) {
    if (day > today - DAYS_KEPT) kept.add(name);
    const month = monthOf(day);
    if (month > thisMonth - MONTHS_KEPT) newest.set(`month ${month}`, name);
    newest.set(`year ${civilFromDay(day).year}`, name);
  }
  for (const name of newest.values()) kept.add(name);
  return inOrder.map(({ name }) => name).filter((name) => !kept.has(name));
}

/** Months counted on from year 0. */
function monthOf(day: number): number {
  const { year, month } = civilFromDay(day);
  return year * 12 + month - 1;
}
