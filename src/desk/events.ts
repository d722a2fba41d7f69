// The desk's event stream: new numbers and new builds, to every board that listens.
import type { Hono } from 'hono';
import { fingerprintIn } from '../build/fingerprint.ts';
import { watchBook, type LiveSource, type ReadBook } from './liveBook.ts';

/** How the stream behaves; a test sets it closer. */
export interface StreamSettings {
  readonly beat_ms: number;
  readonly most: number;
  /** How often the site's mark is looked at, ms. */
  readonly site_ms: number;
}

/** The open streams of a desk. */
export interface Events {
  /** How many listen. */
  count(): number;
  close(): void;
}

/** The header by which a page of the board learns that the machine that serves it sends events. */
const LIVE_HEADER = 'Pailside-Live';
const USUAL: StreamSettings = { beat_ms: 15_000, most: 200, site_ms: 5_000 };
// A listener that takes nothing for so many messages has gone without a word.
const MOST_UNREAD = 8;
const HEADERS = {
  'Content-Type': 'text/event-stream; charset=utf-8',
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

type Listener = ReadableStreamDefaultController<Uint8Array>;

/**
 * Adds `events` below `base` (it ends in `/`), and tells the board's pages that it is there. A listener hears `book`
 * (fingerprint and BoardFarm) at once if it names another fingerprint in `?book=` than the book's as it stands, and
 * whenever the book changes; `site` (the build's mark) when another build has been swapped in.
 */
export function addEvents(
  app: Hono,
  base: string,
  dist: string,
  source: LiveSource,
  settings: StreamSettings = USUAL,
): Events {
  const { listeners, drop, send } = openHall();
  const book = watchBook(source, (now) => send(bookEvent(now)));
  const endSite = watchSite(dist, settings.site_ms, (mark) => send(`event: site\ndata: ${JSON.stringify({ build: mark })}\n\n`)); // prettier-ignore
  const beat = setInterval(() => send(':\n\n'), settings.beat_ms);
  beat.unref();

  app.use(`${base}*`, async (c, next) => {
    await next();
    if (/\/barn\//.test(new URL(c.req.url).pathname)) c.res.headers.set(LIVE_HEADER, 'yes');
  });
  app.get(`${base}events`, (c) => {
    if (c.req.method !== 'GET') return c.body(null, 200, HEADERS);
    if (listeners.size >= settings.most)
      return c.text('Too many boards listen.\n', 503, { 'Cache-Control': 'no-store', 'Retry-After': '60' });
    const known = c.req.header('Last-Event-ID') ?? c.req.query('book');
    let own: Listener | null = null;
    const leave = () => {
      if (own) drop(own);
    };
    const stream = new ReadableStream<Uint8Array>({
      start: (listener) => {
        own = listener;
        listeners.add(listener);
        send(':\n\n', [listener]);
        const now = book.current();
        if (now && now.fingerprint !== known) send(bookEvent(now), [listener]);
      },
      cancel: leave,
    });
    c.req.raw.signal.addEventListener('abort', leave, { once: true });
    return c.body(stream, 200, HEADERS);
  });
  return {
    count: () => listeners.size,
    close: () => {
      book.close();
      endSite();
      clearInterval(beat);
      for (const one of [...listeners]) drop(one);
    },
  };
}

/** Who listens, and how they are told. */
function openHall() {
  const listeners = new Set<Listener>();
  const drop = (one: Listener) => {
    if (!listeners.delete(one)) return;
    try {
      one.close();
    } catch {
      // It was closed from the other side.
    }
  };
  const send = (text: string, to: Iterable<Listener> = [...listeners]) => {
    const bytes = new TextEncoder().encode(text);
    for (const one of to) {
      if ((one.desiredSize ?? -Infinity) < -MOST_UNREAD) drop(one);
      else one.enqueue(bytes);
    }
  };
  return { listeners, drop, send };
}

const bookEvent = (now: ReadBook) =>
  `event: book\nid: ${now.fingerprint}\ndata: ${JSON.stringify({ fingerprint: now.fingerprint, farm: now.farm })}\n\n`;

/** Calls `changed` with the mark of a build that has been swapped in. Returns what ends the watch. */
function watchSite(dist: string, look_ms: number, changed: (mark: string) => void): () => void {
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
  return () => clearInterval(looking);
}
