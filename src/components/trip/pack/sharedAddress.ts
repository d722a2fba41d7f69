// The address of a page as others can open it.

/** Names by which a machine calls itself; nobody else reaches it by them. */
const OWN_NAME = /^(localhost|127(\.\d+){3}|\[::1\]|.*\.localhost)$/;

/** A path of this site as a whole address; null where this page is served to its own machine alone, or lies in a file. */
export function sharedAddress(path: string, page: Location = location): string | null {
  if (!/^https?:$/.test(page.protocol) || OWN_NAME.test(page.hostname)) return null;
  return new URL(path, page.href).href;
}
