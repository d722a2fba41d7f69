// One CSV file of the farm folder: bytes in, checked rows of cells out.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cellPlace, plainBreaks, walkRecords, type QuoteFault, type Separator } from './csv.ts';
import { decodeText } from './encoding.ts';
import { counted, faultAt, shown, type Findings, type Place } from './fault.ts';
import { readHeading, SEPARATOR_NAMES, type ColumnRules, type Heading } from './heading.ts';

/** A table that is ready to be walked. */
export interface Table {
  readonly file: string;
  readonly text: string;
  readonly heading: Heading;
  readonly rules: ColumnRules;
}

/** One row: its cells by column, and where it stands. */
export interface Row {
  readonly cells: readonly string[];
  readonly start: number;
  readonly line: number;
}

/** Reads a file's text; a fault is added where it cannot be read, or is no UTF-8 text. */
export function readText(dir: string, file: string, findings: Findings): string | null {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(join(dir, file));
  } catch (error) {
    findings.faults.push(unreadable(file, error));
    return null;
  }
  const { text, fault } = decodeText(bytes);
  if (fault) findings.faults.push(faultAt(file, fault.place, fault));
  return text;
}

/** A fault for a file or folder that the system does not hand over. */
export function unreadable(file: string, error: unknown) {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  const why: Record<string, string> = {
    EACCES: 'a file that may not be opened (no permission)',
    EPERM: 'a file that may not be opened (no permission)',
    EISDIR: 'a folder',
    ENOENT: 'no such file',
  };
  return faultAt(file, null, {
    found: why[code] ?? `a file that cannot be read (${code})`,
    expected: 'a file that can be read',
    todo: 'see that it is a plain file, closed in other programs, and that you may open it',
  });
}

/** Opens a table. `heading` is null in `empty` files: whether that is a fault is the caller's to say. */
export function openTable(
  dir: string,
  file: string,
  rules: ColumnRules,
  findings: Findings,
): Table | 'empty' | null {
  const raw = readText(dir, file, findings);
  if (raw === null) return null;
  const text = plainBreaks(raw);
  const heading = readHeading(file, text, rules, findings);
  return heading ? { file, text, heading, rules } : 'empty';
}

/** Where a row's cell under a heading starts; the row's own start where the file lacks the column. */
export function placeIn(table: Table, row: Row, column: string | number): Place {
  const index = typeof column === 'number' ? column : (table.heading.at[column] ?? 0);
  return cellPlace(table.text, table.heading.separator, row, Math.max(index, 0));
}

/**
 * Walks the rows with something in them. Empty cells that a spreadsheet left out at a row's end, or
 * put there, are no fault; a row that lacks a required cell, or has text beyond the headings, is one.
 */
export function walkRows(
  table: Table,
  findings: Findings,
  onRow: (cells: readonly string[], start: number, line: number, quoted: boolean) => void,
): void {
  const { heading, rules, text, file } = table;
  const least = Math.max(...rules.required.map((name) => (heading.at[name] ?? -1) + 1), 1);
  const hasUnnamed = heading.unnamed.length > 0;
  const take = (cells: readonly string[], start: number, line: number, quoted: boolean) => {
    const { length } = cells;
    if (length === heading.width && !hasUnnamed) {
      if (cells.some((cell) => cell.trim() !== '')) onRow(cells, start, line, quoted);
      return;
    }
    if (cells.every((cell) => cell.trim() === '')) return;
    const row = { cells, start, line };
    if (length < least) findings.faults.push(tooFew(table, row));
    else if (!addBeyond(table, row, findings)) onRow(cells, start, line, quoted);
  };
  walkRecords(text, heading.separator, heading.rows, take, (fault) => {
    findings.faults.push(quoteFault(file, fault));
    // The row is lost to the book, but its other cells are told of now, not on the next try.
    const { cells, start, line } = fault.record;
    if (cells.length === heading.width) onRow(cells, start, line, false);
  });
}

function tooFew(table: Table, row: Row) {
  const { heading, rules } = table;
  const { width, separator } = heading;
  const others = (Object.keys(SEPARATOR_NAMES) as Separator[]).filter((one) => one !== separator);
  const other = others.find((one) => (row.cells[0] ?? '').split(one).length > 1);
  const missing = rules.required.filter((name) => (heading.at[name] ?? -1) >= row.cells.length);
  return faultAt(table.file, placeIn(table, row, 0), {
    found: counted(row.cells.length, 'cell'),
    expected: `${counted(width, 'cell')}, one under each heading`,
    todo:
      other && row.cells.length === 1
        ? `put a ${SEPARATOR_NAMES[separator]} between the cells, as in the heading line, not a ${SEPARATOR_NAMES[other]}`
        : `add what is missing (${missing.join(', ')}); a cell that stays empty still needs its ${SEPARATOR_NAMES[separator]}`,
  });
}

function addBeyond(table: Table, row: Row, findings: Findings): boolean {
  const { heading } = table;
  const beyond = row.cells.findIndex(
    (cell, index) => cell.trim() !== '' && (index >= heading.width || heading.unnamed.includes(index)),
  );
  if (beyond < 0) return false;
  const text = row.cells[beyond] ?? '';
  const name = SEPARATOR_NAMES[heading.separator];
  findings.faults.push(
    faultAt(table.file, placeIn(table, row, beyond), {
      found: `${shown(text.trim())} in a cell with no heading over it`,
      expected: `at most ${counted(heading.width - heading.unnamed.length, 'cell')}, one under each heading`,
      todo: `put a text that holds a ${name} in double quotes ("…"), or take the extra ${name} out`,
    }),
  );
  return true;
}

function quoteFault(file: string, fault: QuoteFault) {
  const cell = shown(fault.cell.trim());
  if (fault.kind === 'unclosed')
    return faultAt(file, fault.place, {
      found: `a double quote that opens a cell and is not closed, before ${shown(fault.cell.trim().replace(/^"/, ''))}`,
      expected: 'a second double quote at the end of the cell',
      todo: 'close the quote where the cell ends, or take it out; the rows below were checked as if it were not there',
    });
  return faultAt(file, fault.place, {
    found: `a double quote inside a cell, in ${cell}`,
    expected: 'double quotes only around a whole cell',
    todo: 'take it out; or put the whole cell in double quotes and write each one inside it twice ("")',
  });
}
