// The phone's store on a browser that keeps nothing: a newer page must wait until everything entered is at the desk.
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { BookState, EntryPost } from '../../../shared/book/types.ts';
import { openStore } from '../../../src/components/book/store/store.ts';

const STATE = { does: [], rows: [], clashes: [], treatments: [], fingerprint: 'f' } as unknown as BookState;
const page = { isOnline: true, reloads: 0 };

/** A page whose farm machine has a newer one, in a pocket. */
function standIns() {
  const noEvents = { addEventListener: () => undefined };
  const own = { ...noEvents, visibilityState: 'hidden', querySelectorAll: () => [] };
  vi.stubGlobal('document', own);
  vi.stubGlobal('window', noEvents);
  vi.stubGlobal('location', { pathname: '/book/', search: '', hash: '', reload: () => (page.reloads += 1) });
  vi.stubGlobal('sessionStorage', { getItem: () => null, setItem: () => undefined });
  vi.stubGlobal('EventSource', { OPEN: 1 });
  vi.spyOn(console, 'warn').mockReturnValue();
  const script = { getAttribute: () => '/assets/newer.js' };
  const newer = { querySelectorAll: (which: string) => (which.includes('json') ? [] : [script]) };
  vi.stubGlobal('DOMParser', class { parseFromString = () => newer }); // prettier-ignore
  vi.stubGlobal('fetch', async (address: string, { method, body }: RequestInit = {}) => {
    await Promise.resolve();
    if (!page.isOnline) throw new TypeError('no network');
    if (method === 'HEAD') return new Response(null, { headers: { 'Pailside-Book': 'yes' } });
    if (address === '/book/') return new Response('', { headers: { 'Content-Type': 'text/html' } });
    if (!address.endsWith('desk/entries')) return Response.json(STATE);
    const { entries } = JSON.parse(body as string) as EntryPost;
    const answers = entries.map(({ id }) => ({ id, kept: true, mark: 'm' }));
    return Response.json({ answers, state: STATE });
  });
}

beforeEach(() => {
  Object.assign(page, { isOnline: true, reloads: 0 });
  standIns();
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const DRAFT = { doe: 'a', date: '2026-05-14', milking: 'am', amount: '9', unit: 'cup', use: 'kept', note: '', sure: false, saw: null } as const; // prettier-ignore
const LONG_ms = 10_000;

it('does not load the page anew while something waits in memory alone, and does so once it is at the desk', async () => {
  const store = await openStore('/');
  page.isOnline = true;
  await vi.advanceTimersByTimeAsync(50);
  // The newer page has been seen; now the network goes, and the phone into a pocket.
  expect([store.view().status, store.view().keeps, page.reloads]).toEqual(['online', 'memory', 0]);
  page.isOnline = false;
  await store.enter(DRAFT);
  await vi.advanceTimersByTimeAsync(LONG_ms);
  expect([store.view().waiting.length, page.reloads]).toEqual([1, 0]);
  page.isOnline = true;
  store.retry();
  await vi.advanceTimersByTimeAsync(LONG_ms);
  expect(store.view().waiting).toEqual([]);
  expect(page.reloads).toBeGreaterThan(0);
  store.close();
});
