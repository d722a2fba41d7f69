// Prints one page of a served site to PDF, once the page says that it is ready.
import type { BrowserContext, Page } from 'playwright-core';
import { setTimeout as sleep } from 'node:timers/promises';
import { PlainError } from '../build/plainError.ts';

/** How the printing of a page is followed and bounded. */
export interface Patience {
  /** How long the page may take to be ready, ms. */
  readonly wait_ms: number;
  /** Hears how many copies the page has made so far. */
  readonly tell?: ((made: number, of: number) => void) | undefined;
  /**
   * How the page is shown until it is printed. On `screen` a long page lays out only what is in sight, once less than `print`;
   * but fonts that only paper uses come in with `print` alone, which is usual.
   */
  readonly media?: 'print' | 'screen' | undefined;
  /** Ends the printing early. */
  readonly signal?: AbortSignal | undefined;
}

/** A PDF and the requests to other machines that were stopped; there should be none. */
export interface PrintedPage {
  readonly pdf: Uint8Array;
  readonly stopped: readonly string[];
}

/** The longest time that a page is given where nobody says, ms. */
export const LONGEST_WAIT_ms = 120_000;
const EACH_LOOK_ms = 40;

/** Prints the page at an address. Requests that leave its origin are stopped. Throws PlainError. */
export async function printPage(
  context: BrowserContext,
  address: string,
  patience: Patience,
): Promise<PrintedPage> {
  const page = await context.newPage();
  const close = (): void => void page.close().catch(() => undefined);
  patience.signal?.addEventListener('abort', close);
  try {
    // An order may be taken back while the browser starts.
    patience.signal?.throwIfAborted();
    const stopped = await keepInside(page, new URL(address).origin);
    await openReady(page, address, patience);
    const pdf = await page.pdf({
      tagged: true,
      outline: true,
      preferCSSPageSize: true,
      printBackground: true,
    });
    return { pdf, stopped };
  } catch (error) {
    if (patience.signal?.aborted) throw new PlainError('The printing was stopped.');
    throw error;
  } finally {
    patience.signal?.removeEventListener('abort', close);
    await page.close().catch(() => undefined);
  }
}

/** Stops every request that leaves the site; the list it returns grows as pages try. */
async function keepInside(page: Page, origin: string): Promise<string[]> {
  const stopped: string[] = [];
  await page.route(
    (address) => address.origin !== origin && /^https?:|^wss?:|^ftp:|^file:/.test(address.protocol),
    (route) => {
      stopped.push(route.request().url());
      return route.abort();
    },
  );
  return stopped;
}

async function openReady(
  page: Page,
  address: string,
  { wait_ms, tell, media = 'print' }: Patience,
): Promise<void> {
  const broken: string[] = [];
  page.on('pageerror', (error) => broken.push(error.message));
  // A page told to be on a screen would stay there on paper; told nothing, it goes over to paper by itself.
  if (media === 'print') await page.emulateMedia({ media });
  const response = await page.goto(address, { waitUntil: 'load' });
  if (response === null || !response.ok())
    throw new PlainError(
      `${address} answered ${response?.status() ?? 'nothing'}; there is no page to print.`,
    );
  const until_ms = performance.now() + wait_ms;
  let told = '';
  for (;;) {
    const { ready, made = '' } = await page.evaluate(() => {
      const { sheetReady, packMade } = document.documentElement.dataset;
      return { ready: sheetReady === 'yes', made: packMade };
    });
    const [done = 0, of = 0] = made.split('/').map(Number);
    if (made !== told && of > 0) tell?.(done, of);
    told = made;
    if (ready) break;
    if (performance.now() > until_ms) {
      const reason = broken.length > 0 ? ` The page itself says: ${broken.join('; ')}` : '';
      throw new PlainError(`${address} was not ready to print after ${wait_ms / 1000} s.${reason}`);
    }
    await sleep(EACH_LOOK_ms);
  }
  await page.evaluate(() => document.fonts.ready.then(() => true));
}
