// The names of months as people read them.

// School Spanish in the Americas, as numbers have it.
const LOCALE: Readonly<Record<string, string>> = { en: 'en-US', es: 'es-MX' };

/**
 * A month by its name: `long` such as `May`, `short` as it fits under a jar, `year` with its year.
 * `iso` is `YYYY-MM` or a whole date.
 * @example monthText('2026-05', 'en', 'year') // => 'May 2026'
 */
export function monthText(iso: string, lang: string, style: 'long' | 'short' | 'year'): string {
  const format = new Intl.DateTimeFormat(LOCALE[lang] ?? lang, {
    month: style === 'short' ? 'short' : 'long',
    ...(style === 'year' ? { year: 'numeric' } : {}),
    timeZone: 'UTC',
  });
  return format.format(new Date(`${iso.slice(0, 7)}-15T12:00:00Z`));
}
