// Turns the entries of a batch into rows: which may be written, where each goes, and when it was entered.
import { hadSeen } from '../../../shared/book/clash.ts';
import { csvRow, noteCell, writtenUse } from '../../../shared/book/csvRow.ts';
import { judgeEntry } from '../../../shared/book/entry.ts';
import { markOf } from '../../../shared/book/mark.ts';
import type { BookEntry, EntryAnswer } from '../../../shared/book/types.ts';
import type { MilkingRow } from '../../../shared/herd/types.ts';
import { dayAt } from '../../farm/entered.ts';
import { heldRow, latest, monthOf, slotKey, todayOf, type Held, type Slot } from './held.ts';
import type { JournalEntry } from './journal.ts';

/** A row on its way to the disk. */
export interface NewRow {
  readonly entry: BookEntry;
  readonly slot: Slot;
  readonly month: string;
  readonly row: MilkingRow;
  /** Without its file, which is chosen when it is written. */
  readonly journal: Omit<JournalEntry, 'file'>;
}

/** What becomes of an entry: an answer at once, a row whose answer waits for the disk, or no answer yet (`early`). */
export type Ruling =
  | { readonly answer: EntryAnswer }
  | { readonly row: NewRow }
  | { readonly like: string }
  | { readonly early: true };

/** The farm as a batch is judged by. */
export interface Bench {
  readonly held: Held;
  readonly now_ms: number;
  readonly momentText: (moment_ms: number) => string;
  /** The mark that an id was answered with; undefined where it has never been kept. */
  readonly markOfId: (id: string) => string | undefined;
}

const MINUTE_MS = 60_000;
// Beyond this an entry would come from too far in the future, or the past; then it shares its minute.
const MOST_MOVED_MS = 15 * MINUTE_MS;
// A phone's clock that jumped while an entry waited says nothing of its age.
const OLDEST_MS = 400 * 86_400_000;

/** Judges entries one after the other, each in sight of the ones before it in the batch. */
export function openJudge({ held, now_ms, momentText, markOfId }: Bench) {
  const drafts = new Map<string, MilkingRow[]>();
  const ids = new Set<string>();
  const isDoe = held.isDoe;
  const rules = {
    isDoe: (id: string) => isDoe?.(id) ?? false,
    today: todayOf(held, now_ms),
    largestMilking: held.farm.largestMilking,
    treatments: held.herd.treatments ?? [],
  };
  return (entry: BookEntry, sent_ms: number): Ruling => {
    const { id } = entry;
    const known = markOfId(id);
    if (known !== undefined) return { answer: { id, kept: true, mark: known } };
    if (ids.has(id)) return { like: id };
    const judged = judgeEntry(entry, rules);
    // By one of both clocks it is no day to come: nobody may drop the milk before somebody has looked at them.
    if (!judged.ok && judged.why === 'still to come' && hasBegun(entry, sent_ms, held))
      return { early: true };
    if (!judged.ok) return { answer: { id, kept: false, why: judged.why } };
    const { day, milking, amount } = judged;
    const slot = { doe: entry.doe, day, milking };
    const drafted = drafts.get(slotKey(slot)) ?? [];
    const rows = [...held.slot(slot), ...drafted];
    const before = latest(rows);
    const stood = markOf(before);
    const entered_ms = ownMoment(
      writtenAt(entry, sent_ms, now_ms),
      rows,
      hadSeen(entry.saw, stood) ? before : null,
    );
    const written = writtenUse(entry);
    const row = heldRow(slot, { amount, use: written, note: noteCell(entry.note), entered_ms, file: '' });
    const mark = markOf(row) ?? '';
    drafts.set(slotKey(slot), [...drafted, row]);
    ids.add(id);
    const journal = {
      id,
      row: csvRow({ ...entry, use: written }, momentText(entered_ms)),
      mark,
      saw: entry.saw,
      stood,
      sure: entry.sure,
    };
    return { row: { entry, slot, month: monthOf(day), row, journal } };
  };
}

/** Whether an entry's day has begun by the phone's own clock; where a setting fixes the day no clock counts. */
function hasBegun({ date }: BookEntry, sent_ms: number, { fixedDay, farm }: Held): boolean {
  return fixedDay === null && date <= dayAt(sent_ms, farm.timeZone);
}

// By the desk's clock, however wrong the phone's is: only the time between its two readings counts.
function writtenAt({ entered_ms }: BookEntry, sent_ms: number, now_ms: number): number {
  const age_ms = sent_ms - entered_ms;
  return Math.round(now_ms - (age_ms > 0 && age_ms < OLDEST_MS ? age_ms : 0));
}

/**
 * A moment that no other row of the milking has, and a minute of its own where one is near: spreadsheets cut times to
 * the minute, and two rows of one minute could then not be told apart. Later than the row that it corrects; never
 * moved to the other side of a row that was entered before or after it.
 */
function ownMoment(moment_ms: number, rows: readonly MilkingRow[], corrected: MilkingRow | null): number {
  const first_ms = Math.max(moment_ms, (corrected?.entered_ms ?? Number.NEGATIVE_INFINITY) + 1);
  const moments = rows.flatMap(({ entered_ms }) => (entered_ms === null ? [] : [entered_ms]));
  const minutes = new Set(moments.map(minute));
  const next_ms = Math.min(...moments.filter((one) => one > first_ms));
  const before_ms = Math.max(...moments.filter((one) => one <= first_ms));
  let own_ms = first_ms;
  while (minutes.has(minute(own_ms))) own_ms = (minute(own_ms) + 1) * MINUTE_MS;
  if (own_ms < next_ms && own_ms - first_ms <= MOST_MOVED_MS) return own_ms;
  if (next_ms !== Number.POSITIVE_INFINITY) {
    own_ms = first_ms;
    while (minutes.has(minute(own_ms))) own_ms = minute(own_ms) * MINUTE_MS - 1;
    if (own_ms > before_ms && first_ms - own_ms <= MOST_MOVED_MS) return own_ms;
  }
  const taken = new Set(moments);
  own_ms = first_ms;
  while (taken.has(own_ms)) own_ms += 1;
  return own_ms;
}

const minute = (moment_ms: number) => Math.floor(moment_ms / MINUTE_MS);
