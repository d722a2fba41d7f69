// The phone's own database as a shelf: what is on it outlives the page, the browser and the battery.
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Queued } from '../../../../shared/book/queue.ts';
import type { Change, HeardBook, Held, Shelf } from './shelf.ts';

interface Schema extends DBSchema {
  entries: { key: number; value: Queued };
  heard: { key: 'book'; value: HeardBook };
}
type Database = IDBPDatabase<Schema>;

// Some browsers never answer a database's opening; a milker waits no longer than this.
const OPENING_ms = 4_000;
const STORES = ['entries', 'heard'] as const;

/** Opens the database of the site below `base`. Rejects where this browser has none to give. */
export async function openDatabase(base: string): Promise<Shelf> {
  const open = () => within(OPENING_ms, openDB<Schema>(`pailside book ${base}`, 1, { upgrade, blocking }));
  let db = await open();
  return {
    keeps: 'phone',
    async change(plan) {
      try {
        return await write(db, plan);
      } catch (error) {
        // A phone that has slept may have lost the database's other end; a second opening mends that.
        if (error instanceof DOMException && error.name === 'QuotaExceededError') throw error;
        db.close();
        db = await open();
        return await write(db, plan);
      }
    },
    close: () => db.close(),
  };
}

function upgrade(db: Database): void {
  db.createObjectStore('entries', { keyPath: 'seq', autoIncrement: true });
  db.createObjectStore('heard');
}

/** A later page that brings another form of the database must not wait for this one. */
const blocking = (_: number, __: number | null, event: IDBVersionChangeEvent) =>
  (event.target as IDBDatabase).close();

async function write(db: Database, plan: (held: Held) => Change): Promise<Held> {
  // Strict: done means on the disk, not on the way there.
  const work = db.transaction(STORES, 'readwrite', { durability: 'strict' });
  const entries = work.objectStore('entries');
  const heard = work.objectStore('heard');
  try {
    const [all, book] = await Promise.all([entries.getAll(), heard.get('book')]);
    const change = plan({ all, book: book ?? null });
    const asked: Promise<unknown>[] = [];
    for (const one of change.put ?? []) asked.push(entries.put(one));
    for (const one of change.drop ?? []) asked.push(entries.delete(one.seq));
    if (change.book) asked.push(heard.put(change.book, 'book'));
    // The database gives the place in the order, so that two pages never give the same.
    if (change.add) asked.push(entries.add(change.add as Queued));
    await Promise.all(asked);
    const after = { all: await entries.getAll(), book: (await heard.get('book')) ?? null };
    await work.done;
    return after;
  } catch (error) {
    // What failed is told below; its end is of no interest twice.
    work.done.catch(() => undefined);
    abort(work);
    throw error;
  }
}

function abort(work: { abort: () => void }): void {
  try {
    work.abort();
  } catch {
    // It has ended by itself.
  }
}

function within<T>(most_ms: number, promise: Promise<T>): Promise<T> {
  return new Promise((done, failed) => {
    const late = setTimeout(() => failed(new Error('The database does not open.')), most_ms);
    promise.then(done, failed).finally(() => clearTimeout(late));
  });
}
