// What must be put right before the desk goes on: lines that a sudden stop tore, and promised rows that are gone.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readMark } from '../../../shared/book/clash.ts';
import { BOOK_HEADING } from '../../../shared/book/csvRow.ts';
import { dayNumber } from '../../../shared/calendar/day.ts';
import type { MilkingRow, MilkingTime } from '../../../shared/herd/types.ts';
import { amount_mL } from '../../../shared/quantity/amount.ts';
import { heldRow, slotKey, type Slot } from './held.ts';
import type { JournalEntry } from './journal.ts';

const MINUTE_MS = 60_000;
const HALF_DAY_MS = 43_200_000;
const BREAKS = [0x0a, 0x0d];

/** A promised row and what is known of it. */
export interface Promised {
  readonly entry: JournalEntry;
  readonly row: MilkingRow;
}

/** A journal's entry as a row of the book; null where the journal was changed by hand so that it is none. */
export function promisedRow(entry: JournalEntry): Promised | null {
  const [date = '', milking = '', doe = ''] = entry.row.split(',', 3);
  const [marked, day] = [readMark(entry.mark), dayNumber(date)];
  if (marked === null || day === null || marked.entered_ms === null || doe === '') return null;
  const slot: Slot = { doe, day, milking: milking as MilkingTime };
  const { amount, use, entered_ms } = marked;
  return {
    entry,
    row: heldRow(slot, { amount, use, note: noteCellOf(entry.row), entered_ms, file: entry.file }),
  };
}

// The note is the last cell but one; our rows quote it only where they must.
function noteCellOf(row: string): string {
  const cell = row.split(',').slice(6, -1).join(',');
  return cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell;
}

/**
 * The promised rows that are in no file. A row counts as there where the milking has one that was entered in the same
 * minute, whatever it says: spreadsheets cut seconds off, and people mend amounts by hand. One whose time was lost
 * altogether must say the same. No row of a file stands for two promised ones.
 */
export function missingRows(
  promised: readonly Promised[],
  slot: (slot: Slot) => readonly MilkingRow[],
): Promised[] {
  const bySlot = Map.groupBy(promised, ({ row }) => slotKey(row));
  const missing = new Set<Promised>();
  for (const own of bySlot.values()) {
    const there = new Set(own[0] ? slot(own[0].row) : []);
    let open: Promised[] = own;
    for (const isIt of [atTheMoment, inTheMinute, withoutTime])
      open = open.filter(({ row }) => {
        const found = [...there].find((one) => isIt(one, row));
        return !found || !there.delete(found);
      });
    for (const one of open) missing.add(one);
  }
  return promised.filter((one) => missing.has(one));
}

type IsIt = (found: MilkingRow, row: MilkingRow) => boolean;

const atTheMoment: IsIt = (found, row) => found.entered_ms === row.entered_ms;
const inTheMinute: IsIt = (found, row) =>
  found.entered_ms !== null && row.entered_ms !== null && minute(found.entered_ms) === minute(row.entered_ms);
// A time cut to the day is midnight; where the zone was lost too, up to half a day beside it.
const withoutTime: IsIt = (found, row) => {
  const isCut =
    found.entered_ms === null ||
    (minute(found.entered_ms) % 15 === 0 &&
      Math.abs((row.entered_ms ?? 0) - found.entered_ms) < 3 * HALF_DAY_MS);
  return isCut && found.use === row.use && sameAmount(found, row);
};
const minute = (moment_ms: number) => Math.floor(moment_ms / MINUTE_MS);

function sameAmount({ amount: one }: MilkingRow, { amount: other }: MilkingRow): boolean {
  if (one === null || other === null) return one === other;
  return amount_mL(one).equals(amount_mL(other));
}

/** How a file's end is put right: cut to a length first, then these bytes behind it. */
export interface Mending {
  readonly cut: number | null;
  readonly add: Uint8Array;
  readonly size: number;
}

/**
 * How to put the end of one of our files right after a sudden stop: zeros that a power cut left are cut off, a torn
 * heading or row of ours is completed. Null where there is nothing to do; what a person left half-written is theirs.
 */
export function mendEnd(farm: string, file: string, rows: readonly string[]): Mending | null {
  let bytes: Buffer;
  try {
    bytes = readFileSync(join(farm, file));
  } catch {
    return null;
  }
  let size = bytes.length;
  while (size > 0 && bytes[size - 1] === 0) size -= 1;
  const cut = size < bytes.length ? size : null;
  bytes = bytes.subarray(0, size);
  const start = Buffer.from(`\ufeff${BOOK_HEADING}\n`);
  if (size < start.length && start.subarray(0, size).equals(bytes))
    return size === 0 && cut === null
      ? null
      : { cut, size, add: size === 0 ? start.subarray(0, 0) : start.subarray(size) };
  let lineStart = size;
  while (lineStart > 0 && !BREAKS.includes(bytes[lineStart - 1] ?? 0)) lineStart -= 1;
  const tail = bytes.subarray(lineStart);
  const lineEnd = bytes.includes('\r\n') ? '\r\n' : '\n';
  const lines = new Set(bytes.toString('utf8').split(/[\r\n]/));
  if (tail.length > 0)
    for (const row of rows) {
      // A row that stands whole is not the one that was torn.
      if (lines.has(row) && row !== tail.toString('utf8')) continue;
      const whole = Buffer.from(`${row}${lineEnd}`);
      if (whole.length > tail.length && whole.subarray(0, tail.length).equals(tail))
        return { cut, size, add: whole.subarray(tail.length) };
    }
  return cut === null ? null : { cut, size, add: new Uint8Array() };
}
