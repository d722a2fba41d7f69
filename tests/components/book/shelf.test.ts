// Where a phone keeps its entries: whole or not at all, in order, for two pages at once, and on when the database fails.
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Queued } from '../../../shared/book/queue.ts';
import type { BookEntry, BookState } from '../../../shared/book/types.ts';
import { openDatabase } from '../../../src/components/book/store/database.ts';
import { newId } from '../../../src/components/book/store/newId.ts';
import {
  memoryShelf,
  openShelf,
  type HeardBook,
  type Shelf,
} from '../../../src/components/book/store/shelf.ts';

const entryOf = (id: string): BookEntry => ({
  id, doe: 'clover', date: '2026-05-14', milking: 'am', amount: '9', unit: 'cup', use: 'kept', note: '', sure: false,
  saw: null, entered_ms: 0,
}); // prettier-ignore
const addOf = (id: string): Omit<Queued, 'seq'> => ({ entry: entryOf(id), after: null, outcome: null });
const add = (shelf: Shelf, id: string) => shelf.change(() => ({ add: addOf(id) }));
const idsOn = async (shelf: Shelf) => (await shelf.change(() => ({}))).all.map(({ entry }) => entry.id);
const BOOK: HeardBook = { state: { fingerprint: 'f' } as BookState, turn: 3, heard_ms: 7 };

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  vi.spyOn(console, 'warn').mockImplementation(() => undefined);
});

describe.each([
  ['the database', () => openDatabase('/')],
  ['memory', () => Promise.resolve(memoryShelf())],
])('a shelf in %s', (_, open) => {
  it('keeps entries in the order they came, changes and drops them, and keeps the book', async () => {
    const shelf = await open();
    for (const id of ['a', 'b', 'c']) await add(shelf, id);
    expect(await idsOn(shelf)).toEqual(['a', 'b', 'c']);
    const held = await shelf.change(({ all }) => ({
      put: all.slice(1, 2).map((one) => ({ ...one, after: 'a' })),
      drop: all.slice(0, 1),
      book: BOOK,
    }));
    expect(held.all.map(({ entry, after }) => [entry.id, after])).toEqual([['b', 'a'], ['c', null]]); // prettier-ignore
    expect(held.book).toEqual(BOOK);
    expect((await add(shelf, 'd')).all.map(({ seq }) => seq)).toEqual([2, 3, 4]);
  });

  it('changes nothing where the plan fails', async () => {
    const shelf = await open();
    await add(shelf, 'a');
    const failing = async () =>
      shelf.change(() => {
        throw new Error('no plan');
      });
    await expect(failing()).rejects.toThrow('no plan');
    expect(await idsOn(shelf)).toEqual(['a']);
  });
});

describe('the database', () => {
  it('outlives the page, and holds what two pages enter at once', async () => {
    const [one, two] = [await openDatabase('/'), await openDatabase('/')];
    await Promise.all(['a', 'b', 'c', 'd'].map((id, place) => add(place % 2 ? one : two, id)));
    one.close();
    const later = await openDatabase('/');
    expect((await idsOn(later)).sort()).toEqual(['a', 'b', 'c', 'd']);
    expect(await idsOn(await openDatabase('/another/'))).toEqual([]);
  });

  it('is opened again where a sleeping phone has lost it', async () => {
    const shelf = await openDatabase('/');
    await add(shelf, 'a');
    shelf.close();
    expect((await add(shelf, 'b')).all.map(({ entry }) => entry.id)).toEqual(['a', 'b']);
  });
});

describe('a shelf that is to last', () => {
  it('is in memory where there is no database', async () => {
    const shelf = await openShelf(() => Promise.reject(new Error('a private window')));
    expect(shelf.keeps).toBe('memory');
    await add(shelf, 'a');
    expect(await idsOn(shelf)).toEqual(['a']);
  });

  it('goes on in memory with all that is held where the database fails later', async () => {
    const database = await openDatabase('/');
    let isFull = false;
    const failing: Shelf = {
      ...database,
      change: (plan) => (isFull ? Promise.reject(new Error('full')) : database.change(plan)),
    };
    const shelf = await openShelf(() => Promise.resolve(failing));
    await add(shelf, 'a');
    expect(shelf.keeps).toBe('phone');
    isFull = true;
    // What was tapped in the moment of the failure is not lost either.
    await Promise.all([add(shelf, 'b'), add(shelf, 'c')]);
    expect([shelf.keeps, await idsOn(shelf)]).toEqual(['memory', ['a', 'b', 'c']]);
  });
});

describe('the name of an entry', () => {
  it('is 22 characters of base64url, each time others', () => {
    const ids = Array.from({ length: 500 }, newId);
    expect(ids.filter((id) => !/^[\w-]{22}$/.test(id))).toEqual([]);
    expect(new Set(ids).size).toBe(500);
  });
});
