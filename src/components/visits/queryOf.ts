// The part of a pasted link that counts: its query, from whatever host it came.

/**
 * The query of a pasted link, with its question mark; null where there is none with a date.
 * @example queryOf('https://farm.example/trip/?date=2026-05-27#top') // => '?date=2026-05-27'
 */
export function queryOf(pasted: string): string | null {
  const [, query = ''] = /\?([^#\s]*)/.exec(pasted.trim()) ?? [];
  // Mail programs that show the source of a letter write & as &amp;.
  const plain = query.replaceAll('&amp;', '&');
  return new URLSearchParams(plain).has('date') ? `?${plain}` : null;
}
