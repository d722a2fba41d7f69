// The desk's event stream: entries, new numbers and new builds, to every page that listens.
import type { Hono } from 'hono';
import { fingerprintIn } from '../build/fingerprint.ts';
import { entryEvent, herdInMemory, type WrittenRow } from './entryEvent.ts';
import { openHall, type Hall, type Listener } from './hall.ts';
import { watchBook, type LiveBook, type LiveSource, type ReadBook } from './liveBook.ts';
import { isFromThisMachine, remoteOf } from './access/asked.ts';
import type { Keeper } from './book/keeper.ts';
import type { Rebuilder } from './rebuild.ts';

/** How the stream behaves; a test sets it closer. */
export interface StreamSettings {
  readonly beat_ms: number;
  readonly most: number;
  /** How many another address may keep open: a class behind one router, yet not all the seats. */
  readonly mostFromOne: number;
  /** How often the site's mark is looked at, ms. */
  readonly site_ms: number;
}

/** Who else has something to tell. */
export interface Tellers {
  /** Writes the milk book and tells of its rows. */
  readonly keeper?: Pick<Keeper, 'onWritten' | 'book' | 'state'> | undefined;
  /** Hears of every change, and tells when the site has been made anew. */
  readonly rebuild?: Rebuilder | undefined;
}

/** The open streams of a desk. */
export interface Events {
  /** How many listen. */
  count(): number;
  close(): void;
}

/** The header by which a page learns that the machine that serves it sends events. */
const LIVE_HEADER = 'Pailside-Live';
/** The header by which it learns that new numbers will be on the page itself after a while. */
const REBUILDS_HEADER = 'Pailside-Rebuilds';
const USUAL: StreamSettings = { beat_ms: 15_000, most: 400, mostFromOne: 60, site_ms: 5_000 };
const HEADERS = {
  'Content-Type': 'text/event-stream; charset=utf-8',
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/**
 * Adds `events` below `base` (it ends in `/`), and tells the site's pages that it is there. Every listener hears `entry`
 * (EntryEvent) as soon as a row is on disk, `site` (the build's mark) when another build has been swapped in, and
 * `stays` when one could not be made. A listener of the board hears `book` (fingerprint and BoardFarm) at once if it
 * names another fingerprint in `?book=` than the book's as it stands, and whenever the book changes; one that asks
 * with `?for=page` hears the new fingerprint alone.
 */
export function addEvents(
  app: Hono,
  base: string,
  dist: string,
  source: LiveSource,
  settings: StreamSettings = USUAL,
  { keeper, rebuild }: Tellers = {},
): Events {
  const hall = openHall();
  const book = watchBook(source, {
    changed(now) {
      hall.send(bookEvent(now), 'board');
      hall.send(event('book', { fingerprint: now.fingerprint }), 'page');
      // A new day or an edit: the pages are behind.
      rebuild?.changed();
    },
    touched: () => rebuild?.changed(),
  });
  const site = watchSite(dist, settings.site_ms, (mark) => hall.send(event('site', { build: mark })));
  const ends = [
    keeper && tellEntries(keeper, hall),
    keeper?.onWritten(() => {
      book.readSoon();
      rebuild?.changed();
    }),
    rebuild?.onEnd((isNew) => (isNew ? site.look() : hall.send(event('stays', {})))),
  ];
  const beat = setInterval(() => hall.send(':\n\n'), settings.beat_ms);
  beat.unref();
  tellPages(app, base, rebuild !== undefined);
  addStream(app, base, settings, hall, book);
  return {
    count: () => hall.count(),
    close: () => {
      book.close();
      site.end();
      for (const end of ends) end?.();
      clearInterval(beat);
      hall.close();
    },
  };
}

/** Tells of rows once their writer has answered for them, all that came together in one go. */
function tellEntries(keeper: Pick<Keeper, 'onWritten' | 'book' | 'state'>, hall: Hall): () => void {
  const written: WrittenRow[] = [];
  const tell = () => {
    const herd = herdInMemory(keeper.book(), keeper.state().faults === null);
    hall.send(written.splice(0).map((row) => event('entry', entryEvent(row, herd))).join('')); // prettier-ignore
  };
  return keeper.onWritten((rows) => {
    if (written.length === 0) setImmediate(tell);
    written.push(...rows);
  });
}

function addStream(
  app: Hono,
  base: string,
  { most, mostFromOne }: StreamSettings,
  hall: Hall,
  book: LiveBook,
): void {
  app.get(`${base}events`, (c) => {
    if (c.req.method !== 'GET') return c.body(null, 200, HEADERS);
    const from = remoteOf(c);
    if (hall.count() >= most || (!isFromThisMachine(c) && hall.count(from) >= mostFromOne))
      return c.text('Too many pages listen.\n', 503, { 'Cache-Control': 'no-store', 'Retry-After': '60' });
    const known = c.req.header('Last-Event-ID') ?? c.req.query('book');
    const kind = c.req.query('for') === 'page' ? 'page' : 'board';
    const greet = (own: Listener) => {
      hall.sendTo(own, ':\n\n');
      const now = book.current();
      if (kind === 'board' && now && now.fingerprint !== known) hall.sendTo(own, bookEvent(now));
    };
    return c.body(hall.seat({ kind, from }, c.req.raw.signal, greet), 200, HEADERS);
  });
}

/** Pages have addresses that end in a slash; nothing else need know. */
function tellPages(app: Hono, base: string, rebuilds: boolean): void {
  app.use(`${base}*`, async (c, next) => {
    await next();
    if (!new URL(c.req.url).pathname.endsWith('/')) return;
    c.res.headers.set(LIVE_HEADER, 'yes');
    if (rebuilds) c.res.headers.set(REBUILDS_HEADER, 'yes');
  });
}

const event = (name: string, told: object, id = '') =>
  `event: ${name}\n${id}data: ${JSON.stringify(told)}\n\n`;
const bookEvent = ({ fingerprint, farm }: ReadBook) =>
  event('book', { fingerprint, farm }, `id: ${fingerprint}\n`);

/** Calls `changed` with the mark of a build that has been swapped in. */
function watchSite(dist: string, look_ms: number, changed: (mark: string) => void) {
  let last = fingerprintIn(dist);
  const look = () => {
    const mark = fingerprintIn(dist);
    // In the moment between a swap's two renames there is none.
    if (mark === null || mark === last) return;
    last = mark;
    changed(mark);
  };
  const looking = setInterval(look, look_ms);
  looking.unref();
  return { look, end: () => clearInterval(looking) };
}
