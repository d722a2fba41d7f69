// The milk book as it stands, read anew whenever its files change or a new day begins.
import type { BoardFarm } from '../../shared/board/types.ts';
import { readBoardBook } from '../farm/boardBook.ts';
import { tellFaults } from '../farm/tell.ts';
import { watchFolder, type Watching } from './watchFolder.ts';

/** What a live book is read from. */
export interface LiveSource {
  /** The farm folder. */
  readonly farm: string;
  /** `AS_OF` as it was given. */
  readonly asOf?: string | undefined;
  readonly now_ms: () => number;
  /** Tells the coordinator. */
  readonly complain: (text: string) => void;
  readonly watching?: Watching;
}

/** A book that could be read, ready to be sent. */
export interface ReadBook {
  readonly fingerprint: string;
  readonly farm: BoardFarm;
}

/** A book under watch. */
export interface LiveBook {
  /** The last book that could be read; null where none could yet. */
  current(): ReadBook | null;
  close(): void;
}

const WATCHING: Watching = { settle_ms: 400, look_ms: 30_000 };
// Midnight falls on a quarter of an hour in every time zone.
const QUARTER_ms = 900_000;
const LOOK_AT_CLOCK_ms = 20_000;

/**
 * Reads the book and watches it. `changed` hears of every state that differs from the one before; a faulty book
 * changes nothing, and the coordinator is told of the same faults once.
 */
export function watchBook(source: LiveSource, changed: (book: ReadBook) => void): LiveBook {
  const { farm: dir, asOf, now_ms, complain, watching = WATCHING } = source;
  let last: ReadBook | null = null;
  let told = '';
  const read = () => {
    const reading = readBoardBook(dir, { asOf, now_ms: now_ms() });
    if (!reading.ok) {
      const faults = tellFaults(reading.faults, dir);
      if (faults !== told) complain(`${faults}\nThe Barn board goes on with the numbers from before.`);
      told = faults;
      return;
    }
    told = '';
    const isOther = last?.fingerprint !== reading.fingerprint;
    last = { fingerprint: reading.fingerprint, farm: reading.farm };
    if (isOther) changed(last);
  };
  read();
  const end = watchFolder(dir, watching, read);
  // What is this week's changes at midnight, on the farm's clock.
  const quarterNow = () => Math.floor(now_ms() / QUARTER_ms);
  let quarter = quarterNow();
  const dayBreak = setInterval(() => {
    if (quarterNow() === quarter) return;
    quarter = quarterNow();
    read();
  }, LOOK_AT_CLOCK_ms);
  dayBreak.unref();
  return {
    current: () => last,
    close: () => {
      end();
      clearInterval(dayBreak);
    },
  };
}
