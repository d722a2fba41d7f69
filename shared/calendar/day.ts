// Calendar days as whole numbers: dates are counted, never clocked.

const DAYS_BEFORE_1970 = 719468;
const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * Days from 1970-01-01 to the given civil date in the proleptic Gregorian calendar.
 * The algorithm counts from 1 March, so that the leap day comes last in its year.
 * Source: H. Hinnant, "chrono-compatible low-level date algorithms" (from memory).
 */
export function dayFromCivil(year: number, month: number, dayOfMonth: number): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - DAYS_BEFORE_1970;
}

/** Year, month (1-12) and day of the month of a day number. */
export function civilFromDay(day: number): { year: number; month: number; dayOfMonth: number } {
  const shifted = day + DAYS_BEFORE_1970;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    dayOfMonth: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

/**
 * The day number of an ISO 8601 calendar date (`YYYY-MM-DD`), or null where the text is not
 * written so or names a day that does not exist (2026-02-30).
 * @example dayNumber('1970-01-02') // => 1
 * @example dayNumber('2026-02-30') // => null
 */
export function dayNumber(iso: string): number | null {
  const match = ISO_DATE.exec(iso);
  if (!match) return null;
  const [year, month, dayOfMonth] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || dayOfMonth < 1) return null;
  const day = dayFromCivil(year, month, dayOfMonth);
  const back = civilFromDay(day);
  return back.month === month && back.dayOfMonth === dayOfMonth ? day : null;
}

/**
 * The ISO 8601 date of a day number.
 * @example isoDate(0) // => '1970-01-01'
 */
export function isoDate(day: number): string {
  const { year, month, dayOfMonth } = civilFromDay(day);
  const pad = (value: number, width: number) => String(value).padStart(width, '0');
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(dayOfMonth, 2)}`;
}

/**
 * Day of the week, 0 for Sunday to 6 for Saturday.
 * @example weekday(0) // => 4
 */
export function weekday(day: number): number {
  return (((day + 4) % 7) + 7) % 7;
}
