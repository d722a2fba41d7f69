// Where a phone keeps its entries and the book as it last heard it; in memory where there is no other place.
import type { Queued } from '../../../../shared/book/queue.ts';
import type { BookState } from '../../../../shared/book/types.ts';

/** The book as the desk last told it, the turn at which it was asked for, and when it came (the phone's clock). */
export interface HeardBook {
  readonly state: BookState;
  readonly turn: number;
  readonly heard_ms: number;
}

/** All that is kept, at one moment; entries in the order of `seq`. */
export interface Held {
  readonly all: readonly Queued[];
  readonly book: HeardBook | null;
}

/** What is to be written. Nothing of it happens unless all of it does. */
export interface Change {
  readonly add?: Omit<Queued, 'seq'>;
  readonly put?: readonly Queued[];
  readonly drop?: readonly Queued[];
  readonly book?: HeardBook;
}

/** A place to keep things. */
export interface Shelf {
  readonly keeps: 'phone' | 'memory';
  /**
   * Works out a change from what is held and writes it, with nobody in between; resolves with what is held then, once
   * it is on the disk. `plan` may be called twice, the first time for nothing.
   */
  change(plan: (held: Held) => Change): Promise<Held>;
  close(): void;
}

/** A shelf that lasts as long as the page. */
export function memoryShelf(start: Held = { all: [], book: null }): Shelf {
  let held = start;
  return {
    keeps: 'memory',
    change(plan) {
      held = changed(held, plan(held));
      return Promise.resolve(held);
    },
    close: () => undefined,
  };
}

function changed(held: Held, { add, put = [], drop = [], book }: Change): Held {
  const gone = new Set(drop.map(({ seq }) => seq));
  const newer = new Map(put.map((one) => [one.seq, one]));
  const all = held.all.filter(({ seq }) => !gone.has(seq)).map((one) => newer.get(one.seq) ?? one);
  const seq = (held.all.at(-1)?.seq ?? 0) + 1;
  return { all: add ? [...all, { ...add, seq }] : all, book: book ?? held.book };
}

/**
 * The shelf of the phone's database, or one in memory where there is none. A database that fails later is left for
 * memory too, with all that is held: what has been entered can still be sent.
 */
export async function openShelf(open: () => Promise<Shelf>): Promise<Shelf> {
  let now: Shelf = await open().catch((error: unknown) => inMemory(error));
  let held: Held = { all: [], book: null };
  // One after the other, so that what a failing shelf held is known.
  let before: Promise<unknown> = Promise.resolve();
  return {
    get keeps() {
      return now.keeps;
    },
    change(plan) {
      const next = before.then(async () => {
        try {
          held = await now.change(plan);
        } catch (error) {
          if (now.keeps === 'memory') throw error;
          now.close();
          now = inMemory(error, held);
          held = await now.change(plan);
        }
        return held;
      });
      before = next.catch(() => undefined);
      return next;
    },
    close: () => now.close(),
  };
}

function inMemory(error: unknown, held?: Held): Shelf {
  console.warn('This browser keeps nothing for the Milk book.', error);
  return memoryShelf(held);
}
