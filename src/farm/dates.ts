// Dates as people write them in a book: the one form that counts, and what another form most likely meant.
import { dayFromCivil, dayNumber, isoDate } from '../../shared/calendar/day.ts';
import { shown } from './fault.ts';

const ISO_SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;
/** Older dates are slips of the pencil. */
const EARLIEST_DAY = dayFromCivil(1900, 1, 1);
const EXPECTED = 'a date as YYYY-MM-DD, for instance 2026-05-21';
const MONTH_NAMES = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH_NAMES_ES = ['ene', 'feb', 'mar', 'abr', 'may', 'jun', 'jul', 'ago', 'sep', 'oct', 'nov', 'dic'];
// Spreadsheets count days from 1899-12-30; five digits cover 1927 to 2173.
const SPREADSHEET_ZERO = dayFromCivil(1899, 12, 30);

/** The words of a fault about a date. */
export interface DateFault {
  readonly found: string;
  readonly expected: string;
  readonly nearest: string | null;
  readonly todo: string;
}

/** The day number of a written date, or null; a date before 1900 is none. */
export function readDay(text: string): number | null {
  const day = dayNumber(text);
  return day !== null && day >= EARLIEST_DAY ? day : null;
}

/** What is wrong with a text that `readDay` refused. */
export function dateFault(text: string): DateFault {
  const found = shown(text);
  const iso = ISO_SHAPE.exec(text);
  if (iso) return { found, ...noSuchDay(Number(iso[1]), Number(iso[2])), nearest: null };
  const meant = likelyDates(text);
  const [one, other] = meant;
  if (other)
    return { found, expected: EXPECTED, nearest: null, todo: `write ${one} or ${other}, whichever is meant` };
  const todo = one
    ? `write ${one}; in a spreadsheet, give the whole column the date format YYYY-MM-DD before you save`
    : 'write the year, the month and the day with a hyphen between them';
  return { found, expected: EXPECTED, nearest: one ?? null, todo };
}

function noSuchDay(year: number, month: number): { expected: string; todo: string } {
  if (month < 1 || month > 12)
    return { expected: 'a month from 01 to 12', todo: 'correct the date: year, month, day' };
  if (year < 1900) return { expected: 'a date from 1900 on', todo: 'correct the year' };
  const next = month === 12 ? dayFromCivil(year + 1, 1, 1) : dayFromCivil(year, month + 1, 1);
  const first = dayFromCivil(year, month, 1);
  return {
    expected: `a day that exists: ${isoDate(first).slice(0, 7)} has ${next - first} days`,
    todo: 'correct the day',
  };
}

/** The days, as ISO dates, that a text in another form may mean: none, one, or two with the month-first reading before the other. */
export function likelyDates(text: string): string[] {
  const plain = text.trim().toLowerCase();
  const withTime = /^(\d{4}-\d{2}-\d{2})[t ]\d/.exec(plain);
  if (withTime) return existing([parts(withTime[1] ?? '', '-')]);
  if (/^\d{5}$/.test(plain)) return [isoDate(SPREADSHEET_ZERO + Number(plain))];
  const packed = /^(\d{4})(\d{2})(\d{2})$/.exec(plain);
  if (packed) return existing([[Number(packed[1]), Number(packed[2]), Number(packed[3])]]);
  const yearFirst = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})\.?$/.exec(plain);
  if (yearFirst) return existing([[Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3])]]);
  const yearLast = /^(\d{1,2})([-/. ])(\d{1,2})[-/. ](\d{4}|\d{2})$/.exec(plain);
  if (yearLast) return fromYearLast(yearLast);
  return fromMonthName(plain);
}

function fromYearLast(match: RegExpExecArray): string[] {
  const [a, b, year] = [Number(match[1]), Number(match[3]), fullYear(match[4] ?? '')];
  const dayFirst: [number, number, number] = [year, b, a];
  // With full stops between, the day is written first everywhere.
  return existing(match[2] === '.' ? [dayFirst] : [[year, a, b], dayFirst]);
}

function fromMonthName(plain: string): string[] {
  const words = plain.split(/[^\p{L}\d]+/u).filter((word) => word !== '' && word !== 'de');
  if (words.length !== 3) return [];
  const name = words.find((word) => /^\p{L}{3,}\.?$/u.test(word))?.slice(0, 3) ?? '';
  const month = 1 + Math.max(MONTH_NAMES.indexOf(name), MONTH_NAMES_ES.indexOf(name));
  const year = words.find((word) => /^\d{4}$/.test(word));
  const day = words.find((word) => /^\d{1,2}(?:st|nd|rd|th)?$/.test(word));
  return month > 0 && year && day ? existing([[Number(year), month, Number.parseInt(day, 10)]]) : [];
}

const fullYear = (digits: string) => (digits.length === 2 ? 2000 + Number(digits) : Number(digits));

function parts(text: string, mark: string): [number, number, number] {
  const [year = 0, month = 0, day = 0] = text.split(mark).map(Number);
  return [year, month, day];
}

function existing(tries: readonly (readonly [number, number, number])[]): string[] {
  const pad = (value: number) => String(value).padStart(2, '0');
  const dates = tries.map(([year, month, day]) => `${year}-${pad(month)}-${pad(day)}`);
  return [...new Set(dates)].filter((date) => readDay(date) !== null);
}
