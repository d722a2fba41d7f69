// Prints packs on demand with a browser that stays open for a while, since the next pack often follows soon.
import type { Browser } from 'playwright-core';
import { readOrder, type PackOrder, type Shelf } from '../../shared/pack/order.ts';
import { gradeSign } from '../../shared/tasks/standards.ts';
import { openPrintContext, startChromium } from './chromium.ts';
import { PACK_MEDIA, packAddress, packFile, type PrintJob } from './jobs.ts';
import { LONGEST_WAIT_ms, printPage } from './printPage.ts';
import { readShelf } from './shelf.ts';
import { readTripGround } from './tripGround.ts';
import { tripJob, tripOrder } from './tripOrder.ts';

/** A pack as PDF, and what its file is called. */
interface PrintedPack {
  readonly pdf: Uint8Array;
  readonly name: string;
}
type Tell = (made: number, of: number) => void;

/** How long the browser stays open after the last pack, ms. */
const IDLE_ms = 120_000;

/** A printer for the site in `dist`, which is served at `siteUrl()`. `close` ends its browser. */
export function openPackPrinter(dist: string, siteUrl: () => string, env: NodeJS.ProcessEnv) {
  const held = holdBrowser(env);
  const printing = (job: PrintJob) => ({
    ok: true as const,
    print: (tell: Tell, signal: AbortSignal): Promise<PrintedPack> =>
      held.use((browser) => printJob(browser, siteUrl(), job, tell, signal)),
  });
  return {
    read(query: URLSearchParams) {
      const shelf = readShelf(dist);
      if (shelf === null) return { ok: false as const, faults: ['There is no sheet to print.'] };
      const { order, aside } = readOrder(query, shelf, shelf.langs[0] ?? 'en');
      const faults = aside.map(({ field, value }) => `${field}=${value} cannot be printed.`);
      if (order.sheets.length === 0) faults.push('No sheet is chosen.');
      if (faults.length > 0) return { ok: false as const, faults };
      return printing(orderJob(order, shelf));
    },
    /** Reads the order of a trip's pack. */
    readTrip(query: URLSearchParams) {
      const ground = readTripGround(dist);
      if (ground === null) return { ok: false as const, faults: ['There is no pack of a trip to print.'] };
      const asked = tripOrder(query, ground);
      return asked.ok ? printing(tripJob(asked.order, ground)) : asked;
    },
    close: held.close,
  };
}

/** Only what was read from the query goes on, written anew: no other text of it reaches the browser. */
const orderJob = (order: PackOrder, shelf: Shelf): PrintJob => ({
  address: packAddress(order, shelf),
  file: packFile({ order, whom: `grade-${gradeSign(order.grade)}`, all: false }, shelf),
  media: PACK_MEDIA,
});

async function printJob(
  browser: Browser,
  site: string,
  { address, file, media }: PrintJob,
  tell: Tell,
  signal: AbortSignal,
): Promise<PrintedPack> {
  const context = await openPrintContext(browser);
  try {
    const { pdf } = await printPage(context, new URL(address, site).href, {
      wait_ms: LONGEST_WAIT_ms,
      media,
      tell,
      signal,
    });
    return { pdf, name: file };
  } finally {
    await context.close();
  }
}

/** One browser, started at its first use and closed when nobody has used it for a while. */
function holdBrowser(env: NodeJS.ProcessEnv) {
  let started: Promise<Browser> | null = null;
  let timer: NodeJS.Timeout | undefined;
  const close = async (): Promise<void> => {
    clearTimeout(timer);
    const ending = started;
    started = null;
    await (await ending?.catch(() => null))?.close();
  };
  const start = (): Promise<Browser> => {
    const starting = startChromium(env).then((browser) => {
      browser.on('disconnected', () => {
        // Its follower may have been started already.
        if (started === starting) started = null;
      });
      return browser;
    });
    return starting;
  };
  return {
    close,
    async use<T>(work: (browser: Browser) => Promise<T>): Promise<T> {
      clearTimeout(timer);
      started ??= start();
      try {
        return await work(await started);
      } catch (error) {
        // A browser that did not start is tried anew the next time.
        if (!(await started?.catch(() => null))) started = null;
        throw error;
      } finally {
        clearTimeout(timer);
        timer = setTimeout(() => void close(), IDLE_ms).unref();
      }
    },
  };
}
