// The desk's printer: one PDF of a pack, for the pages of this site on this machine and for nobody else.
import type { Context, Hono } from 'hono';
import { isHere, isOwnPage } from './access/asked.ts';

/** A pack as PDF, and what its file is called. */
export interface PackPdf {
  readonly pdf: Uint8Array;
  readonly name: string;
}

/** Who prints packs for the desk. */
export interface PackPrinter {
  /** Reads an order from a query; what is wrong with it comes back as lines. */
  read(query: URLSearchParams): PackReading;
  /** The same for the pack of a trip. */
  readTrip?(query: URLSearchParams): PackReading;
}
type PackReading = { ok: true; print: PrintPack } | { ok: false; faults: string[] };

/** Prints the pack of an order and tells how far it is. Throws where it fails or is stopped. */
export type PrintPack = (tell: (made: number, of: number) => void, signal: AbortSignal) => Promise<PackPdf>;

/** The header by which a page learns that the machine that serves it prints. */
const PRINTS_HEADER = 'Pailside-Prints';
const LONGEST_QUERY = 2_000;

/** A kind of pack: where its page and its files lie below the base path, and who reads its orders. */
interface PackRoom {
  readonly page: string;
  /** `print/pack` stands for `print/pack.pdf` and `print/pack-state.json`. */
  readonly files: string;
  readonly read: PackPrinter['read'];
}

/**
 * Adds two addresses below `base` (it ends in `/`) for each kind of pack, `print/pack.pdf` and `print/pack-state.json`, and
 * tells the page that there is a printer. One pack at a time, of whatever kind, none longer than `longest_ms`.
 */
export function addPackDesk(app: Hono, base: string, printer: PackPrinter, longest_ms = 120_000): void {
  const rooms: PackRoom[] = [{ page: 'print/', files: 'print/pack', read: (query) => printer.read(query) }];
  if (printer.readTrip)
    rooms.push({
      page: 'trip/pack/',
      files: 'trip/pack',
      read: (query) => printer.readTrip?.(query) ?? { ok: false, faults: [] },
    });
  const job: Job = { now: null };

  app.use(async (c, next) => {
    await next();
    const path = new URL(c.req.url).pathname;
    const isRoom = rooms.some(({ page }) => path.endsWith(`/${page}`));
    if (isRoom && isHere(c)) c.res.headers.set(PRINTS_HEADER, 'yes');
  });

  for (const { files, read: readQuery } of rooms) {
    app.get(`${base}${files}-state.json`, (c) => {
      if (!isHere(c) || !isOwnPage(c)) return refused(c);
      return c.json(job.now ?? { made: 0, of: 0 }, 200, PLAIN);
    });
    app.get(`${base}${files}.pdf`, (c) => answerPack(c, readQuery, job, longest_ms));
  }
}

/** The pack that is being printed and how far it is; null while none is. */
interface Job {
  now: { made: number; of: number } | null;
}

async function answerPack(
  c: Context,
  readQuery: PackPrinter['read'],
  job: Job,
  longest_ms: number,
): Promise<Response> {
  if (!isHere(c) || !isOwnPage(c)) return refused(c);
  if (c.req.method !== 'GET') return c.text('A PDF is only printed when it is asked for.\n', 405, PLAIN);
  const { search, searchParams } = new URL(c.req.url);
  if (search.length > LONGEST_QUERY) return c.text('The address is too long.\n', 414, PLAIN);
  const asked = readQuery(searchParams);
  if (!asked.ok) return c.text(`${asked.faults.join('\n')}\n`, 400, PLAIN);
  if (job.now) return c.text('Another pack is being printed.\n', 503, { ...PLAIN, 'Retry-After': '5' });
  job.now = { made: 0, of: 0 };
  const limit = AbortSignal.timeout(longest_ms);
  try {
    // Who leaves the page takes the order back.
    const signal = AbortSignal.any([limit, c.req.raw.signal]);
    const { pdf, name } = await asked.print((made, of) => (job.now = { made, of }), signal);
    return c.body(new Uint8Array(pdf), 200, {
      ...PLAIN,
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename*=UTF-8''${encodeURIComponent(name)}`,
    });
  } catch (error) {
    if (limit.aborted) return c.text('It took too long and was stopped.\n', 504, PLAIN);
    const why = error instanceof Error ? error.message : String(error);
    return c.text(`The pack could not be printed: ${why}\n`, 500, PLAIN);
  } finally {
    job.now = null;
  }
}

const PLAIN = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
};

const refused = (c: Context): Response =>
  c.text('This printer serves the pages of this site on this machine alone.\n', 403, PLAIN);
