// What a phone sends to the desk: read from unknown JSON, and judged against the farm before anything is written.
import Fraction from 'fraction.js';
import { dayNumber } from '../calendar/day.ts';
import { isTreated } from '../herd/treated.ts';
import { USES, type MilkingTime, type Use } from '../herd/types.ts';
import { amount_mL, readNumber, type Amount } from '../quantity/amount.ts';
import { AMOUNT_UNITS, UNIT_ML, type AmountUnit } from '../quantity/units.ts';
import { amountCell } from './csvRow.ts';
import type { BookEntry, BookFarm, Refusal, Treatment } from './types.ts';

/** Most entries of one post, and the longest note, in UTF-16 units as a page counts them. */
export const [MOST_ENTRIES, LONGEST_NOTE] = [200, 200];
const LONGEST_TEXT = 60;
const LONGEST_MARK = 200;
// The milk book takes no older date: it would be a slip of the pencil.
const EARLIEST_DAY = dayNumber('1900-01-01') ?? 0;
const ID = /^[A-Za-z0-9_-]{22}$/;
// Control characters, line and paragraph separators: a row is one line, and a terminal shows it.
const UNSEEN = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/;

/** An entry as it came, or the id to refuse it by. */
export type ReadEntry =
  { readonly ok: true; readonly entry: BookEntry } | { readonly ok: false; readonly id: string };

/** A post as it came; one malformed entry takes no other with it. */
export type ReadPost =
  | { readonly ok: true; readonly sent_ms: number; readonly entries: readonly ReadEntry[] }
  | { readonly ok: false; readonly why: string };

/** Reads a post from JSON that anybody may have sent. Keys that it does not know are passed over. */
export function readPost(value: unknown): ReadPost {
  if (!isRecord(value)) return { ok: false, why: 'A post is an object with sent_ms and entries.' };
  const { sent_ms, entries } = value;
  if (!isMoment(sent_ms)) return { ok: false, why: 'sent_ms is no time in milliseconds.' };
  if (!Array.isArray(entries)) return { ok: false, why: 'entries is no list.' };
  if (entries.length > MOST_ENTRIES)
    return {
      ok: false,
      why: `${entries.length} entries are too many for one post: at most ${MOST_ENTRIES}.`,
    };
  return { ok: true, sent_ms, entries: entries.map(readEntry) };
}

/** Reads one entry from JSON that anybody may have sent. */
export function readEntry(value: unknown): ReadEntry {
  if (!isRecord(value)) return { ok: false, id: '' };
  const { id, doe, date, milking, amount, unit, use, note, sure, saw, entered_ms } = value;
  const isSound =
    isText(id, 22) &&
    ID.test(id) &&
    isText(doe, LONGEST_TEXT) &&
    isText(date, 10) &&
    (milking === 'am' || milking === 'pm') &&
    (amount === null || isText(amount, LONGEST_TEXT)) &&
    isUnit(unit) &&
    isUse(use) &&
    isText(note, LONGEST_NOTE) &&
    typeof sure === 'boolean' &&
    (saw === null || isText(saw, LONGEST_MARK)) &&
    isMoment(entered_ms);
  if (!isSound) return { ok: false, id: typeof id === 'string' ? id.slice(0, LONGEST_TEXT) : '' };
  return {
    ok: true,
    entry: {
      id,
      doe: doe.normalize('NFC'),
      date,
      milking,
      amount,
      unit,
      use,
      note: note.trim(),
      sure,
      saw,
      entered_ms,
    },
  };
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isText = (value: unknown, longest: number): value is string =>
  typeof value === 'string' && value.length <= longest && !UNSEEN.test(value) && value.isWellFormed();
// A hundred thousand years each way are more than any clock shows, and still whole milliseconds.
const isMoment = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value) && Math.abs(value) < 4e15;
const isUnit = (value: unknown): value is AmountUnit => AMOUNT_UNITS.includes(value as AmountUnit);
const isUse = (value: unknown): value is Use => USES.includes(value as Use);

/** What an entry is judged by. */
export interface EntryRules {
  readonly isDoe: (id: string) => boolean;
  /** The farm's day, a day number. */
  readonly today: number;
  readonly largestMilking: BookFarm['largestMilking'];
  readonly treatments: readonly Treatment[];
}

/** An entry that may be written. */
export interface Judged {
  readonly ok: true;
  readonly day: number;
  readonly milking: MilkingTime;
  /** As a reader of the file will read it; null strikes out. */
  readonly amount: Amount | null;
}

/** Whether an entry may be written: a row of it can never make the farm's files unreadable. */
export function judgeEntry(entry: BookEntry, rules: EntryRules): Judged | { ok: false; why: Refusal } {
  const no = (why: Refusal) => ({ ok: false, why }) as const;
  if (!rules.isDoe(entry.doe)) return no('unknown doe');
  const day = dayNumber(entry.date);
  if (day === null || day < EARLIEST_DAY) return no('no date');
  if (day > rules.today) return no('still to come');
  const { milking, unit, use } = entry;
  if (entry.amount === null) return { ok: true, day, milking, amount: null };
  // Read as it will stand in the file, not as it came.
  const read = readNumber(amountCell(entry.amount));
  if (!read.ok) return no('no amount');
  const amount = { num: read.num, den: read.den, unit };
  const { largestMilking: largest } = rules;
  const most_mL = UNIT_ML[largest.unit].mul(new Fraction(largest.amount));
  if (amount_mL(amount).compare(most_mL) > 0) return no('too much');
  if (use === 'kept' && !entry.sure && isTreated(rules.treatments, entry.doe, day)) return no('treated');
  return { ok: true, day, milking, amount };
}
