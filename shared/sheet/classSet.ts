// A class set: one sheet in many copies, each a little different, from a word and a number.
import { MOST_COPIES } from './mostCopies.ts';
import { makeSheet, type Sheet, type SheetRequest } from './sheet.ts';

/** How often a copy that came out like another is drawn again before it is left as it is. */
const MOST_TRIES = 6;

/**
 * The seeds that are tried for a copy, the first one first: `fern-3`, then `fern-3.2` and so on.
 * @example copySeeds('fern', 3)[1] // => 'fern-3.2'
 */
export function copySeeds(word: string, copy: number): string[] {
  return Array.from({ length: MOST_TRIES }, (_, again) =>
    again === 0 ? `${word}-${copy}` : `${word}-${copy}.${again + 1}`,
  );
}

/**
 * The copies of a sheet for a class: copy 3 of the word "fern" has the seed `fern-3`. Where a seed gives the very tasks or
 * the very code of a copy before it, the next try (`fern-3.2`) is taken; a thin week may leave some copies alike.
 * The same word, week and grade always give the same set. One copy has the word itself as its seed.
 * Throws for fewer than 1 or more than `MOST_COPIES` copies.
 */
export function classSet(request: Omit<SheetRequest, 'seed'>, word: string, copies: number): Sheet[] {
  return [...classCopies(request, word, copies)];
}

/** The copies of a class set one by one, as `classSet` gives them, for who must not wait for all. */
export function* classCopies(
  request: Omit<SheetRequest, 'seed'>,
  word: string,
  copies: number,
): Generator<Sheet, void> {
  if (!Number.isInteger(copies) || copies < 1 || copies > MOST_COPIES)
    throw new Error(`A class set has 1 to ${MOST_COPIES} copies, not ${copies}.`);
  if (copies === 1) {
    yield makeSheet({ ...request, seed: word });
    return;
  }
  const met = new Set<string>();
  const codes = new Set<string>();
  for (let copy = 1; copy <= copies; copy += 1) {
    const sheet = firstFresh(request, copySeeds(word, copy), met, codes);
    met.add(content(sheet));
    codes.add(sheet.code);
    yield sheet;
  }
}

const content = (sheet: Sheet): string => JSON.stringify(sheet.tasks);

/** The first try that is like no copy before; else the first whose code is its own. */
function firstFresh(
  request: Omit<SheetRequest, 'seed'>,
  seeds: readonly string[],
  met: ReadonlySet<string>,
  codes: ReadonlySet<string>,
): Sheet {
  let spare: Sheet | null = null;
  for (const seed of seeds) {
    const sheet = makeSheet({ ...request, seed });
    if (codes.has(sheet.code)) continue;
    if (!met.has(content(sheet))) return sheet;
    spare ??= sheet;
  }
  if (!spare) throw new Error(`All codes of "${seeds[0] ?? ''}" are taken.`);
  return spare;
}

/** The copies of a set by the codes in their feet. */
export function copyByCode<S extends { readonly code: string }>(
  copies: readonly S[],
  code: string,
): S | null {
  const plain = code.trim().toUpperCase();
  return copies.find((one) => one.code === plain) ?? null;
}
