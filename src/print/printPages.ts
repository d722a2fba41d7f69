// Prints pages of a served site to PDF, two at a time, in one browser.
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { PlainError } from '../build/plainError.ts';
import type { PrintJob } from './jobs.ts';

/** A PDF that was written. */
export interface Printed {
  readonly file: string;
  /** Requests to other machines that were stopped; there should be none. */
  readonly stopped: readonly string[];
}

const PAGES_AT_ONCE = 2;
const LONGEST_WAIT_ms = 30_000;

/**
 * Prints each job's page below `site` (an address that ends in `/`) into the folder `out`. A page is
 * printed once it says `data-sheet-ready="yes"` on its root and its fonts are in. Throws PlainError.
 */
export async function printPages(
  browser: Browser,
  site: string,
  jobs: readonly PrintJob[],
  out: string,
  wait_ms = LONGEST_WAIT_ms,
): Promise<Printed[]> {
  mkdirSync(out, { recursive: true });
  const context = await browser.newContext();
  try {
    const printed: Printed[] = [];
    const left = jobs.map((job, place) => ({ job, place }));
    const worker = async () => {
      for (let next = left.shift(); next !== undefined; next = left.shift())
        printed[next.place] = await printOne(context, site, next.job, out, wait_ms);
    };
    await Promise.all(Array.from({ length: PAGES_AT_ONCE }, worker));
    return printed;
  } finally {
    await context.close();
  }
}

async function printOne(
  context: BrowserContext,
  site: string,
  job: PrintJob,
  out: string,
  wait_ms: number,
): Promise<Printed> {
  const page = await context.newPage();
  try {
    const stopped = await keepInside(page, new URL(site).origin);
    await openReady(page, new URL(job.address, site).href, wait_ms);
    const pdf = await page.pdf({
      tagged: true,
      outline: true,
      preferCSSPageSize: true,
      printBackground: true,
    });
    const file = join(out, job.file);
    // Whoever reads the folder meanwhile sees the old sheet or the new one, never half of one.
    writeFileSync(`${file}.part`, pdf);
    renameSync(`${file}.part`, file);
    return { file, stopped };
  } finally {
    await page.close();
  }
}

/** Stops every request that leaves the site; the list it returns grows as pages try. */
async function keepInside(page: Page, origin: string): Promise<string[]> {
  const stopped: string[] = [];
  await page.route('**/*', (route) => {
    const address = route.request().url();
    if (new URL(address).origin === origin) return route.continue();
    stopped.push(address);
    return route.abort();
  });
  return stopped;
}

async function openReady(page: Page, address: string, wait_ms: number): Promise<void> {
  const broken: string[] = [];
  page.on('pageerror', (error) => broken.push(error.message));
  // Fonts that only paper uses are loaded once the page is laid out for paper.
  await page.emulateMedia({ media: 'print' });
  const response = await page.goto(address, { waitUntil: 'load' });
  if (response === null || !response.ok())
    throw new PlainError(
      `${address} answered ${response?.status() ?? 'nothing'}; there is no page to print.`,
    );
  try {
    await page.waitForFunction(() => document.documentElement.dataset['sheetReady'] === 'yes', null, {
      timeout: wait_ms,
    });
  } catch {
    const reason = broken.length > 0 ? ` The page itself says: ${broken.join('; ')}` : '';
    throw new PlainError(`${address} was not ready to print after ${wait_ms / 1000} s.${reason}`);
  }
  await page.evaluate(() => document.fonts.ready.then(() => true));
}
