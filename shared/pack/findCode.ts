// Finds the copy of a class set that carries a code, among all sheets and grades of a class word.
import { GRADES_OF } from '../tasks/standards.ts';
import { classCopies, copySeeds } from '../sheet/classSet.ts';
import { MOST_COPIES } from '../sheet/mostCopies.ts';
import { codeOf, makeSheet, type Sheet, type SheetRequest } from '../sheet/sheet.ts';

/** A sheet of no grade and no seed yet. */
export type SheetStem = Omit<SheetRequest, 'seed' | 'grade'>;

/** A copy that carries the code, and which of its set it is; null for a sheet that is printed alone. */
export interface FoundCopy {
  readonly sheet: Sheet;
  readonly copy: number | null;
}

/** Signs that no code holds, since each looks like another. */
const UNUSED = /[01ILOU]/;

/**
 * A code as it is printed, from what somebody typed: capitals, without spaces and dashes.
 * @example tidyCode(' ab-2c d') // => 'AB2CD'
 */
export function tidyCode(typed: string): string {
  return typed.toUpperCase().replaceAll(/[^A-Z0-9]/g, '');
}

/** Whether a code holds a sign that no code has, so that it must be misread. */
export function isMisread(code: string): boolean {
  return UNUSED.test(code);
}

/**
 * Finds a code among the copies that a word can give of some sheets: each grade of their band, alone or as any copy of a set.
 * Codes are reckoned without making a sheet; only one that fits is made. Null where none fits.
 */
export function findCopy(typed: string, word: string, stems: readonly SheetStem[]): FoundCopy | null {
  const code = tidyCode(typed);
  for (const stem of stems)
    for (const grade of GRADES_OF[stem.band]) {
      const request = { ...stem, grade };
      if (codeOf(request, word) === code) return { sheet: makeSheet({ ...request, seed: word }), copy: null };
      for (let copy = 1; copy <= MOST_COPIES; copy += 1) {
        if (!copySeeds(word, copy).some((seed) => codeOf(request, seed) === code)) continue;
        const sheet = copyOf(request, word, copy);
        if (sheet?.code === code) return { sheet, copy };
      }
    }
  return null;
}

/** One copy of a set. Which try it took hangs on the copies before it, so these are made as well. */
function copyOf(request: Omit<SheetRequest, 'seed'>, word: string, copy: number): Sheet | undefined {
  // A set of one has another seed, so the first copy is taken from a set of two.
  let place = 0;
  for (const sheet of classCopies(request, word, Math.max(2, copy))) {
    place += 1;
    if (place === copy) return sheet;
  }
  return undefined;
}
