// Two people entered one milking and neither saw the other's amount: which of these clashes stand.
import { amount_mL, type Amount } from '../quantity/amount.ts';
import { AMOUNT_UNITS, type AmountUnit } from '../quantity/units.ts';
import { USES, type MilkingTime, type Use } from '../herd/types.ts';
import { UNSAID } from './mark.ts';
import type { BookClash } from './types.ts';

const MARK = /^(no time|-?\d+) (?:(\d+)\/(\d+) (.+)|struck out) (\S+)$/;
const MINUTE_MS = 60_000;

/** What a mark (`markOf`) says of its row. */
export interface MarkedRow {
  readonly entered_ms: number | null;
  readonly amount: Amount | null;
  /** As written; null where the file leaves it open. */
  readonly use: Use | null;
}

/**
 * Reads a mark; null where the text is none.
 * @example readMark('1000 19/2 fl oz kept') // => { entered_ms: 1000, amount: { num: 19, den: 2, unit: 'fl oz' }, use: 'kept' }
 */
export function readMark(mark: string): MarkedRow | null {
  const match = MARK.exec(mark);
  const use = match?.[5] === UNSAID ? null : (match?.[5] as Use);
  if (!match || (use !== null && !USES.includes(use))) return null;
  const entered_ms = match[1] === 'no time' ? null : Number(match[1]);
  if (match[2] === undefined) return { entered_ms, amount: null, use };
  const unit = match[4] as AmountUnit;
  const [num, den] = [Number(match[2]), Number(match[3])];
  // Anybody may send a mark: one that no row can have must not stop a reckoning.
  if (!AMOUNT_UNITS.includes(unit) || den === 0 || ![num, den].every(Number.isSafeInteger)) return null;
  return { entered_ms, amount: { num, den, unit }, use };
}

/** Whether two rows say the same of a milking: as much milk, the same use; nothing said means kept. */
export function sayTheSame(
  one: Omit<MarkedRow, 'entered_ms'>,
  other: Omit<MarkedRow, 'entered_ms'>,
): boolean {
  if (one.amount === null || other.amount === null) return one.amount === other.amount;
  return (
    (one.use ?? 'kept') === (other.use ?? 'kept') && amount_mL(one.amount).equals(amount_mL(other.amount))
  );
}

/**
 * Whether somebody had the row that stood (its mark) before them: `saw` names it, or would have before a spreadsheet cut
 * its time to the minute. A milking that was struck out looks like one that was never entered.
 */
export function hadSeen(saw: string | null, stood: string | null): boolean {
  if (saw === stood) return true;
  const before = stood === null ? null : readMark(stood);
  if (saw === null) return before?.amount === null;
  const seen = readMark(saw);
  if (seen === null) return false;
  if (before === null) return stood === null && seen.amount === null;
  return minuteOf(seen) === minuteOf(before) && sayTheSame(seen, before);
}

const minuteOf = ({ entered_ms }: MarkedRow) =>
  entered_ms === null ? null : Math.floor(entered_ms / MINUTE_MS);

// Whether a use that one row leaves open is the one that the other says is settled when clashes are listed.
const isLike = (one: MarkedRow, other: MarkedRow) =>
  sayTheSame(one, other) && (one.amount === null || one.use === other.use);

/** An entry that was written, in the order of writing. */
export interface WrittenEntry {
  readonly doe: string;
  readonly date: string;
  readonly milking: MilkingTime;
  /** Mark of its own row. */
  readonly mark: string;
  readonly saw: string | null;
  /** Mark of the row that stood before it (a struck-out one too); null where none did. */
  readonly stood: string | null;
}

/** How the book stands when clashes are listed. */
export interface StandingNow {
  /** Mark of the row that counts now (a struck-out one too). */
  readonly mark: (at: WrittenAt) => string | null;
  /** What a use that nobody wrote counts as: treatments say. */
  readonly unsaid: (at: WrittenAt) => Use;
}

type WrittenAt = Pick<WrittenEntry, 'doe' | 'date' | 'milking'>;

/** The milkings that somebody must look at, kept up as entries are written. */
export interface Clashes {
  add(entry: WrittenEntry): void;
  /** Clashes that stand. */
  list(now: StandingNow): BookClash[];
}

/** Opens an empty list of clashes. */
export function openClashes(): Clashes {
  const open = new Map<string, { at: WrittenEntry; marks: string[] }>();
  return {
    add(entry) {
      const key = `${entry.date} ${entry.milking} ${entry.doe}`;
      const { saw, stood, mark } = entry;
      if (hadSeen(saw, stood)) {
        open.delete(key);
        return;
      }
      const [own, before] = [readMark(mark), stood === null ? null : readMark(stood)];
      if (own === null || before === null || stood === null || isLike(own, before)) return;
      const marks = open.get(key)?.marks ?? [stood];
      open.set(key, { at: entry, marks: [...marks, mark] });
    },
    list({ mark: standing, unsaid }) {
      return [...open.values()].flatMap(({ at, marks }) => {
        const now = standing(at);
        const last = marks.find((mark) => now !== null && hadSeen(mark, now));
        // A person has written another row, or taken this one out, by hand: that settles it.
        if (last === undefined) return [];
        const inOrder = [...marks.filter((mark) => mark !== last), last];
        const amounts = inOrder.flatMap((mark) => {
          const row = readMark(mark);
          if (row === null) return [];
          const use = row.use ?? unsaid(at);
          return [{ amount: row.amount, use, mark: mark === last && now !== null ? now : mark }];
        });
        const [first, ...others] = amounts;
        if (!first || others.every((one) => sayTheSame(one, first))) return [];
        const { doe, date, milking } = at;
        return [{ doe, date, milking, amounts }];
      });
    },
  };
}
