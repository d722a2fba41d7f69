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
  read(query: URLSearchParams): { ok: true; print: PrintPack } | { ok: false; faults: string[] };
}

/** Prints the pack of an order and tells how far it is. Throws where it fails or is stopped. */
export type PrintPack = (tell: (made: number, of: number) => void, signal: AbortSignal) => Promise<PackPdf>;

/** The header by which a page learns that the machine that serves it prints. */
const PRINTS_HEADER = 'Pailside-Prints';
const LONGEST_QUERY = 2_000;

/**
 * Adds the printer's two addresses below `base` (it ends in `/`): `print/pack.pdf` and `print/pack-state.json`, and tells the
 * print room's pages that there is one. One pack at a time, none longer than `longest_ms`.
 */
export function addPackDesk(app: Hono, base: string, printer: PackPrinter, longest_ms = 120_000): void {
  let job: { made: number; of: number } | null = null;

  app.use(async (c, next) => {
    await next();
    if (new URL(c.req.url).pathname.endsWith('/print/') && isHere(c)) c.res.headers.set(PRINTS_HEADER, 'yes');
  });

  app.get(`${base}print/pack-state.json`, (c) => {
    if (!isHere(c) || !isOwnPage(c)) return refused(c);
    return c.json(job ?? { made: 0, of: 0 }, 200, PLAIN);
  });

  app.get(`${base}print/pack.pdf`, async (c) => {
    if (!isHere(c) || !isOwnPage(c)) return refused(c);
    if (c.req.method !== 'GET') return c.text('A PDF is only printed when it is asked for.\n', 405, PLAIN);
    const { search, searchParams } = new URL(c.req.url);
    if (search.length > LONGEST_QUERY) return c.text('The address is too long.\n', 414, PLAIN);
    const asked = printer.read(searchParams);
    if (!asked.ok) return c.text(`${asked.faults.join('\n')}\n`, 400, PLAIN);
    if (job) return c.text('Another pack is being printed.\n', 503, { ...PLAIN, 'Retry-After': '5' });
    job = { made: 0, of: 0 };
    const limit = AbortSignal.timeout(longest_ms);
    try {
      // Who leaves the page takes the order back.
      const signal = AbortSignal.any([limit, c.req.raw.signal]);
      const { pdf, name } = await asked.print((made, of) => (job = { made, of }), signal);
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
      job = null;
    }
  });
}

const PLAIN = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
};

const refused = (c: Context): Response =>
  c.text('This printer serves the pages of this site on this machine alone.\n', 403, PLAIN);
