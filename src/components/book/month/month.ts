// What the page of the month is built from, and how its numbers are told.
import { noteOf } from '../../../../shared/book/csvRow.ts';
import type { MilkSum, MonthCell, MonthRow, MonthView } from '../../../../shared/book/month.ts';
import type { MilkingTime } from '../../../../shared/herd/types.ts';
import type { AmountUnit } from '../../../../shared/quantity/units.ts';
import { decimalText, mixedText, trimmedText } from '../../../../shared/quantity/show.ts';
import { say, type Words } from '../../../../shared/words/words.ts';

/** What the page carries. */
export interface MonthProps {
  readonly lang: string;
  readonly words: Words;
  /** The site's base path; ends in `/`. */
  readonly base: string;
  /** The farm's IANA time zone. */
  readonly timeZone: string;
  /** The month that was built into the page, without notes. */
  readonly view: MonthView;
  readonly links: {
    readonly month: string;
    readonly enter: string;
    readonly import: string;
    readonly herd: string;
  };
}

/** Where a month came from. `built`: when the site was made; `words`: the same, for a browser that has not said the words. */
export type Source = 'desk' | 'built' | 'words';

/** A cell that somebody wants to read, with whom and when it is about. */
export interface PickedCell {
  readonly doe: string;
  readonly date: string;
  readonly milking: MilkingTime;
  readonly cell: MonthCell;
}

const QUARTERS: readonly AmountUnit[] = ['cup', 'pt', 'qt', 'gal'];

/** A number of the month's unit: cups and the like as people measure them, in quarters, where the number is one. */
export function shownNumber(value: number, unit: AmountUnit, lang: string): string {
  const quarters = value * 4;
  if (QUARTERS.includes(unit) && Math.abs(quarters - Math.round(quarters)) < 1e-9)
    return mixedText(Math.round(quarters), 4, lang) || '0';
  return trimmedText(value, lang);
}

/** A sum, to the same fineness. */
export function shownSum(sum: MilkSum, part: 'all' | 'kept', unit: AmountUnit, lang: string): string {
  return sum.rows === 0 ? '' : shownNumber(sum[part], unit, lang);
}

/** The unit's word for a number. */
export function unitWord(words: Words, unit: AmountUnit, n: number): string {
  return say(words, `book.unit.${unit}`, { n });
}

/** An amount as somebody wrote it, in the unit that they wrote. */
export function writtenAmount(row: MonthRow, words: Words): string {
  if (!row.amount) return say(words, 'month.cell.struck');
  const { num, den, unit } = row.amount;
  const value = num / den;
  const shown =
    Number.isInteger(value * 4) && QUARTERS.includes(unit)
      ? shownNumber(value, unit, words.lang)
      : Number.isInteger(value)
        ? decimalText(value, 0, words.lang)
        : trimmedText(value, words.lang);
  return `${shown} ${unitWord(words, unit, value)}`;
}

/** A note without the sign that keeps spreadsheets from running it. */
export const noteText = (row: MonthRow): string => noteOf(row.note);

const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(lang: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${lang} ${JSON.stringify(options)}`;
  let format = formats.get(key);
  if (!format) formats.set(key, (format = new Intl.DateTimeFormat(lang === 'es' ? 'es-MX' : lang, options)));
  return format;
}

const noon = (date: string) => new Date(`${date}T12:00:00Z`);

/** `May 2026` of `2026-05`. */
export function monthName(month: string, lang: string): string {
  return formatOf(lang, { month: 'long', year: 'numeric', timeZone: 'UTC' }).format(noon(`${month}-15`));
}

/** `Thu` of a date. */
export function weekdayName(date: string, lang: string, width: 'short' | 'narrow' = 'short'): string {
  return formatOf(lang, { weekday: width, timeZone: 'UTC' }).format(noon(date));
}

/** `Thursday, May 21` of a date. */
export function dayName(date: string, lang: string): string {
  return formatOf(lang, { weekday: 'long', month: 'long', day: 'numeric', timeZone: 'UTC' }).format(
    noon(date),
  );
}

/** A moment by the farm's own clock. */
export function momentName(moment_ms: number, lang: string, timeZone: string): string {
  return formatOf(lang, { dateStyle: 'medium', timeStyle: 'short', timeZone })
    .format(new Date(moment_ms))
    .replace(/[\u2009\u202f]/g, ' ');
}

/** Days before the first of the month in a calendar that begins with Sunday, as those of the US and Mexico do. */
export const daysBefore = (date: string): number => noon(date).getUTCDay();
