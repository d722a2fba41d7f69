// The part of a pasted link that counts: its query, from whatever host it came.

/**
 * The query of a pasted link, with its question mark; null where there is none with a date.
 * @example queryOf('https://farm.example/trip/?date=2026-05-27#top') // => '?date=2026-05-27'
 */
export function queryOf(pasted: string): string | null {
  // A letter that is pasted whole may ask something before its link comes.
  for (const [, query = ''] of pasted.matchAll(/\?([^?#\s]*)/g)) {
    // Mail programs that show the source of a letter write & as &amp;.
    const plain = query.replaceAll('&amp;', '&');
    if (new URLSearchParams(plain).has('date')) return `?${plain}`;
  }
  return null;
}
