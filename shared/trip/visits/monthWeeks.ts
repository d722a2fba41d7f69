// A month laid out in weeks, with whatever stands on its dates.
import { civilFromDay, dayFromCivil, isoDate, weekday } from '../../calendar/day.ts';

/** A day of the month's page; `isOther` where it belongs to the month before or after. */
export interface MonthPageDay {
  readonly date: string;
  readonly dayOfMonth: number;
  readonly isOther: boolean;
}

const WEEK = 7;

/** The month `YYYY-MM` of a date. */
export const monthOf = (date: string): string => date.slice(0, 7);

/**
 * The month so many months later, or before.
 * @example monthAfter('2026-12', 1) // => '2027-01'
 */
export function monthAfter(month: string, by: number): string {
  const [year = Number.NaN, number = Number.NaN] = month.split('-').map(Number);
  const months = year * 12 + number - 1 + by;
  return `${String(Math.floor(months / 12)).padStart(4, '0')}-${String((months % 12) + 1).padStart(2, '0')}`;
}

/** The weeks of a month `YYYY-MM`, from Sunday to Saturday, as calendars of the US and Mexico are laid out. */
export function monthWeeks(month: string): MonthPageDay[][] {
  const [year = Number.NaN, number = Number.NaN] = month.split('-').map(Number);
  const first = dayFromCivil(year, number, 1);
  const start = first - weekday(first);
  const weeks: MonthPageDay[][] = [];
  for (let day = start; day === start || monthOf(isoDate(day)) === month; day += WEEK)
    weeks.push(
      Array.from({ length: WEEK }, (_, index) => {
        const date = isoDate(day + index);
        const { dayOfMonth } = civilFromDay(day + index);
        return { date, dayOfMonth, isOther: monthOf(date) !== month };
      }),
    );
  return weeks;
}
