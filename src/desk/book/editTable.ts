// Changes one line of a farm's table and leaves every other byte of it as it was.
import { HERD_COLUMNS, type HerdChange, type HerdFile } from '../../../shared/book/herdBook.ts';
import { cellSpans, plainBreaks, walkRecords, type Separator } from '../../farm/csv.ts';
import type { Fault, Findings } from '../../farm/fault.ts';
import { readHeading, type Heading } from '../../farm/heading.ts';
import { HERD_RULES } from '../../farm/herdTables.ts';

/** The table with its change, and the line before and after it; `faults` where its own form keeps it from being changed. */
export type Edited =
  | { readonly ok: true; readonly text: string; readonly old: string | null; readonly new: string | null }
  | { readonly ok: false; readonly why: 'no such row' }
  | { readonly ok: false; readonly why: 'faulty'; readonly faults: readonly Fault[] };

// With this mark spreadsheets open and save the file as UTF-8.
const BYTE_ORDER_MARK = '\ufeff';
const NO_ROW: Edited = { ok: false, why: 'no such row' };

/** A table laid open: its text as it is, the same with plain breaks, and the way from one to the other. */
interface Opened {
  readonly raw: string;
  readonly plain: string;
  readonly heading: Heading;
  readonly lineBreak: string;
  /** From an offset of `plain` to that of `raw`. */
  readonly at: (offset: number) => number;
}

/** Makes one change in a table's text (null: there is no file yet). Cells are taken as they are: one line, no control signs. */
export function editTable(text: string | null, change: HerdChange): Edited {
  const { file } = change;
  const findings: Findings = { faults: [], notices: [] };
  const table = text === null ? null : openText(text, file, findings);
  if (findings.faults.length > 0) return { ok: false, why: 'faulty', faults: findings.faults };
  if (table === null) return change.kind === 'add' ? firstRow(text ?? BYTE_ORDER_MARK, change) : NO_ROW;
  if (change.kind === 'add') return added(table, change.cells, file);
  const record = recordOn(table, change.line);
  if (record === null) return NO_ROW;
  return change.kind === 'remove' ? removed(table, record) : changed(table, record, change.cells, file);
}

function openText(text: string, file: HerdFile, findings: Findings): Opened | null {
  const mark = text.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
  const body = text.slice(mark);
  const plain = plainBreaks(body);
  const heading = readHeading(file, plain, HERD_RULES[file], findings);
  if (!heading) return null;
  const doubles = [...body.matchAll(/\r\n/g)].map(({ index }, before) => index - before);
  const at = (offset: number) => mark + offset + doubles.filter((double) => double < offset).length;
  const lineBreak = /\r\n|\n|\r/.exec(body)?.[0] ?? '\n';
  return { raw: text, plain, heading, lineBreak, at };
}

/** The first row of a table that has no heading yet. */
function firstRow(before: string, { file, cells }: Extract<HerdChange, { kind: 'add' }>): Edited {
  const columns = HERD_COLUMNS[file];
  const row = columns.map((name) => written(cells[name] ?? '', ',', false)).join(',');
  return { ok: true, text: `${before}${columns.join(',')}\n${row}\n`, old: null, new: row };
}

interface RawRecord {
  readonly cells: readonly string[];
  /** Offsets in the raw text, the line break left out. */
  readonly start: number;
  readonly end: number;
}

function recordAtOffset({ raw, plain, heading, at }: Opened, start: number): RawRecord | null {
  const spans = cellSpans(plain, heading.separator, start);
  if (!spans) return null;
  return {
    cells: spans.map((span) => raw.slice(at(span.start), at(span.end))),
    start: at(start),
    end: at(spans.at(-1)?.end ?? start),
  };
}

function recordOn(table: Opened, wanted: number): RawRecord | null {
  let found: number | null = null;
  const { plain, heading } = table;
  walkRecords(plain, heading.separator, heading.rows, (_cells, start, line) => {
    if (line === wanted) found = start;
  }, () => undefined); // prettier-ignore
  return found === null ? null : recordAtOffset(table, found);
}

