// When it is settled whether a visit is held by its rain plan.
import { dayNumber, isoDate } from '../../calendar/day.ts';
import type { TripWish } from '../types.ts';

/** Hours before arriving at which farm and school look at the forecast together. Common practice, no source. */
export const RAIN_CALL_HOURS = Object.freeze([18, 2] as const);

const DAY_min = 24 * 60;

/** The moments at which rain is decided, the first one first; clock times in minutes after midnight. */
export function rainCalls({
  date,
  arrive,
}: Pick<TripWish, 'date' | 'arrive'>): { date: string; at: number }[] {
  const day = dayNumber(date);
  if (day === null) throw new Error(`"${date}" is no date.`);
  return RAIN_CALL_HOURS.map((hours) => {
    const before = arrive - hours * 60;
    const days = Math.floor(before / DAY_min);
    return { date: isoDate(day + days), at: before - days * DAY_min };
  });
}
