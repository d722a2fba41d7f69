// Months, days and times as the calendar writes them.
import { clockText } from '../../../shared/quantity/show.ts';
import type { Span } from '../../../shared/trip/types.ts';

const noon = (date: string) => new Date(`${date}T12:00:00Z`);
const localeOf = (lang: string) => (lang === 'es' ? 'es-MX' : lang);
const capital = (text: string, lang: string) => text.charAt(0).toLocaleUpperCase(lang) + text.slice(1);

/** `May 2026` of `2026-05`. */
export function monthName(month: string, lang: string): string {
  const format = new Intl.DateTimeFormat(localeOf(lang), { month: 'long', year: 'numeric', timeZone: 'UTC' });
  return capital(format.format(noon(`${month}-15`)), lang);
}

/** `Wednesday, May 27` of a date. */
export function dayName(date: string, lang: string): string {
  const format = new Intl.DateTimeFormat(localeOf(lang), {
    weekday: 'long',
    month: 'long',
    day: 'numeric',
    timeZone: 'UTC',
  });
  return capital(format.format(noon(date)), lang);
}

/** `Wed` of a date. */
export function weekdayShort(date: string, lang: string): string {
  return new Intl.DateTimeFormat(localeOf(lang), { weekday: 'short', timeZone: 'UTC' }).format(noon(date));
}

/** `9:30–11:45 AM`: the half of the day is told once where both times share it, and never stands on a line of its own. */
export function spanShort({ from, to }: Span, lang: string): string {
  const [first, last] = [clockText(from, lang), clockText(to, lang)];
  const half = / ?[ap]\.?\s?m\.?$/i;
  const [a, b] = [half.exec(first)?.[0], half.exec(last)?.[0]];
  return `${a !== undefined && a === b ? first.replace(half, '') : first}–${last}`.replaceAll(' ', '\u00a0');
}