/** Where each named cell stands; columns that the table lacks come last, in the order of `HERD_COLUMNS`. */
function columnsOf({ heading }: Opened, cells: Readonly<Record<string, string>>, file: HerdFile) {
  const places: { name: string; index: number; value: string }[] = [];
  const extra: string[] = [];
  for (const name of HERD_COLUMNS[file]) {
    const value = cells[name];
    if (value === undefined) continue;
    const index = heading.at[name] ?? -1;
    if (index >= 0) places.push({ name, index, value });
    else if (value !== '') {
      places.push({ name, index: heading.width + extra.length, value });
      extra.push(name);
    }
  }
  return { places, extra };
}

function changed(
  table: Opened,
  record: RawRecord,
  cells: Readonly<Record<string, string>>,
  file: HerdFile,
): Edited {
  const { separator } = table.heading;
  const { places, extra } = columnsOf(table, cells, file);
  const row = [...record.cells];
  for (const { name, index, value } of places) {
    const before = row[index] ?? '';
    if (bare(before) === value) continue;
    while (row.length <= index) row.push('');
    row[index] = written(inThisFile(name, value, separator), separator, before.trim().startsWith('"'));
  }
  const old = table.raw.slice(record.start, record.end);
  const line = row.join(separator);
  const text = table.raw.slice(0, record.start) + line + table.raw.slice(record.end);
  return { ok: true, text: withHeadings(table, text, extra), old, new: line };
}

function added(table: Opened, cells: Readonly<Record<string, string>>, file: HerdFile): Edited {
  const { raw, heading, lineBreak } = table;
  const { separator, width } = heading;
  const { places, extra } = columnsOf(table, cells, file);
  const all = hasAllQuoted(table);
  const row = Array.from({ length: width + extra.length }, (_, index) => {
    const place = places.find((one) => one.index === index);
    return place ? written(inThisFile(place.name, place.value, separator), separator, all) : all ? '""' : '';
  }).join(separator);
  const ends = /[\r\n]$/.test(raw);
  const text = ends ? `${raw}${row}${lineBreak}` : `${raw}${lineBreak}${row}`;
  return { ok: true, text: withHeadings(table, text, extra), old: null, new: row };
}

function removed({ raw }: Opened, { start, end }: RawRecord): Edited {
  const after = /^(?:\r\n|\n|\r)/.exec(raw.slice(end))?.[0].length ?? 0;
  // The last line of a file without a break at its end takes the break before it along.
  const before = after > 0 ? 0 : (/(?:\r\n|\n|\r)$/.exec(raw.slice(0, start))?.[0].length ?? 0);
  const text = raw.slice(0, start - before) + raw.slice(end + after);
  return { ok: true, text, old: raw.slice(start, end), new: null };
}

/** Adds the headings that a table lacks at the end of its heading line; rows without a cell under them are as before. */
function withHeadings(table: Opened, text: string, extra: readonly string[]): string {
  if (extra.length === 0) return text;
  const end = headingEnd(table);
  const names = extra.map((name) => (hasAllQuoted(table) ? `"${name}"` : name));
  return text.slice(0, end) + names.map((name) => table.heading.separator + name).join('') + text.slice(end);
}

// The rows begin behind the break that ends the heading, even where the file ends there and has none.
const headingEnd = ({ heading, at }: Opened) => at(heading.rows.offset - 1);

function hasAllQuoted({ raw, heading, ...table }: Opened): boolean {
  const line =
    raw
      .slice(0, headingEnd({ raw, heading, ...table }))
      .split(/[\r\n]/)
      .at(-1) ?? '';
  return line.replace(BYTE_ORDER_MARK, '').split(heading.separator).every((name) => /^\s*".*"\s*$/.test(name)); // prettier-ignore
}

/** A cell's value without its quotes and the spaces around it. */
function bare(cell: string): string {
  const inner = /^ *"([\s\S]*)" *$/.exec(cell)?.[1];
  return (inner === undefined ? cell : inner.replaceAll('""', '"')).trim();
}

/** Where cells stand between semicolons, spreadsheets take a decimal point for something else. */
function inThisFile(name: string, value: string, separator: Separator): string {
  return name === 'weight_kg' && separator === ';' ? value.replace('.', ',') : value;
}

function written(value: string, separator: Separator, isQuoted: boolean): string {
  const needs = isQuoted || value.includes(separator) || /["\r\n]|^\s|\s$/.test(value);
  return needs ? `"${value.replaceAll('"', '""')}"` : value;
}
