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

// ISO 8601 dates have years of four digits; no formatter of a browser reads others.
const [FIRST_MONTH, LAST_MONTH] = ['0001-01', '9999-12'];

/** A month that an address asks for; null for what is none. */
export function monthIn(text: string): string | null {
  return /^\d{4}-(0[1-9]|1[0-2])$/.test(text) && text >= FIRST_MONTH ? text : null;
}

/**
 * The month so many months later, or before; the first and the last that a date can have end the row.
 * @example monthAfter('2026-12', 1) // => '2027-01'
 */
export function monthAfter(month: string, by: number): string {
  const [year = Number.NaN, number = Number.NaN] = month.split('-').map(Number);
  const months = year * 12 + number - 1 + by;
  if (months < 12) return FIRST_MONTH;
  const next = `${String(Math.floor(months / 12)).padStart(4, '0')}-${String((months % 12) + 1).padStart(2, '0')}`;
  return next.length > LAST_MONTH.length ? LAST_MONTH : next;
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
