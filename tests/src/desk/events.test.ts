// The desk's event stream: what a board hears of a book that changes, of a faulty one, of a new build; and who is let go.
import { appendFileSync, mkdirSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { get, type IncomingMessage } from 'node:http';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { serve } from '@hono/node-server';
import type { AddressInfo } from 'node:net';
import { Hono } from 'hono';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import type { BoardFarm } from '../../../shared/board/types.ts';
import { readBoardBook } from '../../../src/farm/boardBook.ts';
import { addEvents, type StreamSettings } from '../../../src/desk/events.ts';
import { deskApp, openDesk } from '../../../src/desk/serve.ts';
import { ownFolder, SMALL_FARM, writeFiles } from '../build/smallFarm.ts';

const SOON: StreamSettings = { beat_ms: 60, most: 300, mostFromOne: 20, site_ms: 40 };
const WATCHING = { settle_ms: 120, look_ms: 60_000 };
const BOOK = 'milkings/2026-05.csv';
const NOW_ms = Date.UTC(2026, 4, 21, 15);

/** What one listener has heard. */
interface Heard {
  readonly events: { event: string; id: string | undefined; data: unknown }[];
  beats: number;
  readonly response: IncomingMessage;
  leave(): void;
}

function farmFolder(): { farm: string; dist: string; complaints: string[]; root: string } {
  const root = ownFolder();
  writeFiles(join(root, 'farm'), SMALL_FARM);
  writeFiles(join(root, 'dist'), { 'index.html': 'front', 'barn/index.html': 'barn', '.built': 'one\n' });
  return { root, farm: join(root, 'farm'), dist: join(root, 'dist'), complaints: [] };
}

/** A server with nothing but the stream. */
async function openStream(settings = SOON, watching = WATCHING) {
  const place = farmFolder();
  const app = new Hono();
  const source = { farm: place.farm, now_ms: () => NOW_ms, complain: (text: string) => void place.complaints.push(text), watching }; // prettier-ignore
  const events = addEvents(app, '/hill/', place.dist, source, settings);
  app.get('*', (c) => c.html('a page'));
  const server = serve({ fetch: app.fetch, port: 0, hostname: '127.0.0.1' });
  await new Promise((done) => server.once('listening', done));
  onTestFinished(() => {
    events.close();
    if ('closeAllConnections' in server) server.closeAllConnections();
    server.close();
  });
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return { ...place, url, events, listen: (query = '') => listenTo(`${url}/hill/events${query}`) };
}

async function listenTo(address: string, headers: Record<string, string> = {}): Promise<Heard> {
  const response = await new Promise<IncomingMessage>((done, failed) => {
    const asked = get(address, { agent: false, headers }, done);
    asked.on('error', failed);
  });
  const heard: Heard = { events: [], beats: 0, response, leave: () => response.destroy() };
  let rest = '';
  response.on('data', (part: Buffer) => {
    const blocks = (rest + part.toString('utf8')).split('\n\n');
    rest = blocks.pop() ?? '';
    for (const block of blocks) {
      if (block === ':') heard.beats += 1;
      else heard.events.push(eventOf(block));
    }
  });
  response.on('error', () => undefined);
  onTestFinished(() => void response.destroy());
  return heard;
}

function eventOf(block: string): Heard['events'][number] {
  const fields = new Map(block.split('\n').map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 2)])); // prettier-ignore
  return { event: fields.get('event') ?? '', id: fields.get('id'), data: JSON.parse(fields.get('data') ?? 'null') }; // prettier-ignore
}

const bookIn = (heard: Heard, place = 0) =>
  heard.events.filter(({ event }) => event === 'book')[place]?.data as
    { fingerprint: string; farm: BoardFarm } | undefined;
const addRow = (farm: string, row: string) => appendFileSync(join(farm, BOOK), `${row}\n`);
const soon = { timeout: 5_000, interval: 20 };

