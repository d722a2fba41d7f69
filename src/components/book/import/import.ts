// What the import's page is built from, and how its rows are told.
import type { ImportPreview, Told } from '../../../../shared/book/importTypes.ts';
import { say, type Words } from '../../../../shared/words/words.ts';

/** What the page carries. */
export interface ImportProps {
  readonly lang: string;
  readonly words: Words;
  /** The site's base path; ends in `/`. */
  readonly base: string;
  readonly links: { readonly month: string; readonly enter: string };
}

/** A sentence of the desk in the reader's words. */
export function tell(words: Words, { key, slots }: Told): string {
  return say(words, `month.import.${key}`, slots);
}

/** Column 0 is A, 26 is AA, as spreadsheets count. */
export function columnLetter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : columnLetter(Math.floor(index / 26) - 1) + last;
}

/** What the list of rows shows. */
export const FILTERS = ['all', 'faults', 'new', 'correction', 'known', 'left'] as const;
export type Filter = (typeof FILTERS)[number];

/** One line of the list, in the order of the file. */
export interface ShownLine {
  readonly id: string;
  readonly filter: Exclude<Filter, 'all'>;
  readonly line: number;
  readonly column: number | null;
  readonly at: number;
}

/** Every row, test, fault and row left out, in the order of the file. */
export function shownLines({ rows, tests, faults, left }: ImportPreview): ShownLine[] {
  const lines: ShownLine[] = [
    ...rows.map(({ kind, line, column }, at) => ({ id: `row ${at}`, filter: kind, line, column, at })),
    ...tests.map(({ kind, line }, at) => ({
      id: `test ${at}`,
      filter: kind === 'other' ? ('correction' as const) : kind,
      line,
      column: null,
      at,
    })),
    ...faults.map(({ line, column }, at) => ({
      id: `fault ${at}`,
      filter: 'faults' as const,
      line,
      column,
      at,
    })),
    ...left.map(({ line, column }, at) => ({ id: `left ${at}`, filter: 'left' as const, line, column, at })),
  ];
  return lines.sort((a, b) => a.line - b.line || (a.column ?? -1) - (b.column ?? -1));
}
