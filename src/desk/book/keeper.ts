// The one writer of the milk book: rows go onto the disk before anybody is told that they are kept.
import { join } from 'node:path';
import type { RowPutBack } from '../../../shared/book/deskState.ts';
import type { BookState, EntryAnswer, EntryPost } from '../../../shared/book/types.ts';
import type { Book, Farm } from '../../../shared/herd/types.ts';
import { DESK_FOLDER } from '../../build/fingerprint.ts';
import { takeLock } from '../../build/lock.ts';
import type { WrittenRow } from '../entryEvent.ts';
import { watchFolder, type Watching } from '../watchFolder.ts';
import { bookState } from './bookState.ts';
import { thisDisk, type Disk } from './disk.ts';
import { follow, type Follower } from './follow.ts';
import { todayOf } from './held.ts';
import { writePosts, type WaitingPost } from './writePosts.ts';

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
  /** How long to wait for a desk that is just closing, ms. */
  readonly wait_ms?: number;
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
  /**
   * Writes the entries of a post; answers, in their order, once what is kept is on disk. An entry of a day that has begun by
   * its phone's clock and not by this one gets no answer yet. Throws where the disk fails.
   */
  write(post: EntryPost): Promise<EntryAnswer[]>;
  /** The book as a phone holds it, as it was when the files were last looked at. */
  state(): BookState;
  /** `state` as JSON. */
  stateText(): string;
  book(): KeptBook;
  /** Promised rows that were gone from their file and were put back since the desk was opened. */
  restored(): readonly RowPutBack[];
  /** Calls with rows that have just been written to disk. Returns what ends that. */
  readonly onWritten: (hear: (rows: readonly WrittenRow[]) => void) => () => void;
  /** Looks whether somebody else has changed a file, and reads the farm anew if so. */
  outsideChange(): Promise<void>;
  /** Does some work on the farm's files while nothing else is written to them. */
  readonly inTurn: <T>(work: () => Promise<T>) => Promise<T>;
  close(): Promise<void>;
}

const WATCHING: Watching = { settle_ms: 400, look_ms: 4_000 };
const [QUIET_MS, WAIT_MS] = [250, 3_000];
const LOCK_FILE = '.writing';

/**
 * Opens a farm's milk book for writing, mends what a sudden stop left behind and puts back promised rows that are
 * gone. Throws PlainError where another desk is writing this farm's book.
 */
export async function openKeeper(settings: KeeperSettings): Promise<Keeper> {
  const {
    farm,
    complain,
    watching = WATCHING,
    disk = thisDisk,
    quiet_ms = QUIET_MS,
    wait_ms = WAIT_MS,
  } = settings;
  await disk.makeFolder(join(farm, DESK_FOLDER));
  const who = "Another desk that writes this farm's milk book";
  const unlock = await takeLock(join(farm, DESK_FOLDER, LOCK_FILE), { most_ms: wait_ms, every_ms: 100, say: complain, who }); // prettier-ignore
  try {
    const follower = await follow({ ...settings, disk, quiet_ms });
    const keeper = keeperOf(settings, follower);
    const look = () => void keeper.outsideChange().catch((error: unknown) => complain(String(error)));
    const endWatch = watchFolder(farm, watching, look);
    return {
      ...keeper,
      async close() {
        endWatch();
        await keeper.close();
        unlock();
      },
    };
  } catch (error) {
    unlock();
    throw error;
  }
}

function keeperOf(settings: KeeperSettings, follower: Follower): Keeper {
  const { farm, now_ms, complain } = settings;
  const { inTurn, settled } = openTurns();
  const hearers = openHearers(complain);
  const shown = openShown(follower, now_ms);
  const queue: WaitingPost[] = [];
  let closed = false;
  const drain = async () => {
    const posts = queue.splice(0);
    try {
      await writePosts(posts, { farm, now_ms, follower, tell: hearers.tell });
    } catch (error) {
      for (const { failed } of posts) failed(error);
    }
  };
  return {
    write: (post) =>
      new Promise((kept, failed) => {
        if (closed) return failed(new Error('the desk is being closed'));
        queue.push({ post, kept, failed });
        // Those that come while another batch is on its way to the disk go together.
        if (queue.length === 1) void inTurn(drain);
      }),
    state: () => shown().state,
    stateText: () => shown().text,
    book() {
      const { farm: settledFarm, herd, rows } = follower.held();
      return { farm: settledFarm, book: { ...herd, rows }, asOf: todayOf(follower.held(), now_ms()) };
    },
    restored: () => follower.restored,
    onWritten: hearers.add,
    async outsideChange() {
      if (!closed && !follower.isUpToDate()) await inTurn(() => follower.look());
    },
    inTurn,
    async close() {
      closed = true;
      await settled();
    },
  };
}

/** One piece of work after the other. */
function openTurns() {
  let last: Promise<unknown> = Promise.resolve();
  return {
    inTurn: <T>(work: () => Promise<T>): Promise<T> => {
      const next = last.then(work);
      last = next.catch(() => undefined);
      return next;
    },
    settled: () => last,
  };
}

/** Those who hear of rows on disk. One that fails takes neither the entry nor the others with it. */
function openHearers(complain: (text: string) => void) {
  const hearers = new Set<(rows: readonly WrittenRow[]) => void>();
  return {
    add: (hear: (rows: readonly WrittenRow[]) => void) => {
      hearers.add(hear);
      return () => void hearers.delete(hear);
    },
    tell: (rows: readonly WrittenRow[]) => {
      for (const hear of [...hearers])
        try {
          hear(rows);
        } catch (error) {
          complain(`What follows an entry failed; the entry itself is kept. ${String(error)}`);
        }
    },
  };
}

/** The book as phones hold it, made once for each state of it. */
function openShown(follower: Follower, now_ms: () => number) {
  let last: { version: number; today: number; state: BookState; text: string } | null = null;
  return () => {
    const held = follower.held();
    const [version, today] = [follower.version(), todayOf(held, now_ms())];
    if (last?.version !== version || last.today !== today) {
      const state = bookState(held, follower.clashes, today);
      last = { version, today, state, text: JSON.stringify(state) };
    }
    return last;
  };
}
