// Prints an order of packs from the site as it is served, and tells how far it is.
import { join } from 'node:path';
import { isoDate } from '../../shared/calendar/day.ts';
import type { Shelf } from '../../shared/pack/order.ts';
import type { BuildWorld, ReadyFarm } from '../build/build.ts';
import { fromCaller } from '../build/places.ts';
import { startChromium } from './chromium.ts';
import { packJobs, type PrintJob } from './jobs.ts';
import type { PrintOptions } from './options.ts';
import { pageCount } from './pageCount.ts';
import { LONGEST_WAIT_ms } from './printPage.ts';
import { printPages, type Printed } from './printPages.ts';

/** Serves the site that stands for as long as the printing takes, at an address that ends in `/`. */
export type ServeSite = () => Promise<{ readonly url: string; close(): Promise<void> }>;

/** The folder that sheets of a day go to when nobody names one. */
export function printsFolder(world: BuildWorld, asOf: number): string {
  return join(world.places.prints, isoDate(asOf));
}

/** Prints an order from the site that stands and lists the files. Throws PlainError. */
export async function printSheets(
  world: BuildWorld,
  reading: ReadyFarm,
  shelf: Shelf,
  options: PrintOptions,
  serveSite: ServeSite,
): Promise<void> {
  const jobs = packJobs(options.packs, shelf);
  const out =
    options.out === null
      ? printsFolder(world, reading.asOf)
      : fromCaller(options.out, world.env, process.cwd());
  const files = `${jobs.length} ${jobs.length === 1 ? 'PDF' : 'PDFs'}`;
  const start_ms = world.now_ms();
  world.say(`Printing ${files} … (some seconds)`);
  const site = await serveSite();
  try {
    const browser = await startChromium(world.env);
    try {
      const printed = await printPages(browser, site.url, jobs, out, LONGEST_WAIT_ms, progress(world));
      tellPrinted(world, printed);
    } finally {
      await browser.close();
    }
  } finally {
    await site.close();
  }
  world.say(`Printed ${files} (${((world.now_ms() - start_ms) / 1000).toFixed(1)} s)`);
}

const LEAST_BETWEEN_ms = 400;

/** Tells of a job with more than one copy how far it is, now and then, and when it is through. */
export function progress(world: BuildWorld): (job: PrintJob, made: number, of: number) => void {
  let told_ms = 0;
  return (job, made, of) => {
    const now_ms = world.now_ms();
    if (of <= 1 || (made < of && now_ms - told_ms < LEAST_BETWEEN_ms)) return;
    told_ms = now_ms;
    world.say(`  ${job.file}: made ${made} of ${of}`);
  };
}

function tellPrinted(world: BuildWorld, printed: readonly Printed[]): void {
  for (const { file, stopped } of printed) {
    const pages = pageCount(file);
    world.say(`  ${file}${pages === null ? '' : `  ${pages} ${pages === 1 ? 'page' : 'pages'}`}`);
    for (const address of new Set(stopped))
      world.complain(`  The page asked another machine for ${address}; that was stopped.`);
  }
}
