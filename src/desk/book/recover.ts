// What must be put right before the desk goes on: lines that a sudden stop tore, and promised rows that are gone.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readMark } from '../../../shared/book/clash.ts';
import { BOOK_HEADING } from '../../../shared/book/csvRow.ts';
import { dayNumber } from '../../../shared/calendar/day.ts';
import type { MilkingRow, MilkingTime, Use } from '../../../shared/herd/types.ts';
import { amount_mL } from '../../../shared/quantity/amount.ts';
import { fileKind } from '../../farm/fileKind.ts';
import { heldRow, slotKey, type Held, type Slot } from './held.ts';
import type { JournalEntry } from './journal.ts';

const MINUTE_MS = 60_000;
const HALF_DAY_MS = 43_200_000;
const BREAKS = [0x0a, 0x0d];
const START = Buffer.from(`\ufeff${BOOK_HEADING}\n`);

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

/** A promised row that is gone, and better left in the journal than put back. */
export interface Doubt {
  readonly one: Promised;
  /** Moved to another doe or milking by hand; changed by hand, its time lost; older than a row that has lost its time. */
  readonly why: 'moved' | 'changed' | 'older';
}

/** What is in no file: rows to be put back, and rows of which nobody can say whether they should be. */
export interface Missing {
  readonly gone: readonly Promised[];
  readonly doubts: readonly Doubt[];
}

/**
 * The promised rows that are in no file. A row counts as there where the milking has one that was entered in the same
 * minute, whatever it says: spreadsheets cut seconds off, and people mend amounts by hand. One whose time was lost
 * altogether must say the same. No row of a file stands for two promised ones.
 */
export function missingRows(promised: readonly Promised[], held: Pick<Held, 'slot' | 'rows'>): Missing {
  const bySlot = Map.groupBy(promised, ({ row }) => slotKey(row));
  const found = new Map<Promised, MilkingRow>();
  const taken = new Set<MilkingRow>();
  const why = new Map<Promised, Doubt['why']>();
  const take = (one: Promised, row: MilkingRow | undefined) => {
    if (row === undefined) return false;
    taken.add(row);
    found.set(one, row);
    return true;
  };
  const find = (own: readonly Promised[], isIt: (row: MilkingRow, one: Promised) => boolean) =>
    own.filter(
      (one) =>
        !found.has(one) &&
        take(
          one,
          held.slot(one.row).find((row) => !taken.has(row) && isIt(row, one)),
        ),
    );
  for (const own of bySlot.values()) {
    for (const isIt of [atTheMoment, sameInTheMinute, inTheMinute]) find(own, isIt);
    // Of rows that say the same, one that has lost its time is most likely the one that stood.
    find(own.toReversed(), withoutTime);
  }
  const rest = promised.filter((one) => !found.has(one));
  const moments = new Set(rest.map(({ row }) => row.entered_ms));
  const spare = rest.length > 0 ? held.rows.filter((row) => moments.has(row.entered_ms)) : [];
  for (const one of rest) {
    const isIt = (row: MilkingRow) => !taken.has(row) && isMoved(row, one.row);
    if (take(one, spare.find(isIt))) why.set(one, 'moved');
  }
  for (const key of new Set(rest.map(({ row }) => slotKey(row)))) {
    const own = bySlot.get(key) ?? [];
    for (const one of find(own.toReversed(), (row, it) => isChanged(row, it, own))) why.set(one, 'changed');
    for (const one of own)
      if (!found.has(one) && own.some((later) => wouldHide(one, later, found.get(later))))
        why.set(one, 'older');
  }
  return {
    gone: rest.filter((one) => !why.has(one)),
    doubts: [...why].map(([one, reason]) => ({ one, why: reason })),
  };
}

type IsIt = (found: MilkingRow, promised: Promised) => boolean;

const atTheMoment: IsIt = (found, { row }) => found.entered_ms === row.entered_ms;
const inTheMinute: IsIt = (found, { row }) =>
  found.entered_ms !== null && row.entered_ms !== null && minute(found.entered_ms) === minute(row.entered_ms);
const sameInTheMinute: IsIt = (found, one) => inTheMinute(found, one) && saysTheSame(found, one.row);
// A time cut to the day is midnight; where the zone was lost too, up to half a day beside it.
const withoutTime: IsIt = (found, { row }) => {
  const isCut =
    found.entered_ms === null ||
    (minute(found.entered_ms) % 15 === 0 &&
      Math.abs((row.entered_ms ?? 0) - found.entered_ms) < 3 * HALF_DAY_MS);
  return isCut && saysTheSame(found, row);
};

// No two rows are entered in the same millisecond by chance and say the same: the doe, date or milking was changed.
const isMoved = (found: MilkingRow, row: MilkingRow) =>
  found.entered_ms === row.entered_ms &&
  found.file === row.file &&
  slotKey(found) !== slotKey(row) &&
  sameAmount(found, row);

/** Whether a row without a time is a promised one that a person changed; not where it stood before that one was written. */
function isChanged(found: MilkingRow, one: Promised, own: readonly Promised[]): boolean {
  if (found.entered_ms !== null) return false;
  const before = own.slice(0, own.indexOf(one) + 1);
  return !before.some(({ entry }) => {
    const stood = entry.stood === null ? null : readMark(entry.stood);
    return stood !== null && stood.entered_ms === null && saysTheSame(found, stood);
  });
}

/** Whether a row that is put back would count before a later one, since that one has lost its time or its place. */
function wouldHide({ row }: Promised, later: Promised, found: MilkingRow | undefined): boolean {
  const [own_ms, later_ms] = [row.entered_ms ?? 0, later.row.entered_ms ?? 0];
  if (!found || later_ms <= own_ms) return false;
  return slotKey(found) !== slotKey(row) || (found.entered_ms ?? Number.NEGATIVE_INFINITY) <= own_ms;
}

const minute = (moment_ms: number) => Math.floor(moment_ms / MINUTE_MS);

type Said = Pick<MilkingRow, 'amount' | 'unsaid'> & { readonly use: Use | null };

// By what was written: a treatment that was written down since changes what an open use counts as.
const saidUse = ({ use, unsaid }: Said) => (unsaid ? 'kept' : (use ?? 'kept'));
const saysTheSame = (one: Said, other: Said) => saidUse(one) === saidUse(other) && sameAmount(one, other);

function sameAmount({ amount: one }: Pick<Said, 'amount'>, { amount: other }: Pick<Said, 'amount'>): boolean {
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
  const size = ownSize(bytes);
  if (size === null) return null;
  const cut = size < bytes.length ? size : null;
  bytes = bytes.subarray(0, size);
  const start = START;
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

/** The length of a file of ours without the zeros that a power cut left; null where it is somebody else's kind of file. */
function ownSize(bytes: Buffer): number | null {
  let size = bytes.length;
  while (size > 0 && bytes[size - 1] === 0) size -= 1;
  if (size === bytes.length) return size;
  const rest = bytes.subarray(0, size);
  if (fileKind(rest) !== null || !isUtf8Start(rest)) return null;
  const begin = START.subarray(0, size).equals(rest) ? START : rest;
  const heading = begin
    .subarray(begin[0] === START[0] ? 3 : 0)
    .toString('utf8')
    .split(/[\r\n]/, 1)[0];
  return heading === BOOK_HEADING ? size : null;
}

/** Whether bytes are UTF-8, the last letter of which may be torn. */
function isUtf8Start(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
