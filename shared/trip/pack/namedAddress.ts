// The address of a page at the place that the farm has named for its pages.

/**
 * A page's address by its path below the site; null where the farm has named no place.
 * @example namedAddress('trip/?date=2026-05-27', 'https://farm.example/kit') // => 'https://farm.example/kit/trip/?date=2026-05-27'
 */
export function namedAddress(below: string, site: string | undefined): string | null {
  return site ? `${site.replace(/\/+$/, '')}/${below.replace(/^\/+/, '')}` : null;
}
