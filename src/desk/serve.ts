// The farm's own small server: the built site and the printed sheets, read-only, for this machine alone.
import { readFileSync, type Stats } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { serve, type ServerType } from '@hono/node-server';
import { Hono, type Context } from 'hono';
import { compress } from 'hono/compress';
import { fingerprintIn } from '../build/fingerprint.ts';
import type { Places } from '../build/places.ts';
import { PlainError } from '../build/plainError.ts';
import { hereAlone, type Access } from './access/access.ts';
import { addAccessDesk } from './access/accessDesk.ts';
import { addGuard } from './access/guard.ts';
import { addBookRooms } from './book/bookRooms.ts';
import { addHerdDesk } from './book/herdDesk.ts';
import { addBookDesk } from './book/entriesDesk.ts';
import type { Keeper } from './book/keeper.ts';
import { ASK, cachingOf, isAsset, isShell, openShelf } from './caching.ts';
import { contentType } from './contentTypes.ts';
import { addEvents } from './events.ts';
import { addStateDesk, type StateTellers } from './stateDesk.ts';
import { findFile, isThere } from './files.ts';
import type { LiveSource } from './liveBook.ts';
import { addPackDesk, type PackPrinter } from './packDesk.ts';
import { pdfIndex } from './pdfIndex.ts';
import type { Rebuilder } from './rebuild.ts';
import { addVisitsDesk } from './visits/visitsDesk.ts';

/** The Milk book that a desk keeps. */
export interface DeskBook {
  readonly keeper: Keeper;
  /** Tells the coordinator. */
  readonly complain: (text: string) => void;
}

/** What the desk serves. */
export interface DeskSettings {
  /** The built site. */
  readonly dist: string;
  /** The folder of printed sheets. */
  readonly prints: string;
  /** The sub-path that the site was built for, `/` for none. */
  readonly basePath: string;
  /** Keeps the scripts and styles of earlier builds for pages that browsers have kept; without it those may find none. */
  readonly shelf?: string | undefined;
  /** Prints packs for this machine; without it the print room prints from the browser alone. */
  readonly printer?: PackPrinter | undefined;
  /** The book that open pages of the board follow; without it they keep the numbers that they were built with. */
  readonly live?: LiveSource | undefined;
  /** Who may use the desk; without it this machine alone. */
  readonly access?: Access | undefined;
  /** The Milk book; without it this desk takes no entries. */
  readonly book?: DeskBook | undefined;
  /** Makes the site anew when the farm folder has changed; without it the site stays as it was built. */
  readonly rebuild?: Rebuilder | undefined;
  /** The copies of the farm folder, for the desk's own page. */
  readonly backups?: StateTellers['backups'];
}

/** A desk that listens. */
export interface Desk {
  /** Its address up to and with the base path: `http://localhost:4173/`. */
  readonly url: string;
  close(): Promise<void>;
}

/** The desk for a project's places and the `BASE_PATH` that its site is built for. */
export function deskSettings({ dist, prints, workshop }: Places, env: NodeJS.ProcessEnv): DeskSettings {
  return { dist, prints, basePath: env['BASE_PATH'] ?? '/', shelf: join(workshop, 'shelf') };
}

const POLICY =
  "default-src 'self'; style-src 'self' 'unsafe-inline'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'self'";
const SWAP_ms = 100;
// Whoever sends slower than this, on purpose or not, makes room for others. A phone's entries are there in a second.
const SLOWEST = { headersTimeout: 10_000, requestTimeout: 60_000, keepAliveTimeout: 20_000, connectionsCheckingInterval: 5_000 }; // prettier-ignore

/** `/visit/` of `visit`, `/visit` or `/visit/`; `/` of none. */
export function folderPath(basePath: string): string {
  const inner = basePath.split('/').filter(Boolean).join('/');
  return inner === '' ? '/' : `/${inner}/`;
}

/** The server's answers, apart from any socket; `close` ends what goes on between requests. */
export type DeskApp = Hono & { readonly close: () => void };

