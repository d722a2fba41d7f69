// The parts of a pack: what it may hold, in its order, and what is in it where nobody has chosen.
import type { Shelf } from '../../pack/order.ts';
import { PAPER_NAMES, type PaperName } from '../papers/types.ts';

/** A part of a pack. Its name stands in addresses. */
export interface PackPart {
  readonly name: string;
  readonly kind: 'paper' | 'lesson' | 'sheet' | 'keys';
  /** Whether it is in where nobody has chosen. */
  readonly usual: boolean;
  /** The sheet's or lesson's own name; null for papers and keys. */
  readonly of: string | null;
}

/** The names of a pack's own parts besides papers and sheets. */
export const BEFORE = 'lesson-before';
export const AFTER = 'lesson-after';
export const KEYS = 'keys';
const SHEET = 'sheet-';

/** The names of all parts that any pack of this shelf may hold. */
export function partNames({ sheets }: Pick<Shelf, 'sheets'>): string[] {
  return [...PAPER_NAMES, BEFORE, AFTER, KEYS, ...sheets.map(({ name }) => `${SHEET}${name}`)];
}

/** What of the shelves is at hand for the pack, by name. */
export interface AtHand {
  readonly before: string | null;
  readonly after: string | null;
  /** Sheets for the day, the nearest first. */
  readonly at: readonly string[];
  readonly recall: string | null;
}

/**
 * All parts that a pack may hold, in its order: papers, the lesson before, sheets for the day, the lesson after, the recall
 * sheet, keys. Of the sheets for the day only the nearest is usual, since a child fills one on a visit.
 */
export function partsOf(papers: readonly PaperName[], { before, after, at, recall }: AtHand): PackPart[] {
  const lesson = (name: string, of: string | null): PackPart[] =>
    of === null ? [] : [{ name, kind: 'lesson', usual: true, of }];
  const sheet = (of: string, usual: boolean): PackPart => ({
    name: `${SHEET}${of}`,
    kind: 'sheet',
    usual,
    of,
  });
  const recalled = recall === null || at.includes(recall) ? [] : [sheet(recall, true)];
  const sheets = [...at.map((of, place) => sheet(of, place === 0)), ...recalled];
  return [
    ...papers.map((name): PackPart => ({ name, kind: 'paper', usual: true, of: null })),
    ...lesson(BEFORE, before),
    ...sheets.slice(0, at.length),
    ...lesson(AFTER, after),
    ...recalled,
    ...(sheets.length > 0 ? [{ name: KEYS, kind: 'keys', usual: true, of: null } as const] : []),
  ];
}

/** The names that are in: those chosen that there are, in the pack's order; the usual ones where nobody has chosen. */
export function partsIn(parts: readonly PackPart[], chosen: readonly string[] | null): string[] {
  return parts.filter(({ name, usual }) => chosen?.includes(name) ?? usual).map(({ name }) => name);
}
