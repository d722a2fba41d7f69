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
  /** A row has been written: reads the book now, or as soon as reading leaves enough time for everything else. */
  readSoon(): void;
  close(): void;
}

/** Who hears of a book under watch. */
export interface BookHearer {
  /** The book is another one than before. */
  changed(book: ReadBook): void;
  /** Somebody has changed a file of the farm folder. */
  touched?(): void;
}

const WATCHING: Watching = { settle_ms: 400, look_ms: 4_000 };
// Midnight falls on a quarter of an hour in every time zone.
const QUARTER_ms = 900_000;
const LOOK_AT_CLOCK_ms = 20_000;
// Between two readings for rows that come fast, by the length of the one before: reading takes a third of the time.
const REST = 2;
// Whoever has entered a row gets the answer first.
const ANSWER_ms = 10;

/**
 * Reads the book and watches it. `changed` hears of every state that differs from the one before; a faulty book
 * changes nothing, and the coordinator is told of the same faults once.
 */
export function watchBook(source: LiveSource, hearer: BookHearer): LiveBook {
  const { farm: dir, asOf, now_ms, complain, watching = WATCHING } = source;
  let last: ReadBook | null = null;
  let told = '';
  const look = (): boolean => {
    const reading = readBoardBook(dir, { asOf, now_ms: now_ms() });
    if (!reading.ok) {
      const faults = tellFaults(reading.faults, dir);
      if (faults !== told) complain(`${faults}\nThe Barn board goes on with the numbers from before.`);
      told = faults;
      return false;
    }
    told = '';
    const isOther = last?.fingerprint !== reading.fingerprint;
    last = { fingerprint: reading.fingerprint, farm: reading.farm };
    return isOther;
  };
  const read = () => {
    const isOther = look();
    if (isOther && last) hearer.changed(last);
  };
  // Nobody listens yet.
  look();
  const paced = pace(read);
  const touched = () => {
    read();
    hearer.touched?.();
  };
  const end = watchFolder(dir, watching, touched);
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
    readSoon: paced.soon,
    close: () => {
      end();
      paced.end();
      clearInterval(dayBreak);
    },
  };
}

/** Does some work soon after it is asked for, once for many askings, with rests as long as the work takes. */
function pace(work: () => void): { soon: () => void; end: () => void } {
  let due: NodeJS.Timeout | undefined;
  let free_ms = 0;
  return {
    soon() {
      if (due) return;
      const wait_ms = Math.max(ANSWER_ms, free_ms - performance.now());
      due = setTimeout(() => {
        due = undefined;
        const start_ms = performance.now();
        work();
        const end_ms = performance.now();
        free_ms = end_ms + REST * (end_ms - start_ms);
      }, wait_ms);
    },
    end: () => clearTimeout(due),
  };
}
