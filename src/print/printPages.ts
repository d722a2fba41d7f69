// Prints pages of a served site to PDF files, two at a time, in one browser.
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { openPrintContext } from './chromium.ts';
import type { PrintJob } from './jobs.ts';
import { LONGEST_WAIT_ms, printPage } from './printPage.ts';

/** A PDF that was written. */
export interface Printed {
  readonly file: string;
  /** Requests to other machines that were stopped; there should be none. */
  readonly stopped: readonly string[];
}

const PAGES_AT_ONCE = 2;

/**
 * Prints each job's page below `site` (an address that ends in `/`) into the folder `out`. A page is
 * printed once it says `data-sheet-ready="yes"` on its root and its fonts are in. `tell` hears how far a job is.
 * Throws PlainError.
 */
export async function printPages(
  browser: Browser,
  site: string,
  jobs: readonly PrintJob[],
  out: string,
  wait_ms = LONGEST_WAIT_ms,
  tell?: (job: PrintJob, made: number, of: number) => void,
): Promise<Printed[]> {
  mkdirSync(out, { recursive: true });
  const context = await openPrintContext(browser);
  try {
    const printed: Printed[] = [];
    const left = jobs.map((job, place) => ({ job, place }));
    const worker = async () => {
      for (let next = left.shift(); next !== undefined; next = left.shift()) {
        const { job, place } = next;
        const address = new URL(job.address, site).href;
        const { pdf, stopped } = await printPage(context, address, {
          wait_ms,
          media: job.media,
          tell: (made, of) => tell?.(job, made, of),
        });
        const file = join(out, job.file);
        // Whoever reads the folder meanwhile sees the old sheet or the new one, never half of one.
        writeFileSync(`${file}.part`, pdf);
        renameSync(`${file}.part`, file);
        printed[place] = { file, stopped };
      }
    };
    await Promise.all(Array.from({ length: PAGES_AT_ONCE }, worker));
    return printed;
  } finally {
    await context.close();
  }
}
