// The one writer of the milk book: rows go onto the disk before anybody is told that they are kept.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { isoDate } from '../../../shared/calendar/day.ts';
import { openClashes } from '../../../shared/book/clash.ts';
import type { RowPutBack } from '../../../shared/book/deskState.ts';
import type { BookState, EntryAnswer, EntryPost } from '../../../shared/book/types.ts';
import type { Book, Farm } from '../../../shared/herd/types.ts';
import { DESK_FOLDER } from '../../build/fingerprint.ts';
import { takeLock } from '../../build/lock.ts';
import { dayAt, momentWriter } from '../../farm/entered.ts';
import type { WrittenRow } from '../entryEvent.ts';
import { watchFolder, type Watching } from '../watchFolder.ts';
import { bookState } from './bookState.ts';
import { openCommitter } from './commit.ts';
import { OtherLength, thisDisk, type Disk } from './disk.ts';
import { fileMark, folderMarks, sameMarks, settledMarks, type Marks } from './folderMarks.ts';
import { readHeld, todayOf, type Held } from './held.ts';
import { journalFile, readJournal, type JournalEntry } from './journal.ts';
import { openJudge, type NewRow, type Ruling } from './judge.ts';
import { monthFile } from './monthFile.ts';
import { promisedRow, type Promised } from './recover.ts';
import { mendEnds, putBackMissing } from './putBack.ts';

/** What the writer takes from outside the farm folder. */
export interface KeeperSettings {
  readonly farm: string;
  /** `AS_OF` as it was given. */
  readonly asOf?: string | undefined;
  readonly now_ms: () => number;
  /** Tells the coordinator. */
  readonly complain: (text: string) => void;
  readonly disk?: Disk;
  readonly watching?: Watching;
  /** How long a file that somebody else writes must lie still before the desk goes on with it, ms. */
  readonly quiet_ms?: number;
}

/** The farm as the writer holds it, rows of this moment counted in. */
export interface KeptBook {
  readonly farm: Farm;
  readonly book: Book;
  /** Today, a day number. */
  readonly asOf: number;
}

