// Follows a farm's files for its writer: what they say, what was promised, what is gone from them and put back.
import { join } from 'node:path';
import { isoDate } from '../../../shared/calendar/day.ts';
import { openClashes, type Clashes } from '../../../shared/book/clash.ts';
import type { RowPutBack } from '../../../shared/book/deskState.ts';
import { openCommitter, type Committer } from './commit.ts';
import type { Disk } from './disk.ts';
import { fileMark, folderMarks, sameMarks, settledMarks, type Marks } from './folderMarks.ts';
import { readHeld, todayOf, type Held } from './held.ts';
import { readJournal, type JournalEntry } from './journal.ts';
import type { NewRow } from './judge.ts';
import type { MonthFile } from './monthFile.ts';
import { failureWords, mendEnds, putBackMissing } from './putBack.ts';
import { promisedRow, type Promised } from './recover.ts';

/** What following takes. */
export interface Following {
  readonly farm: string;
  readonly asOf?: string | undefined;
  readonly now_ms: () => number;
  readonly complain: (text: string) => void;
  readonly disk: Disk;
  readonly quiet_ms: number;
}

/** Rows that were written into one file. */
export interface WrittenGroup {
  readonly to: MonthFile;
  readonly rows: readonly NewRow[];
  readonly entries: readonly JournalEntry[];
  /** Mark of the file right before. */
  readonly markBefore: string | null;
}

/** A farm that is followed. */
export interface Follower {
  readonly committer: Committer;
  readonly clashes: Clashes;
  readonly restored: readonly RowPutBack[];
  /** What the files said when they were last looked at, and what was written since. */
  held(): Held;
  /** Changes whenever `held` does. */
  readonly version: () => number;
  /** Whether nobody else has changed a file, and no day has begun, since the last look. */
  readonly isUpToDate: () => boolean;
  /** Reads what has changed, puts back what is gone. Never twice at the same time. */
  look(): Promise<Held>;
  /** Reads everything at the next look, changed or not. */
  forget(): void;
  /** The mark that an entry was answered with; undefined where it was never kept. */
  readonly markOfId: (id: string) => string | undefined;
  /** Completes what is torn at the end of a file. */
  mend(file: string): Promise<void>;
  /** Takes in what has just been written. */
  wrote(group: WrittenGroup): void;
}

/** Opens a farm: mends what a sudden stop tore, reads everything, puts back what is gone. */
export async function follow(following: Following): Promise<Follower> {
  const { farm, disk, now_ms, complain } = following;
  const promises = openPromises();
  const { entries, torn, damaged } = readJournal(farm);
  for (const { file, size } of torn) await disk.cut(join(farm, file), size);
  if (damaged.length > 0)
    complain(`The desk's own journal is damaged at ${damaged.join(', ')}. All its other entries are known.`);
  // Where an id stands twice, the disk failed so badly that the first could not be taken back.
  const last = new Map(entries.map((entry) => [entry.id, entry]));
  for (const entry of entries) if (last.get(entry.id) === entry) promises.add(entry);
  const follower = openFollower(following, promises);
  const held = await follower.look();
  if (held.faults) complain(`${held.faults}\nThe Milk book takes entries all the same, with what could be read at ${new Date(now_ms()).toISOString()}.`); // prettier-ignore
  return follower;
}

/** What was promised to people. */
function openPromises() {
  const all: Promised[] = [];
  const marks = new Map<string, string>();
  const clashes = openClashes();
  return {
    all,
    marks,
    clashes,
    add(entry: JournalEntry) {
      const made = promisedRow(entry);
      if (!made) return;
      all.push(made);
      marks.set(entry.id, entry.mark);
      const { doe, day, milking } = made.row;
      const { mark, saw, stood } = entry;
      clashes.add({ doe, date: isoDate(day), milking, mark, saw, stood });
    },
  };
}

function openFollower(following: Following, promises: ReturnType<typeof openPromises>): Follower {
  const { farm, now_ms, complain, disk, quiet_ms } = following;
  const committer = openCommitter(farm, disk);
  const restored: RowPutBack[] = [];
  const told = new Set<Promised>();
  const seen = openSight(following);
  const mendAll = async () => {
    try {
      await committer.clean();
      await mendEnds(farm, disk, promises.all);
      return true;
    } catch (error) {
      complain(failureWords('A row that a sudden stop tore', 'be completed', error));
      return false;
    }
  };
  return {
    committer,
    clashes: promises.clashes,
    restored,
    held: () => seen.held() ?? seen.read(),
    version: seen.version,
    isUpToDate: seen.isUpToDate,
    async look() {
      const before = seen.held();
      if (before && seen.isUpToDate()) return before;
      const isStart = before === null;
      let marks = isStart ? folderMarks(farm) : await settledMarks(farm, quiet_ms);
      const isMended = await mendAll();
      let held = seen.read();
      const back = await putBackMissing({ farm, held, promised: promises.all, committer, isStart, now_ms, complain, told }); // prettier-ignore
      restored.push(...back.rows);
      if (back.rows.length > 0) {
        marks = folderMarks(farm);
        held = seen.read();
      }
      for (const { row } of back.hidden) held.add(row);
      // What could not be put right is tried again at the next look.
      seen.mark(isMended && back.isThrough ? marks : null);
      return held;
    },
    forget: () => seen.mark(null),
    markOfId: (id) => promises.marks.get(id),
    mend: (file) =>
      mendEnds(
        farm,
        disk,
        promises.all.filter(({ entry }) => entry.file === file),
      ),
    wrote(group) {
      for (const entry of group.entries) promises.add(entry);
      seen.grew(group);
    },
  };
}

/** What was seen of the farm's files: their reading, and their marks at that moment. */
function openSight({ farm, asOf, now_ms }: Following) {
  let held: Held | null = null;
  let marks: Marks | null = null;
  let readOn = 0;
  let version = 0;
  return {
    held: () => held,
    version: () => version,
    // A day that begins changes what may be written and what is a fault.
    isUpToDate: () =>
      held !== null &&
      marks !== null &&
      readOn === todayOf(held, now_ms()) &&
      sameMarks(marks, folderMarks(farm)),
    read() {
      held = readHeld(farm, { asOf, now_ms: now_ms() }, held);
      readOn = todayOf(held, now_ms());
      version += 1;
      return held;
    },
    mark: (now: Marks | null) => void (marks = now),
    grew({ to, rows, entries, markBefore }: WrittenGroup) {
      for (const { row } of rows) held?.add({ ...row, file: to.file });
      version += 1;
      const text = to.before + entries.map(({ row }) => row + to.lineEnd).join('');
      const after = ownGrowth(farm, to, markBefore, text);
      // A file that grew by our rows alone need not be read again.
      if (marks && after && (marks.get(to.file) ?? null) === markBefore) marks.set(to.file, after);
      else marks = null;
    },
  };
}

/** The mark of a file that grew by a text and nothing else; null where more has happened to it. */
function ownGrowth(
  farm: string,
  { file, size }: MonthFile,
  before: string | null,
  text: string,
): string | null {
  const after = fileMark(farm, file);
  if (after === null || !after.startsWith(`${(size ?? 0) + Buffer.byteLength(text)} `)) return null;
  const inode = (mark: string) => mark.split(' ')[2];
  return before === null || inode(before) === inode(after) ? after : null;
}
