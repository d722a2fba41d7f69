// A phone asking a desk that answers well, late, wrongly or not at all, or that is none.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { entered, stageOf, EMPTY_QUEUE } from '../../../shared/book/queue.ts';
import type { BookEntry, BookState, EntryAnswer, EntryPost } from '../../../shared/book/types.ts';
import { postWords } from '../../../src/components/book/store/deskTalk.ts';
import { Rounds } from '../../../src/components/book/store/rounds.ts';
import { memoryShelf, type Held } from '../../../src/components/book/store/shelf.ts';

const STATE = { does: [], rows: [], clashes: [], treatments: [], fingerprint: 'f' } as unknown as BookState;
const entryOf = (id: string): BookEntry => ({
  id, doe: id, date: '2026-05-14', milking: 'am', amount: '9', unit: 'cup', use: 'kept', note: '', sure: false,
  saw: null, entered_ms: 0,
}); // prettier-ignore
const json = (said: unknown, status = 200) => Response.json(said, { status });
const html = () => new Response('<!doctype html>', { headers: { 'Content-Type': 'text/html' } });
const kept = (id: string): EntryAnswer => ({ id, kept: true, mark: `m-${id}` });

type Desk = (address: string, request: RequestInit) => Response | Promise<Response>;
const HAS_BOOK = () => new Response(null, { headers: { 'Pailside-Book': 'yes' } });
/** Answers the head with a book's, entries with all kept, all else with the book. */
const goodDesk: Desk = (address, request) => {
  if (request.method === 'HEAD') return HAS_BOOK();
  if (!address.endsWith('desk/entries')) return json(STATE);
  const { entries } = JSON.parse(request.body as string) as EntryPost;
  return json({ answers: entries.map(({ id }) => kept(id)), state: STATE });
};

let desk: Desk = goodDesk;
let asked: string[] = [];
beforeEach(() => {
  [desk, asked] = [goodDesk, []];
  vi.stubGlobal('location', { pathname: '/book/' });
  vi.stubGlobal('fetch', async (address: string, request: RequestInit = {}) => {
    asked.push(`${request.method ?? 'GET'} ${address}`);
    return desk(address, request);
  });
});
afterEach(() => vi.unstubAllGlobals());

/** A phone with entries that wait. */
async function phoneWith(...ids: string[]) {
  const shelf = memoryShelf();
  let held: Held = await shelf.change(() => ({}));
  for (const id of ids) held = await shelf.change(({ all }) => ({ add: entered(all, entryOf(id)).added }));
  const told: string[] = [];
  const rounds = new Rounds({
    base: '/',
    shelf,
    held: () => held,
    ready: () => Promise.resolve(),
    told(news) {
      held = news.held ?? held;
      if (news.status) told.push(news.status);
    },
  });
  const make = () => rounds.make(new AbortController().signal);
  const stages = () => ids.map((id) => stageOf({ ...EMPTY_QUEUE, all: held.all }, id));
  return { rounds, make, told, stages, held: () => held };
}

describe('a round', () => {
  it('sends what waits and takes the book from the answer; another one has nothing to ask', async () => {
    const phone = await phoneWith('a', 'b');
    expect(await phone.make()).toBe(true);
    expect([phone.stages(), phone.told, phone.held().book?.state]).toEqual([
      ['kept', 'kept'],
      ['online'],
      STATE,
    ]);
    await phone.make();
    expect(asked).toEqual(['HEAD /book/', 'POST /desk/entries']);
  });

  it('fetches the book once it may be another, or a row is told of that it does not show', async () => {
    const phone = await phoneWith();
    await phone.make();
    phone.rounds.stale();
    await phone.make();
    const row = { doe: 'a', name: 'A', date: '2026-05-14', milking: 'am', amount: { num: 9, den: 1, unit: 'cup' }, use: 'kept', dayTotal_L: null, weekTotal_L: null, window: null, today: null } as const; // prettier-ignore
    phone.rounds.row(row);
    await phone.make();
    phone.rounds.row({ ...row, amount: null });
    await phone.make();
    expect(asked).toEqual(['HEAD /book/', ...Array.from({ length: 3 }, () => 'GET /desk/book')]);
  });

  it('keeps what waits where the desk is silent, full or in the middle of something', async () => {
    for (const [bad, status] of [
      [() => Promise.reject(new TypeError('no network')), 'offline'],
      [() => new Response('The disk is full.', { status: 507 }), 'offline'],
      [() => json({ why: 'visitor' }, 403), 'words wanted'],
      [() => json({ why: 'elsewhere' }, 403), 'offline'],
      [html, 'offline'],
      [() => json({ answers: 'none' }), 'offline'],
    ] as const) {
      const phone = await phoneWith('a');
      desk = (_, request) => (request.method === 'HEAD' ? HAS_BOOK() : bad());
      expect(await phone.make()).toBe(false);
      expect([phone.stages(), phone.told]).toEqual([['waiting'], [status]]);
      desk = goodDesk;
      expect(await phone.make()).toBe(true);
      expect(phone.stages()).toEqual(['kept']);
    }
  });

  it('lets no entry hold up another that the desk cannot even read', async () => {
    const phone = await phoneWith('bad', 'a', 'b', 'c', 'd', 'e');
    desk = (address, request) =>
      typeof request.body === 'string' && request.body.includes('"bad"') ? new Response('?', { status: 400 }) : goodDesk(address, request); // prettier-ignore
    for (let round = 0; round < 7; round += 1) await phone.make();
    expect(phone.stages()).toEqual(['waiting', 'kept', 'kept', 'kept', 'kept', 'kept']);
  });

  it('takes no step where the desk answers and names none of what was sent', async () => {
    const phone = await phoneWith('a');
    desk = (_, request) =>
      request.method === 'HEAD' ? HAS_BOOK() : json({ answers: [kept('other')], state: STATE });
    expect(await phone.make()).toBe(false);
    expect(phone.stages()).toEqual(['waiting']);
  });
});

describe('a host that keeps no book', () => {
  it('is known by its head alone, and asked nothing more', async () => {
    const phone = await phoneWith();
    desk = html;
    expect(await phone.make()).toBe(false);
    expect([phone.told, phone.rounds.isIdle(), asked]).toEqual([['no desk'], true, ['HEAD /book/']]);
  });

  it('is taken for a network’s log-in where the desk has been heard before', async () => {
    const phone = await phoneWith();
    await phone.make();
    phone.rounds.stale();
    desk = html;
    await phone.make();
    expect([phone.told, phone.rounds.isIdle()]).toEqual([['online', 'offline'], false]);
  });
});

describe('the farm’s words', () => {
  it('are answered as the desk says, or not at all', async () => {
    const say = (answer: Desk) => ((desk = answer), postWords('/', 'five words'));
    expect(await say(() => json({ ok: true, who: 'known' }))).toEqual({ ok: true, who: 'known' });
    expect(await say(() => json({ ok: false, why: 'wrong' }, 403))).toEqual({ ok: false, why: 'wrong' });
    expect(await say(() => json({ ok: false, why: 'wait', wait_s: 9 }, 429))).toEqual({ ok: false, why: 'wait', wait_s: 9 }); // prettier-ignore
    for (const none of [
      html,
      () => json({ why: 'elsewhere' }, 403),
      () => Promise.reject(new TypeError('gone')),
    ])
      expect(await say(none)).toEqual({ ok: false, why: 'no answer' });
  });
});
