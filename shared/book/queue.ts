// The entries of one phone on their way to the desk: waiting, sent, acknowledged or refused; and what the page shows.
import { readNumber } from '../quantity/amount.ts';
import { hadSeen } from './clash.ts';
import type { BookClash, BookEntry, BookRow, BookState, EntryAnswer, Refusal } from './types.ts';

/** How far an entry has come. `sent` is never written down: after a crash it is `waiting` again. */
export type Stage = 'waiting' | 'sent' | 'kept' | 'refused';

/**
 * What the desk said, or null while it has said nothing. A book that was asked for at `turn` or later holds the row:
 * turns are counted on the phone, whose clock may jump.
 */
export type Outcome =
  | null
  | { readonly kept: true; readonly mark: string; readonly at_ms: number; readonly turn: number }
  | { readonly kept: false; readonly why: Refusal; readonly dealt: boolean };

/** One entry as the phone keeps it. */
export interface Queued {
  /** Its place in the order in which this phone's entries came. */
  readonly seq: number;
  readonly entry: BookEntry;
  /** The id of the entry, still waiting then, that the milker saw when she entered this one. */
  readonly after: string | null;
  readonly outcome: Outcome;
}

/** All that a phone has on its way. */
export interface Queue {
  /** In the order of `seq`. */
  readonly all: readonly Queued[];
  /** Ids on their way to the desk just now. */
  readonly out: readonly string[];
  /** How often each id was sent without an answer. */
  readonly tries: Readonly<Record<string, number>>;
}

/** A row as the page shows it; `waiting` until the desk has said that it is on disk. */
export interface ShownRow extends BookRow {
  readonly waiting: boolean;
}

/** The book with everything laid over it that was entered on this phone and that it does not hold yet. */
export interface ShownBook extends Omit<BookState, 'rows'> {
  readonly rows: readonly ShownRow[];
}

/** A queue with nothing on its way. */
export const EMPTY_QUEUE: Queue = Object.freeze({ all: [], out: [], tries: {} });

type Milking = Pick<BookEntry, 'doe' | 'date' | 'milking'>;
const placeOf = ({ doe, date, milking }: Milking) => `${doe}\n${date}\n${milking}`;
const isOpen = ({ outcome }: Queued) => outcome === null;
const isRefused = ({ outcome }: Queued) => outcome?.kept === false && !outcome.dealt;

/** The mark of a row that waits on this phone: what an entry made over it names in `saw`. */
export const waitingMark = (id: string): string => `waiting ${id}`;

/**
 * An entry that a person has just made, ready to be kept (the shelf gives it its `seq`), and the refused ones that it
 * deals with: whoever enters a milking anew has seen why the last one was not taken.
 */
export function entered(
  all: readonly Queued[],
  entry: BookEntry,
): { added: Omit<Queued, 'seq'>; dealt: Queued[] } {
  const same = all.filter((one) => placeOf(one.entry) === placeOf(entry));
  const seen = same.find((one) => entry.saw === waitingMark(one.entry.id));
  // An entry that waits to strike a row out leaves no row to be seen, and was seen all the same.
  const struck = entry.saw === null ? same.findLast(isOpen) : undefined;
  const after = seen ?? (struck?.entry.amount === null ? struck : undefined);
  return {
    added: { entry, after: after?.entry.id ?? null, outcome: null },
    dealt: same.filter(isRefused).map(dealtWith),
  };
}

/** A refused entry once somebody has read why. */
export function dealtWith(one: Queued): Queued {
  return one.outcome?.kept === false ? { ...one, outcome: { ...one.outcome, dealt: true } } : one;
}

/**
 * What to send next, at most so many. Of several entries for one milking only the oldest goes: the next one must name
 * the row that it makes. Entries that were sent most often without an answer come last, so that none holds up another.
 */
export function nextPost(queue: Queue, most: number): BookEntry[] {
  const places = new Set<string>();
  const heads = queue.all.filter(isOpen).filter((one) => {
    const place = placeOf(one.entry);
    const first = !places.has(place);
    places.add(place);
    return first && !queue.out.includes(one.entry.id);
  });
  const tried = ({ entry }: Queued) => queue.tries[entry.id] ?? 0;
  return heads
    .sort((a, b) => tried(a) - tried(b) || a.seq - b.seq)
    .slice(0, most)
    .map((one) => ({ ...one.entry, saw: sawOf(queue.all, one) }));
}

/** The mark that an entry names once those before it have their answers. */
function sawOf(all: readonly Queued[], one: Queued): string | null {
  if (one.after === null) return one.entry.saw;
  const before = all.find(({ entry }) => entry.id === one.after);
  if (!before) return null;
  // What the desk has refused stands nowhere: what was seen below it stands.
  return before.outcome?.kept ? before.outcome.mark : sawOf(all, before);
}

/** The queue once these are on their way. */
export function sent(queue: Queue, entries: readonly BookEntry[]): Queue {
  return { ...queue, out: [...queue.out, ...entries.map(({ id }) => id)] };
}

/** The queue once a sending has ended, answered or not: what has no answer waits again. */
export function ended(queue: Queue, entries: readonly BookEntry[], answers: readonly EntryAnswer[]): Queue {
  const ids = new Set(entries.map(({ id }) => id));
  const known = new Set(answers.map(({ id }) => id));
  const tries = Object.fromEntries(Object.entries(queue.tries).filter(([id]) => !known.has(id)));
  for (const id of ids) if (!known.has(id)) tries[id] = (tries[id] ?? 0) + 1;
  return { ...queue, out: queue.out.filter((id) => !ids.has(id)), tries };
}

