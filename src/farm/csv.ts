// RFC 4180 records from text, each with its place, going on after a fault to find the next one.
//
// A library stops at the first bad quote and does not say where a cell starts; a book must be told
// all its faults at once with line and column, and a million rows must read in seconds. The tests
// hold this reader against csv-parse.
import type { Place } from './fault.ts';

/** The separators that a farm's file may use between cells. */
export type Separator = ',' | ';' | '\t';

/** A record's cells as written, with quotes taken off; `start` is its offset in the text. */
interface CsvRecord {
  readonly cells: readonly string[];
  readonly start: number;
  readonly line: number;
}

/** A quote that breaks the rules. `unclosed`: it opens and nothing rightly closes it. */
export interface QuoteFault {
  readonly kind: 'unclosed' | 'text after quote' | 'quote in a bare cell';
  readonly place: Place;
  /** The cell as far as it could be told. */
  readonly cell: string;
  /** The line with the bad quote standing for itself: what can still be checked of it. */
  readonly record: CsvRecord;
}

type Quoted =
  | { ok: true; cells: string[]; end: number }
  | { ok: false; kind: QuoteFault['kind']; at: number; from: number; resume: number };

/** The text with every line break, of whichever kind, as a single line feed. */
export function plainBreaks(text: string): string {
  return text.includes('\r') ? text.replace(/\r\n/g, '\n').replaceAll('\r', '\n') : text;
}

/**
 * Walks the records of a text with plain breaks, from an offset whose line is given. Lines without
 * any character are passed over. After a bad quote the walk goes on with the next line.
 */
export function walkRecords(
  text: string,
  separator: Separator,
  from: { offset: number; line: number },
  onRecord: (cells: readonly string[], start: number, line: number, quoted: boolean) => void,
  onFault: (fault: QuoteFault) => void,
): void {
  let line = from.line;
  for (let start = from.offset; start < text.length;) {
    const end = lineEnd(text, start);
    const bare = text.slice(start, end);
    if (!bare.includes('"')) {
      if (end > start) onRecord(bare.split(separator), start, line, false);
      start = end + 1;
      line += 1;
      continue;
    }
    const read = readQuoted(text, separator, start);
    if (read.ok) onRecord(read.cells, start, line, true);
    else {
      const place = placeFrom(text, start, line, read.at);
      const cell = text.slice(read.from, lineEnd(text, read.at));
      const cells = cellsAsTheyStand(bare, separator);
      onFault({ kind: read.kind, place, cell, record: { cells, start, line } });
    }
    const next = read.ok ? read.end + 1 : read.resume;
    line += breaksIn(text, start, next);
    start = next;
  }
}

/**
 * The record that starts at an offset, and the offset of the next one. A bad quote stands for itself
 * and the record ends with its line.
 */
export function recordAt(
  text: string,
  separator: Separator,
  start: number,
): { cells: string[]; next: number } {
  const read = readQuoted(text, separator, start);
  if (read.ok) return { cells: read.cells, next: read.end + 1 };
  const end = lineEnd(text, start);
  return { cells: cellsAsTheyStand(text.slice(start, end), separator), next: end + 1 };
}

/** Where a cell of a record starts: right after its separator. */
export function cellPlace(
  text: string,
  separator: Separator,
  record: { start: number; line: number },
  index: number,
): Place {
  let offset = record.start;
  for (let passed = 0; passed < index; passed += 1) {
    const cell = readCell(text, separator, offset);
    if (!cell.ok || text[cell.end] !== separator) break;
    offset = cell.end + 1;
  }
  return placeFrom(text, record.start, record.line, offset);
}

/** Where each cell of a record starts and ends, quotes and spaces included; null where a quote breaks the rules. */
export function cellSpans(
  text: string,
  separator: Separator,
  start: number,
): { start: number; end: number }[] | null {
  const spans: { start: number; end: number }[] = [];
  for (let offset = start; ;) {
    const cell = readCell(text, separator, offset);
    if (!cell.ok) return null;
    spans.push({ start: offset, end: cell.end });
    if (text[cell.end] !== separator) return spans;
    offset = cell.end + 1;
  }
}

// The cells of a line with a bad quote: it stands for itself, and its cell ends at the next separator.
function cellsAsTheyStand(line: string, separator: Separator): string[] {
  const cells: string[] = [];
  for (let offset = 0; ;) {
    const cell = readCell(line, separator, offset);
    const separatorAt = cell.ok ? cell.end : line.indexOf(separator, offset);
    const end = separatorAt < 0 ? line.length : separatorAt;
    cells.push(cell.ok ? cell.value : line.slice(offset, end));
    if (end >= line.length) return cells;
    offset = end + 1;
  }
}

function placeFrom(text: string, start: number, line: number, offset: number): Place {
  const lineStart = text.lastIndexOf('\n', offset - 1) + 1;
  const column = [...text.slice(Math.max(lineStart, 0), offset)].length + 1;
  return { line: line + breaksIn(text, start, offset), column };
}

function lineEnd(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end;
}

/** Number of line breaks between two offsets. */
export function breaksIn(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

function readQuoted(text: string, separator: Separator, start: number): Quoted {
  const cells: string[] = [];
  for (let offset = start; ;) {
    const cell = readCell(text, separator, offset);
    if (!cell.ok) return cell;
    cells.push(cell.value);
    if (text[cell.end] !== separator) return { ok: true, cells, end: cell.end };
    offset = cell.end + 1;
  }
}

type Cell = { ok: true; value: string; end: number } | Extract<Quoted, { ok: false }>;

function readCell(text: string, separator: Separator, offset: number): Cell {
  const open = afterSpaces(text, offset);
  if (text[open] === '"') return readQuotedCell(text, separator, offset, open);
  const breakAt = lineEnd(text, offset);
  const separatorAt = text.indexOf(separator, offset);
  const end = separatorAt < 0 || separatorAt > breakAt ? breakAt : separatorAt;
  const value = text.slice(offset, end);
  const quoteAt = value.indexOf('"');
  if (quoteAt < 0) return { ok: true, value, end };
  return { ok: false, kind: 'quote in a bare cell', at: offset + quoteAt, from: offset, resume: breakAt + 1 };
}

function readQuotedCell(text: string, separator: Separator, offset: number, open: number): Cell {
  let close = text.indexOf('"', open + 1);
  while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
  const end = close < 0 ? -1 : afterSpaces(text, close + 1);
  if (close >= 0 && (end >= text.length || text[end] === '\n' || text[end] === separator)) {
    const inner = text.slice(open + 1, close);
    return { ok: true, value: inner.includes('"') ? inner.replaceAll('""', '"') : inner, end };
  }
  // A quote that "closes" lines below, in the midst of text, is the opening of another cell.
  const resume = lineEnd(text, open) + 1;
  if (close < 0 || close >= resume)
    return { ok: false, kind: 'unclosed', at: open, from: close < 0 ? open : offset, resume };
  return { ok: false, kind: 'text after quote', at: close, from: offset, resume };
}

function afterSpaces(text: string, offset: number): number {
  let at = offset;
  while (text[at] === ' ') at += 1;
  return at;
}
