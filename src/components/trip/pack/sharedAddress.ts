// The address of the trip's page as others can open it.
import { namedAddress } from '../../../../shared/trip/pack/namedAddress.ts';

/** Names by which a machine calls itself; nobody else reaches it by them. */
const OWN_NAME = /^(localhost|127(\.\d+){3}|\[::1\]|.*\.localhost)$/;

/**
 * The address of a page of this site: of the host that it was opened at, or, where that is this very machine, at the address
 * that the farm has named for its pages. Null where there is neither. `path` is the page's whole path here, `below` the same
 * below the base path of the site.
 */
export function sharedAddress(
  { path, below }: { path: string; below: string },
  named: string | undefined,
  page: Location = location,
): string | null {
  if (/^https?:$/.test(page.protocol) && !OWN_NAME.test(page.hostname)) return new URL(path, page.href).href;
  return namedAddress(below, named);
}