/** Entries whose outcome the desk's answers settle, at a turn of the phone. An entry that has its answer keeps it. */
export function settled(
  all: readonly Queued[],
  answers: readonly EntryAnswer[],
  { now_ms, turn }: { now_ms: number; turn: number },
): Queued[] {
  const byId = new Map(answers.map((one) => [one.id, one]));
  return all.filter(isOpen).flatMap((one) => {
    const answer = byId.get(one.entry.id);
    if (!answer) return [];
    const outcome: Outcome = answer.kept
      ? { kept: true, mark: answer.mark, at_ms: now_ms, turn }
      : { kept: false, why: answer.why, dealt: false };
    return [{ ...one, outcome }];
  });
}

const REMEMBER_ms = 2 * 24 * 3_600_000;

/**
 * Answered entries that need not be kept any longer: taken some time ago, or refused and dealt with; never one that an
 * open entry was made over. A page left open over night may still show the mark of a row that waited.
 */
export function forgettable(all: readonly Queued[], now_ms: number): Queued[] {
  const needed = new Set(all.filter(isOpen).flatMap((one) => chainOf(all, one)));
  return all.filter(({ entry, outcome }) => {
    if (outcome === null || needed.has(entry.id)) return false;
    if (!outcome.kept) return outcome.dealt;
    // A clock that was set back must not keep things for ever, nor drop them at once.
    return Math.abs(now_ms - outcome.at_ms) > REMEMBER_ms;
  });
}

function chainOf(all: readonly Queued[], one: Queued): string[] {
  if (one.after === null) return [];
  const before = all.find(({ entry }) => entry.id === one.after);
  return before ? [one.after, ...chainOf(all, before)] : [];
}

/** Entries that the desk has not answered, in the order they were made. */
export const waitingOf = ({ all }: Pick<Queue, 'all'>): BookEntry[] =>
  all.filter(isOpen).map(({ entry }) => entry);

/** Entries that the desk has refused and nobody has dealt with. */
export const refusedOf = ({ all }: Pick<Queue, 'all'>): { entry: BookEntry; why: Refusal }[] =>
  all.flatMap(({ entry, outcome }) =>
    outcome?.kept === false && !outcome.dealt ? [{ entry, why: outcome.why }] : [],
  );

/** How far an entry has come; null where the queue does not know it. */
export function stageOf(queue: Queue, id: string): Stage | null {
  const one = queue.all.find(({ entry }) => entry.id === id);
  if (!one) return null;
  if (one.outcome) return one.outcome.kept ? 'kept' : 'refused';
  return queue.out.includes(id) ? 'sent' : 'waiting';
}

/** The last turn in which an answer came; `turn` is that of the book as the phone holds it. */
export function lastTurn(all: readonly Queued[], turn: number): number {
  return Math.max(turn, ...all.map(({ outcome }) => (outcome?.kept ? outcome.turn : 0)));
}

/**
 * The book as the page shows it: over what the desk said when it was asked at `turn` lies what waits here, and what
 * the desk has taken since. The latest of this phone's entries wins.
 */
export function laidOver(state: BookState, all: readonly Queued[], turn: number): ShownBook {
  const rows = new Map<string, ShownRow>(state.rows.map((row) => [placeOf(row), { ...row, waiting: false }]));
  const clashes = new Map(state.clashes.map((clash) => [placeOf(clash), clash]));
  for (const one of all) {
    const { entry, outcome } = one;
    // A refused amount stands nowhere; what was taken before the desk was asked is in what it said.
    if (outcome && !(outcome.kept && outcome.turn > turn)) continue;
    const place = placeOf(entry);
    if (settles(clashes.get(place), sawOf(all, one))) clashes.delete(place);
    const mark = outcome?.kept ? outcome.mark : waitingMark(entry.id);
    const row = rowOf(entry, mark, outcome === null, rows.get(place));
    if (row) rows.set(place, row);
    else if (entry.amount === null) rows.delete(place);
  }
  return { ...state, rows: [...rows.values()], clashes: [...clashes.values()] };
}

const settles = (clash: BookClash | undefined, saw: string | null) =>
  clash !== undefined && hadSeen(saw, clash.amounts.at(-1)?.mark ?? null);

function rowOf(
  entry: BookEntry,
  mark: string,
  waiting: boolean,
  over: ShownRow | undefined,
): ShownRow | null {
  const { doe, date, milking, unit, use, note } = entry;
  const number = entry.amount === null ? null : readNumber(entry.amount);
  if (!number?.ok) return null;
  const amount = { num: number.num, den: number.den, unit };
  return { doe, date, milking, amount, use, note, mark, waiting, corrects: over ? over.corrects + 1 : 0 };
}

const FIRST_ms = 1_000;
const LONGEST_ms = 20_000;

/**
 * How long to wait before the desk is asked again, ms, after so many failures in a row: about 1, 2, 4, 8, 16 s, then
 * never more than 20 s. `chance` (0 to 1) spreads phones that lost the network together.
 */
export function waitBefore_ms(failures: number, chance: number): number {
  const plain = FIRST_ms * 2 ** Math.min(Math.max(failures - 1, 0), 10);
  return Math.round(Math.min(plain, LONGEST_ms) * (0.75 + 0.25 * chance));
}