/** The one writer of a farm's milk book. */
export interface Keeper {
  /** Writes the entries of a post; answers, in their order, once what is kept is on disk. Throws where the disk fails. */
  write(post: EntryPost): Promise<EntryAnswer[]>;
  /** The book as a phone holds it, as it was when the files were last looked at. */
  state(): BookState;
  book(): KeptBook;
  /** Promised rows that were gone from their file and were put back since the desk was opened. */
  restored(): readonly RowPutBack[];
  /** Calls with rows that have just been written to disk. Returns what ends that. */
  onWritten(hear: (rows: readonly WrittenRow[]) => void): () => void;
  /** Looks whether somebody else has changed a file, and reads the farm anew if so. */
  outsideChange(): Promise<void>;
  /** Does some work on the farm's files while nothing else is written to them. */
  inTurn<T>(work: () => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** Thrown where nobody can say who is a doe: the herd has never been readable. */
export class NoHerd extends Error {}

const WATCHING: Watching = { settle_ms: 400, look_ms: 30_000 };
const QUIET_MS = 250;
const MOST_TRIES = 4;
const LOCK_FILE = '.writing';

interface Waiting {
  readonly post: EntryPost;
  readonly kept: (answers: EntryAnswer[]) => void;
  readonly failed: (error: unknown) => void;
}

/**
 * Opens a farm's milk book for writing, mends what a sudden stop left behind and puts back promised rows that are
 * gone. Throws PlainError where another desk is writing this farm's book.
 */
export async function openKeeper(settings: KeeperSettings): Promise<Keeper> {
  const { farm, watching = WATCHING } = settings;
  mkdirSync(join(farm, DESK_FOLDER), { recursive: true });
  const waiting = { most_ms: 0, every_ms: 100, say: settings.complain, who: "Another desk that writes this farm's milk book" }; // prettier-ignore
  const unlock = await takeLock(join(farm, DESK_FOLDER, LOCK_FILE), waiting);
  try {
    const writer = await openWriter(settings);
    const endWatch = watchFolder(farm, watching, () => void writer.outsideChange().catch((error: unknown) => settings.complain(String(error)))); // prettier-ignore
    return {
      ...writer,
      async close() {
        endWatch();
        await writer.close();
        unlock();
      },
    };
  } catch (error) {
    unlock();
    throw error;
  }
}

async function openWriter(settings: KeeperSettings): Promise<Keeper> {
  const { farm, asOf, now_ms, complain, disk = thisDisk, quiet_ms = QUIET_MS } = settings;
  const committer = openCommitter(farm, disk);
  const marksOfIds = new Map<string, string>();
  const promised: Promised[] = [];
  const clashes = openClashes();
  const restored: RowPutBack[] = [];
  const hearers = new Set<(rows: readonly WrittenRow[]) => void>();
  const reading = () => readHeld(farm, { asOf, now_ms: now_ms() }, held);
  let held: Held | null = null;
  let marks: Marks | null = null;
  let version = 0;
  let shown: { version: number; today: number; state: BookState } | null = null;
  let closed = false;

  const promise = (entry: JournalEntry) => {
    const made = promisedRow(entry);
    if (!made) return;
    promised.push(made);
    marksOfIds.set(entry.id, entry.mark);
    const { doe, day, milking } = made.row;
    clashes.add({ doe, date: isoDate(day), milking, mark: entry.mark, saw: entry.saw, stood: entry.stood });
  };

  /** Reads what has changed, and puts back what is gone. */
  const look = async (isStart = false): Promise<Held> => {
    const now = folderMarks(farm);
    if (held && marks && sameMarks(marks, now)) return held;
    let seen = isStart ? now : await settledMarks(farm, quiet_ms);
    held = reading();
    version += 1;
    const back = await putBackMissing({ farm, held, promised, committer, isStart, now_ms, complain });
    restored.push(...back.rows);
    if (back.rows.length > 0) {
      seen = folderMarks(farm);
      held = reading();
    }
    for (const { row } of back.hidden) held.add(row);
    // What could not be put back is tried again at the next look.
    marks = back.isThrough ? seen : null;
    return held;
  };

  const start = async () => {
    const { entries, torn, damaged } = readJournal(farm);
    for (const { file, size } of torn) await disk.cut(join(farm, file), size);
    if (damaged.length > 0)
      complain(
        `The desk's own journal is damaged at ${damaged.join(', ')}. All its other entries are known.`,
      );
    // Where the same id stands twice, the disk failed so badly that the first could not be taken back.
    const last = new Map(entries.map((entry) => [entry.id, entry]));
    for (const entry of entries) if (last.get(entry.id) === entry) promise(entry);
    await mendEnds(farm, disk, promised);
    await look(true);
  };

  let turn: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = turn.then(work);
    turn = next.catch(() => undefined);
    return next;
  };

  /** Judges the posts that wait and writes what may be written; says what becomes of each post. */
  const writeAll = async (posts: readonly Waiting[]) => {
    for (let tries = 1; ; tries += 1) {
      const now = await look();
      if (now.isDoe === null) throw new NoHerd();
      const judge = openJudge({ held: now, now_ms: now_ms(), momentText: momentWriter(now.farm.timeZone), markOfId: (id) => marksOfIds.get(id) }); // prettier-ignore
      const rulings = posts.map(({ post }) => post.entries.map((entry) => judge(entry, post.sent_ms)));
      const rows = rulings.flat().flatMap((ruling) => ('row' in ruling ? [ruling.row] : []));
      const error = await put(now, rows);
      // Somebody else has written into a file in this very moment: look again.
      if (error instanceof OtherLength && tries < MOST_TRIES) {
        marks = null;
        continue;
      }
      posts.forEach((waiting, index) => answer(waiting, rulings[index] ?? [], error));
      return;
    }
  };

  const answer = ({ post, kept, failed }: Waiting, rulings: readonly Ruling[], error: unknown) => {
    const answers = rulings.map((ruling, index): EntryAnswer | null => {
      if ('answer' in ruling) return ruling.answer;
      const id = post.entries[index]?.id ?? '';
      const mark = marksOfIds.get(id);
      return mark === undefined ? null : { id, kept: true, mark };
    });
    const whole = answers.filter((one) => one !== null);
    if (whole.length === answers.length) kept(whole);
    else failed(error);
  };

  /** Writes rows, month by month; returns what stopped it, of which nothing stays. */
  const put = async (now: Held, rows: readonly NewRow[]): Promise<unknown> => {
    if (rows.length === 0) return null;
    const groups = [...Map.groupBy(rows, ({ month }) => month)].map(([month, own]) => {
      const to = monthFile(farm, month);
      const entries = own.map(({ journal }) => ({ ...journal, file: to.file }));
      return { to, own, entries, markBefore: fileMark(farm, to.file) };
    });
    const year = dayAt(now_ms(), now.farm.timeZone).slice(0, 4);
    const { kept, error } = await committer.commit(journalFile(year), groups);
    const written: WrittenRow[] = [];
    for (const { to, own, entries, markBefore } of groups.slice(0, kept)) {
      noteMark(to.file, to.size, markBefore, entries.map(({ row }) => row + to.lineEnd).join('') + to.before);
      own.forEach(({ entry, row, slot }, index) => {
        promise(entries[index] as JournalEntry);
        now.add({ ...row, file: to.file });
        const { amount, use, milking } = row;
        written.push({ doe: slot.doe, date: entry.date, milking, amount, use });
      });
    }
    if (written.length > 0) {
      version += 1;
      tell(written);
    }
    return error;
  };

  // A file that grew by our rows alone need not be read again.
  const noteMark = (file: string, size: number | null, before: string | null, text: string) => {
    if (!marks || (marks.get(file) ?? null) !== before) return void (marks = null);
    const after = fileMark(farm, file);
    const isOurs = after?.startsWith(`${(size ?? 0) + Buffer.byteLength(text)} `);
    if (after && isOurs) marks.set(file, after);
    else marks = null;
  };

  const tell = (rows: readonly WrittenRow[]) => {
    for (const hear of [...hearers])
      try {
        hear(rows);
      } catch (error) {
        complain(`What follows an entry failed; the entry itself is kept. ${String(error)}`);
      }
  };

  const queue: Waiting[] = [];
  const drain = async () => {
    const posts = queue.splice(0);
    try {
      await writeAll(posts);
    } catch (error) {
      for (const { failed } of posts) failed(error);
    }
  };

  await start();
  const current = (): Held => held as Held;
  return {
    write: (post) =>
      new Promise((kept, failed) => {
        if (closed) return failed(new Error('the milk book is closed'));
        queue.push({ post, kept, failed });
        // Those that come while another batch is on its way to the disk go together.
        if (queue.length === 1) void inTurn(drain);
      }),
    state() {
      const today = todayOf(current(), now_ms());
      if (shown?.version !== version || shown.today !== today)
        shown = { version, today, state: bookState(current(), clashes, today) };
      return shown.state;
    },
    book() {
      const { farm: settled, herd, rows } = current();
      return { farm: settled, book: { ...herd, rows }, asOf: todayOf(current(), now_ms()) };
    },
    restored: () => restored,
    onWritten(hear) {
      hearers.add(hear);
      return () => void hearers.delete(hear);
    },
    async outsideChange() {
      if (closed || (marks && sameMarks(marks, folderMarks(farm)))) return;
      await inTurn(() => look());
    },
    inTurn,
    async close() {
      closed = true;
      await turn;
    },
  };
}
