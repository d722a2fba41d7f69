// The first day whose milk may be kept after a medicine: whole days, rounded to the safe side.
import type { MilkingTime } from '../herd/types.ts';

/** What is known of a treatment's end. Days are day numbers. */
export interface LastDose {
  /** Day of the last dose. */
  readonly day: number;
  /** The milking that it was given at. */
  readonly milking: MilkingTime;
  /** How long milk is withheld after it, as the label says or the veterinarian has set, hours. */
  readonly hours: number;
}

/** When withholding ends, and the first day whose milk may be kept from its first milking on. */
export interface Withdrawal {
  /** Day, and minutes after its midnight, at which the hours are surely over. */
  readonly overDay: number;
  readonly over_min: number;
  readonly freeDay: number;
}

/** The most hours that make sense: sixty days. */
export const MOST_HOURS = 1440;
/**
 * How long after a milking's clock time its dose may have been given, minutes. Own rule: a milking takes its time, and a
 * clock that is set forward takes another hour.
 */
export const DOSE_LATE_min = 120;
const DAY_min = 1440;

/**
 * Counts from the last dose. `milkings` are the farm's clock times, `HH:MM`; a dose counts as given two hours after its
 * milking begins, and a day is free when its morning milking begins after the end. Null where the hours are none.
 * Withholding counts from the last dose and ends as the label or the veterinarian says (FDA, AMDUCA 1994; from memory).
 * @example withdrawal({ day: 10, milking: 'am', hours: 96 }, { am: '06:30', pm: '17:30' })?.freeDay // => 15
 */
export function withdrawal(
  { day, milking, hours }: LastDose,
  milkings: Readonly<Record<MilkingTime, string>>,
): Withdrawal | null {
  if (!(hours >= 0 && hours <= MOST_HOURS)) return null;
  const over = day * DAY_min + minutesOf(milkings[milking]) + DOSE_LATE_min + Math.ceil(hours * 60);
  const overDay = Math.floor(over / DAY_min);
  const over_min = over - overDay * DAY_min;
  const isFree = over_min <= minutesOf(milkings.am);
  return { overDay, over_min, freeDay: isFree ? overDay : overDay + 1 };
}

function minutesOf(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 60 + minutes;
}
