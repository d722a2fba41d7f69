// The passphrase in the address, as the code to scan brings it: read once, and gone before anything else happens.

const MARK = /^#words=(.+)$/;

/** The passphrase that the address carries, or null; it stays neither in the address nor in the history. */
export function takeWords(): string | null {
  const words = MARK.exec(location.hash)?.[1];
  if (words === undefined) return null;
  history.replaceState(history.state, '', location.pathname + location.search);
  try {
    return decodeURIComponent(words.replaceAll('+', ' '));
  } catch {
    return words;
  }
}
