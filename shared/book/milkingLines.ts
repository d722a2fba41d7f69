// The lines of one milking in the Milk book: a doe each, with all that is to be seen before her milk is put down.
import { dayNumber, isoDate } from '../calendar/day.ts';
import type { Use } from '../herd/types.ts';
import { expectedAt, isAfter, type Milking } from './nextMilking.ts';
import { startingUse } from './startingUse.ts';
import { usualOf, type Usual } from './usual.ts';
import type { BookClash, BookDoe, BookRow, BookState, Treatment } from './types.ts';

/** A row as the page shows it: at the desk, or still waiting on this phone. */
export interface LineRow extends BookRow {
  readonly waiting?: boolean;
}

/** The part of the book that lines are made from. */
export type LinesBook = Pick<BookState, 'does' | 'treatments' | 'clashes'> & {
  readonly rows: readonly LineRow[];
};

/** One doe at one milking. */
export interface DoeLine {
  readonly doe: BookDoe;
  /** Whether the book expects her at this milking. */
  readonly expected: boolean;
  /** What stands for this milking, or waits on this phone; null where nothing does. */
  readonly row: LineRow | null;
  /** Her last milking before this one, whichever time of day. */
  readonly last: BookRow | null;
  readonly usual: Usual | null;
  /** The treatment that withholds this day's milk, the longest of several; null where none does. */
  readonly treated: Treatment | null;
  readonly clash: BookClash | null;
  /** What becomes of the milk until somebody says otherwise. */
  readonly startingUse: Use;
}

/**
 * The lines of a milking in the order of the farm's list: every doe that is expected, those that are entered though
 * nobody expected them, and those that somebody has asked for by `added`. The order never changes with what is entered.
 */
export function milkingLines(book: LinesBook, at: Milking, added: readonly string[] = []): DoeLine[] {
  const date = isoDate(at.day);
  const expected = new Set(expectedAt(book.does, at).map(({ id }) => id));
  const isHere = (one: { readonly date: string; readonly milking: string }) =>
    one.date === date && one.milking === at.milking;
  const rows = new Map(book.rows.filter(isHere).map((row) => [row.doe, row]));
  const clashes = new Map(book.clashes.filter(isHere).map((clash) => [clash.doe, clash]));
  return book.does
    .filter(({ id }) => expected.has(id) || rows.has(id) || clashes.has(id) || added.includes(id))
    .map((doe) => {
      const treated = treatmentOn(book.treatments, doe.id, at.day);
      const ofThisTime = book.rows.filter(({ milking }) => milking === at.milking);
      return {
        doe,
        expected: expected.has(doe.id),
        row: rows.get(doe.id) ?? null,
        last: lastBefore(book.rows, doe.id, at),
        usual: usualOf(book.rows, doe.id, at),
        treated,
        clash: clashes.get(doe.id) ?? null,
        startingUse: startingUse(doe, treated, lastBefore(ofThisTime, doe.id, at), at),
      };
    });
}

/** The does that have no line, to be added to a milking. */
export function doesToAdd(book: LinesBook, lines: readonly DoeLine[]): BookDoe[] {
  const there = new Set(lines.map(({ doe }) => doe.id));
  return book.does.filter(({ id }) => !there.has(id));
}

/** Her last row before a milking; null where she has none. */
function lastBefore(rows: readonly LineRow[], doe: string, at: Milking): LineRow | null {
  let last: { row: LineRow; when: Milking } | null = null;
  for (const row of rows) {
    const day = dayNumber(row.date);
    if (row.doe !== doe || day === null) continue;
    const when = { day, milking: row.milking };
    if (isAfter(at, when) && (!last || isAfter(when, last.when))) last = { row, when };
  }
  return last?.row ?? null;
}

/**
 * The treatment by which a doe's milk of a day is withheld: from its first day up to, and without, the day from which
 * milk may be kept again. Of several the longest counts; one without an end is the longest.
 */
export function treatmentOn(treatments: readonly Treatment[], doe: string, day: number): Treatment | null {
  const all = treatments.filter(
    (one) => one.doe === doe && one.from <= day && (one.until === null || day < one.until),
  );
  const end = ({ until }: Treatment) => until ?? Number.POSITIVE_INFINITY;
  return all.reduce<Treatment | null>((most, one) => (most && end(most) >= end(one) ? most : one), null);
}