/** Makes the server's answers. */
export function deskApp(settings: DeskSettings): DeskApp {
  const base = folderPath(settings.basePath);
  const app = new Hono();
  // The board's drawings are text: pressed, they are a quarter as long. Streams of events are left as they are.
  app.use(compress());
  const build = () => fingerprintIn(settings.dist);
  const shelf = settings.shelf === undefined ? null : openShelf(settings.dist, settings.shelf, build);
  const access = settings.access ?? hereAlone();
  addGuard(app, base, access);
  addAccessDesk(app, base, access, build);
  if (settings.printer) addPackDesk(app, base, settings.printer);
  if (settings.live) {
    addHerdDesk(app, base, settings.live);
    addVisitsDesk(app, base, settings.live.farm);
  }
  const { book, rebuild, backups } = settings;
  if (book) {
    // By this a page learns without a failed request that there is a book to write in.
    app.use(`${base}*`, async (c, next) => {
      await next();
      if (pathOf(c).endsWith('/')) c.res.headers.set('Pailside-Book', 'yes');
    });
    addBookDesk(app, base, book.keeper, book.complain);
    addBookRooms(app, base, book.keeper, settings.live);
  }
  const tellers = { keeper: book?.keeper, rebuild };
  const events = settings.live && addEvents(app, base, settings.dist, settings.live, undefined, tellers);
  addStateDesk(app, base, { rebuild, backups, keeper: book?.keeper, events });
  app.get('*', async (c) => {
    const path = pathOf(c);
    if (`${path}/` === base) return moved(c, base);
    if (!path.startsWith(base)) return path === '/' ? moved(c, base) : notFound(c, settings);
    const inner = path.slice(base.length - 1);
    if (inner === '/pdf') return moved(c, `${base}pdf/`);
    if (inner === '/pdf/') return c.html(pdfIndex(settings.prints), 200, headersOf('index.html', ASK));
    if (inner.startsWith('/pdf/')) return answer(c, settings, settings.prints, inner.slice('/pdf'.length));
    // In the moment between a swap's two renames there is no site; the next look finds it.
    if (!isThere(settings.dist)) await sleep(SWAP_ms);
    if (isShell(inner)) shelf?.fill();
    const asset = isAsset(inner) && shelf && findFile(settings.dist, inner).kind === 'none';
    return answer(c, settings, asset ? shelf.folder : settings.dist, inner, cachingOf(inner));
  });
  return Object.assign(app, { close: () => events?.close() });
}

/** The path as it came, neither decoded nor put in order. */
const pathOf = (c: { readonly req: { readonly url: string } }) => new URL(c.req.url).pathname;

function moved(c: Context, path: string): Response {
  return c.redirect(path + new URL(c.req.url).search, 307);
}

function answer(c: Context, settings: DeskSettings, folder: string, inner: string, caching = ASK): Response {
  const found = findFile(folder, inner);
  if (found.kind === 'none') return notFound(c, settings);
  if (found.kind === 'folder') return moved(c, `${pathOf(c)}/`);
  return sendFile(c, found.path, found.stats, caching);
}

function sendFile(c: Context, path: string, stats: Stats, caching: string): Response {
  const etag = `"${stats.size.toString(36)}-${stats.mtimeMs.toString(36)}"`;
  const headers = { ...headersOf(path, caching), ETag: etag, 'Last-Modified': stats.mtime.toUTCString() };
  // A pressed answer carries the same mark as a weak one.
  if (c.req.header('If-None-Match')?.replace(/^W\//, '') === etag) return c.body(null, 304, headers);
  return c.body(readFileSync(path), 200, headers);
}

function headersOf(path: string, caching: string): Record<string, string> {
  const type = contentType(path);
  const common = { 'Content-Type': type, 'Cache-Control': caching };
  // A browser's own PDF viewer is a page with styles and scripts that the policy would stop.
  return type === 'application/pdf' ? common : { ...common, 'Content-Security-Policy': POLICY };
}

function notFound(c: Context, { dist }: DeskSettings): Response {
  const page = findFile(dist, '/404.html');
  if (page.kind !== 'file') return c.text('There is no such page.\n', 404);
  return c.body(readFileSync(page.path), 404, headersOf(page.path, ASK));
}

/**
 * Opens the desk on the port, or on the next free one of a hundred; port 0 takes any. Throws where
 * none is free.
 */
export async function openDesk(settings: DeskSettings, port: number, host = '127.0.0.1'): Promise<Desk> {
  const last = port === 0 ? 0 : port + 99;
  const app = deskApp(settings);
  for (let candidate = port; candidate <= last; candidate += 1) {
    const desk = await listen(app, settings, candidate, host);
    if (desk !== null) return desk;
  }
  app.close();
  throw new PlainError(`No port is free from ${port} to ${last}. Name another: PORT=8080 npm start`);
}

/** The desk on one port; null where the port is taken. */
function listen(app: DeskApp, { basePath }: DeskSettings, port: number, host: string): Promise<Desk | null> {
  return new Promise((done, failed) => {
    const server: ServerType = serve({ fetch: app.fetch, port, hostname: host, serverOptions: SLOWEST });
    server.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') return done(null);
      app.close();
      failed(error);
    });
    server.on('listening', () => {
      const { port: open } = server.address() as AddressInfo;
      const name = host === '127.0.0.1' || host === '0.0.0.0' ? 'localhost' : host;
      done({ url: `http://${name}:${open}${folderPath(basePath)}`, close: () => closing(server, app) });
    });
  });
}

function closing(server: ServerType, app: DeskApp): Promise<void> {
  app.close();
  return new Promise((done) => {
    server.close(() => done());
    if ('closeAllConnections' in server) server.closeAllConnections();
  });
}
