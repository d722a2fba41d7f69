// What the board keeps on its own machine: texts by name, and none where the browser keeps nothing.

/** The part of a browser's storage that is used here. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** The text under a name; null where there is none, or where the browser gives nothing. */
export function takeText(shelf: () => Shelf, name: string): string | null {
  try {
    return shelf().getItem(name);
  } catch {
    return null;
  }
}

/** Keeps a text under a name, or takes it away with null. A full or closed storage keeps nothing, without an error. */
export function keepText(shelf: () => Shelf, name: string, text: string | null): void {
  try {
    if (text === null) shelf().removeItem(name);
    else shelf().setItem(name, text);
  } catch {
    // A board that cannot keep goes on without.
  }
}