describe('the stream', () => {
  it('is one of events, is not kept, and says that it is alive', async () => {
    const { listen } = await openStream();
    const heard = await listen();
    expect(heard.response.statusCode).toBe(200);
    expect(heard.response.headers['content-type']).toBe('text/event-stream; charset=utf-8');
    expect(heard.response.headers['cache-control']).toBe('no-store');
    await vi.waitFor(() => expect(heard.beats).toBeGreaterThan(3), soon);
  });

  it('tells at once how the book stands, as the farm folder says, unless the page was built from it', async () => {
    const { farm, listen } = await openStream();
    const heard = await listen();
    await vi.waitFor(() => expect(heard.events).toHaveLength(1), soon);
    const stands = readBoardBook(farm, { now_ms: NOW_ms });
    if (!stands.ok) throw new Error('The small farm cannot be read.');
    expect(bookIn(heard)).toEqual({ fingerprint: stands.fingerprint, farm: JSON.parse(JSON.stringify(stands.farm)) as unknown }); // prettier-ignore
    expect(heard.events[0]?.id).toBe(stands.fingerprint);
    const knows = await listen(`?book=${stands.fingerprint}`);
    const other = await listen('?book=0123456789abcdef');
    await vi.waitFor(() => expect(knows.beats).toBeGreaterThan(3), soon);
    expect([knows.events.length, other.events.length]).toEqual([0, 1]);
  });

  it('tells by a header on every page that it is there, and nowhere else', async () => {
    const { url } = await openStream();
    const told = async (path: string, method = 'GET') =>
      (await fetch(`${url}${path}`, { method })).headers.get('Pailside-Live');
    expect([await told('/hill/barn/'), await told('/hill/es/barn/how-much/'), await told('/hill/barn/', 'HEAD'), await told('/hill/sheets/'), await told('/hill/figures.json')])
      .toEqual(['yes', 'yes', 'yes', 'yes', null]); // prettier-ignore
  });

  it('opens no stream for a look at its head', async () => {
    const { url, events } = await openStream();
    const { status } = await fetch(`${url}/hill/events`, { method: 'HEAD' });
    expect([status, events.count()]).toEqual([200, 0]);
  });

  it('is not there on a desk without a book', async () => {
    const { dist, root } = farmFolder();
    const app = deskApp({ dist, prints: join(root, 'prints'), basePath: '/' });
    expect((await app.request('/events')).status).toBe(404);
    expect((await app.request('/barn/')).headers.get('Pailside-Live')).toBeNull();
  });
});

describe('a book that changes', () => {
  it('is told once after a burst of writing, with the new row in it', async () => {
    // Longer than a busy machine takes between two of the writes.
    const settle_ms = 1500;
    const { farm, listen } = await openStream(SOON, { ...WATCHING, settle_ms });
    const heard = await listen();
    await vi.waitFor(() => expect(heard.events).toHaveLength(1), soon);
    // A day counts once it is whole.
    const morning = `${SMALL_FARM[BOOK]}2026-05-21,am,clover,8\n`;
    for (let cups = 1; cups <= 5; cups += 1) {
      await sleep(30);
      writeFileSync(join(farm, BOOK), `${morning}2026-05-21,pm,clover,${cups}\n`);
    }
    await vi.waitFor(() => expect(heard.events).toHaveLength(2), soon);
    await sleep(2 * settle_ms);
    expect(heard.events).toHaveLength(2);
    const before = bookIn(heard)?.farm.figures.figures['herd.week.total']?.value ?? 0;
    const after = bookIn(heard, 1)?.farm.figures.figures['herd.week.total']?.value ?? 0;
    // A US cup is 0.2365882365 L (NIST Handbook 44, appendix C).
    expect(after - before).toBeCloseTo((8 + 5) * 0.2365882365, 9);
    expect(bookIn(heard, 1)?.fingerprint).not.toBe(bookIn(heard)?.fingerprint);
  });

  it('is told where an editor puts a new file in the place of the old one, and where a new month begins', async () => {
    const { farm, listen } = await openStream();
    const heard = await listen();
    await vi.waitFor(() => expect(heard.events).toHaveLength(1), soon);
    writeFileSync(join(farm, '.book.tmp'), `${SMALL_FARM[BOOK]}2026-05-21,am,clover,3\n`);
    renameSync(join(farm, '.book.tmp'), join(farm, BOOK));
    await vi.waitFor(() => expect(heard.events).toHaveLength(2), soon);
    writeFileSync(join(farm, 'milkings', '2026-04.csv'), 'date,milking,doe,amount\n2026-04-20,am,clover,8\n');
    await vi.waitFor(() => expect(heard.events).toHaveLength(3), soon);
  });

  it('is not told where files are only touched', async () => {
    const { farm, listen } = await openStream();
    const heard = await listen();
    await vi.waitFor(() => expect(heard.events).toHaveLength(1), soon);
    utimesSync(join(farm, BOOK), new Date(), new Date());
    writeFileSync(join(farm, 'notes.txt'), 'Nothing of the book.');
    await sleep(5 * WATCHING.settle_ms);
    expect(heard.events).toHaveLength(1);
  });

  it('is told anew when a day begins on the farm’s clock', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    onTestFinished(() => void vi.useRealTimers());
    let now_ms = Date.UTC(2026, 4, 22, 4, 59);
    const { farm, dist, complaints } = farmFolder();
    writeFileSync(join(farm, 'farm.yaml'), SMALL_FARM['farm.yaml']?.replace(/asOf.*\n/, '') ?? '');
    const app = new Hono();
    const events = addEvents(app, '/', dist, { farm, now_ms: () => now_ms, complain: (text) => void complaints.push(text) }, { ...SOON, beat_ms: 600_000 }); // prettier-ignore
    onTestFinished(() => events.close());
    const response = await app.request('/events');
    const reader = response.body?.getReader();
    const next = async () => new TextDecoder().decode((await reader?.read())?.value);
    await next();
    expect(await next()).toContain('"asOf":"2026-05-21"');
    now_ms += 2 * 60_000;
    vi.advanceTimersByTime(30_000);
    for (;;) {
      const text = await next();
      if (text === ':\n\n') continue;
      // 05:01 in UTC is a minute past midnight in Chicago.
      expect(text).toContain('"asOf":"2026-05-22"');
      break;
    }
    await reader?.cancel();
  });
});

