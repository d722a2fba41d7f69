// The daily sum of a lactation: what was measured, what bridges its gaps, and what stays open, kept apart.
import { STANDARD_DAYS } from './wood.ts';

/** A sum over days of which some were not measured. Units: that of y. */
export interface DailySum {
  /** The sum of the days measured, and how many. */
  readonly measured: number;
  readonly measuredDays: number;
  /** What a straight line between the neighbours puts on the days between them, and how many. Estimated. */
  readonly bridged: number;
  readonly bridgedDays: number;
  /** Measured and bridged together: partly estimated wherever `bridgedDays` is not 0. */
  readonly total: number;
  /** The longest run of bridged days. */
  readonly longestGap_days: number;
  /** First and last day measured, in days since kidding. */
  readonly first_day: number;
  readonly last_day: number;
}

/**
 * Sums a daily record from day 1 to day `to` after kidding (305). A gap between two measured days is
 * bridged by a straight line between them; before the first and after the last day nothing is added,
 * since no neighbour stands there. Null where no day is measured. Days that are not whole numbers,
 * and yields that are not numbers of at least 0, are left out; of two yields for a day the later counts.
 * @example dailySum([{ t: 1, y: 2 }, { t: 4, y: 5 }]).bridged // => 7
 * @example dailySum([]) // => null
 */
export function dailySum(
  points: readonly { readonly t: number; readonly y: number }[],
  to: number = STANDARD_DAYS,
): DailySum | null {
  const byDay = new Map<number, number>();
  for (const { t, y } of points)
    if (Number.isInteger(t) && t >= 1 && t <= to && y >= 0 && Number.isFinite(y)) byDay.set(t, y);
  const days = [...byDay].sort(([a], [b]) => a - b);
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return null;
  let [measured, bridged, bridgedDays, longestGap_days] = [0, 0, 0, 0];
  let before: readonly [number, number] = first;
  for (const day of days) {
    measured += day[1];
    const gap = Math.max(0, day[0] - before[0] - 1);
    // The days of a straight line between two yields come to their mean each.
    bridged += (gap * (before[1] + day[1])) / 2;
    bridgedDays += gap;
    longestGap_days = Math.max(longestGap_days, gap);
    before = day;
  }
  return {
    measured,
    measuredDays: days.length,
    bridged,
    bridgedDays,
    total: measured + bridged,
    longestGap_days,
    first_day: first[0],
    last_day: last[0],
  };
}
