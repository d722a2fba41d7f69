// An entry of the Milk book as a row of the farm's CSV file, safe to open in a spreadsheet.
import { readNumber } from '../quantity/amount.ts';
import type { Use } from '../herd/types.ts';
import type { BookEntry } from './types.ts';

/** The heading of a file that the desk appends to: exactly these columns in this order. */
export const BOOK_HEADING = 'date,milking,doe,amount,unit,use,note,entered';

// With one of these in front a spreadsheet takes a cell for a formula; the wide forms count in some of them too.
// Source: OWASP, "CSV Injection", which also gives the quote mark in front as the remedy (from memory).
const FORMULA_START = /^[=+\-@\uff1d\uff0b\uff0d\uff20]/;
const KEPT_NOTE = /^'(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/;
const PLAIN_AMOUNT = /^(?:\d+(?:\.\d+)?|\d+ \d+\/\d+)$/;

/**
 * The row of an entry, without a line break. `use` is null where its cell stays empty. `entered` is when it was written, as ISO 8601 text.
 * @example csvRow({ date: '2026-05-21', milking: 'am', doe: 'bell', amount: '1/2', unit: 'cup', use: 'kept', note: '' }, '2026-05-21T06:40:00.000-05:00') // => '2026-05-21,am,bell,0 1/2,cup,kept,,2026-05-21T06:40:00.000-05:00'
 */
export function csvRow(
  entry: Pick<BookEntry, 'date' | 'milking' | 'doe' | 'amount' | 'unit' | 'note'> & {
    readonly use: Use | null;
  },
  entered: string,
): string {
  const { date, milking, doe, amount, unit, use, note } = entry;
  const cells = [date, milking, doe, amountCell(amount), unit, use ?? '', noteCell(note), entered];
  return cells.map(quoted).join(',');
}

/**
 * What an entry writes under `use`. Milk that is simply kept leaves the cell empty, so that a treatment that is written
 * down later withholds it; `kept` stands there only where somebody said so knowing of a treatment.
 */
export function writtenUse({ use, sure }: Pick<BookEntry, 'use' | 'sure'>): Use | null {
  return use === 'kept' && !sure ? null : use;
}

/**
 * An amount as it stands in a cell. A bare fraction would become a date in a spreadsheet (1/2: the second of
 * January), so it gets its whole number; what a person wrote otherwise stays. Empty strikes out.
 * @example amountCell('9 1/2') // => '9 1/2'
 * @example amountCell('19/2') // => '9 1/2'
 * @example amountCell('9½') // => '9 1/2'
 */
export function amountCell(amount: string | null): string {
  if (amount === null || PLAIN_AMOUNT.test(amount)) return amount ?? '';
  const read = readNumber(amount);
  if (!read.ok) return amount;
  const whole = Math.floor(read.num / read.den);
  const rest = read.num - whole * read.den;
  if (rest === 0) return String(whole);
  const below = String(read.den);
  // Decimals have a power of ten below the line; they go on as decimals.
  if (/^10+$/.test(below)) return `${whole}.${String(rest).padStart(below.length - 1, '0')}`;
  return `${whole} ${rest}/${read.den}`;
}

/**
 * A note as it stands in a cell: one that a spreadsheet would run as a formula gets a quote mark in front, by which
 * it stays text. `noteOf` takes it off again.
 * @example noteCell('=1+1') // => "'=1+1"
 */
export function noteCell(note: string): string {
  return FORMULA_START.test(note) ? `'${note}` : note;
}

/**
 * The note as somebody wrote it, from its cell.
 * @example noteOf("'- kicked the pail") // => '- kicked the pail'
 */
export function noteOf(cell: string): string {
  return cell.replace(KEPT_NOTE, '');
}

// RFC 4180: a cell with a comma or a quote mark stands in quote marks, and each one inside it is written twice.
function quoted(cell: string): string {
  return /[",;\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