describe('a faulty book', () => {
  it('sends nothing, is told to the coordinator once, and is taken when it is whole again', async () => {
    const { farm, listen, complaints } = await openStream();
    const heard = await listen();
    await vi.waitFor(() => expect(heard.events).toHaveLength(1), soon);
    addRow(farm, '2026-05-21,am,clovver,8');
    await vi.waitFor(() => expect(complaints).toHaveLength(1), soon);
    expect(complaints[0]).toContain('milkings/2026-05.csv:4:');
    expect(complaints[0]).toContain('nearest "clover"');
    expect(complaints[0]).toContain('The Barn board goes on with the numbers from before.');
    utimesSync(join(farm, BOOK), new Date(), new Date());
    await sleep(4 * WATCHING.settle_ms);
    expect([complaints.length, heard.events.length]).toEqual([1, 1]);
    // Who comes now hears of the last book that was whole.
    const later = await listen();
    await vi.waitFor(() => expect(bookIn(later)?.fingerprint).toBe(bookIn(heard)?.fingerprint), soon);
    writeFileSync(join(farm, BOOK), `${SMALL_FARM[BOOK]}2026-05-21,am,clover,8\n`);
    await vi.waitFor(() => expect(heard.events).toHaveLength(2), soon);
  });

  it('at the start sends nothing until it is mended', async () => {
    const place = farmFolder();
    rmSync(join(place.farm, 'does.csv'));
    const desk = await openDesk(
      { dist: place.dist, prints: join(place.root, 'none'), basePath: '/', live: { farm: place.farm, now_ms: () => NOW_ms, complain: (text) => void place.complaints.push(text), watching: WATCHING } },
      0,
    ); // prettier-ignore
    onTestFinished(() => desk.close());
    const heard = await listenTo(`${desk.url}events`);
    expect(place.complaints).toHaveLength(1);
    writeFileSync(join(place.farm, 'does.csv'), SMALL_FARM['does.csv'] ?? '');
    await vi.waitFor(() => expect(heard.events).toHaveLength(1), soon);
  });
});

describe('a new build', () => {
  it('is told by its mark when it has been swapped in, and only then', async () => {
    const { root, dist, listen } = await openStream();
    const heard = await listen();
    await sleep(5 * SOON.site_ms);
    expect(heard.events.filter(({ event }) => event === 'site')).toEqual([]);
    mkdirSync(join(root, 'side'));
    writeFileSync(join(root, 'side', '.built'), 'two\n');
    renameSync(dist, join(root, 'old'));
    await sleep(3 * SOON.site_ms);
    renameSync(join(root, 'side'), dist);
    const sites = () => heard.events.filter(({ event }) => event === 'site').map(({ data }) => data);
    await vi.waitFor(() => expect(sites()).toEqual([{ build: 'two' }]), soon);
  });
});

describe('many boards', () => {
  it('all hear of the same change; who leaves is let go', async () => {
    const { farm, listen, events } = await openStream();
    const all = await Promise.all(Array.from({ length: 120 }, () => listen('?book=none')));
    await vi.waitFor(() => expect(all.every((one) => one.events.length === 1)).toBe(true), soon);
    expect(events.count()).toBe(120);
    for (const one of all.slice(0, 100)) one.leave();
    await vi.waitFor(() => expect(events.count()).toBe(20), soon);
    addRow(farm, '2026-05-21,am,clover,8');
    await vi.waitFor(() => expect(all.slice(100).every((one) => one.events.length === 2)).toBe(true), soon);
    expect(all.slice(0, 100).some((one) => one.events.length > 1)).toBe(false);
  });

  it('beyond the most are asked to come later, and come when one has left', async () => {
    const { listen } = await openStream({ ...SOON, most: 3 });
    const [first] = await Promise.all([listen(), listen(), listen()]);
    const refused = await listen();
    expect([refused.response.statusCode, refused.response.headers['retry-after']]).toEqual([503, '60']);
    first?.leave();
    await vi.waitFor(async () => expect((await listen()).response.statusCode).toBe(200), soon);
  });

  it('that take nothing any more are let go, and hold up nobody', async () => {
    const place = farmFolder();
    const app = new Hono();
    const events = addEvents(app, '/', place.dist, { farm: place.farm, now_ms: () => NOW_ms, complain: () => undefined, watching: WATCHING }, SOON); // prettier-ignore
    onTestFinished(() => events.close());
    // Nobody reads this one's body.
    await app.request('/events');
    expect(events.count()).toBe(1);
    await vi.waitFor(() => expect(events.count()).toBe(0), soon);
  });

  it('are let go when the desk closes', async () => {
    const place = farmFolder();
    const desk = await openDesk(
      { dist: place.dist, prints: join(place.root, 'none'), basePath: '/', live: { farm: place.farm, now_ms: () => NOW_ms, complain: () => undefined } },
      0,
    ); // prettier-ignore
    const heard = await listenTo(`${desk.url}events`);
    const ended = new Promise((done) => heard.response.on('close', done));
    await desk.close();
    await ended;
  });
});
