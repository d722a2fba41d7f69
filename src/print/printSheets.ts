// The print room: prints an order of sheets from the site as it is served.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isoDate } from '../../shared/calendar/day.ts';
import type { BuildWorld, ReadyFarm } from '../build/build.ts';
import { fromCaller } from '../build/places.ts';
import { startChromium } from './chromium.ts';
import { sheetJobs } from './jobs.ts';
import type { PrintOptions } from './options.ts';
import { pageCount } from './pageCount.ts';
import { printPages, type Printed } from './printPages.ts';

/** Serves the site that stands for as long as the printing takes, at an address that ends in `/`. */
export type ServeSite = () => Promise<{ readonly url: string; close(): Promise<void> }>;

/**
 * Languages whose sheets the site holds: first the one at the site's root, then the farm's others.
 * A site without sheets has none.
 */
export function sheetLanguages(dist: string, languages: readonly string[]): string[] {
  const index = join(dist, 'index.html');
  if (!existsSync(index) || !existsSync(join(dist, 'sheets'))) return [];
  const root = /<html[^>]*\slang="([^"]+)"/.exec(readFileSync(index, 'utf8'))?.[1];
  const others = languages.filter((lang) => lang !== root && existsSync(join(dist, lang, 'sheets')));
  return root === undefined ? others : [root, ...others];
}

/** The folder that sheets of a day go to when nobody names one. */
export function printsFolder(world: BuildWorld, asOf: number): string {
  return join(world.places.prints, isoDate(asOf));
}

/**
 * Prints an order from the site that stands and lists the files. Throws PlainError.
 */
export async function printSheets(
  world: BuildWorld,
  reading: ReadyFarm,
  options: PrintOptions,
  serveSite: ServeSite,
): Promise<void> {
  const { dist } = world.places;
  const [first = 'en'] = sheetLanguages(dist, reading.farm.languages);
  const jobs = sheetJobs(options, reading.farm.units, first);
  const out =
    options.out === null
      ? printsFolder(world, reading.asOf)
      : fromCaller(options.out, world.env, process.cwd());
  const sheets = `${jobs.length} ${jobs.length === 1 ? 'sheet' : 'sheets'}`;
  const start_ms = world.now_ms();
  world.say(`Printing ${sheets} … (some seconds)`);
  const site = await serveSite();
  try {
    const browser = await startChromium(world.env);
    try {
      const printed = await printPages(browser, site.url, jobs, out);
      tellPrinted(world, printed);
    } finally {
      await browser.close();
    }
  } finally {
    await site.close();
  }
  world.say(`Printed ${sheets} (${((world.now_ms() - start_ms) / 1000).toFixed(1)} s)`);
}

function tellPrinted(world: BuildWorld, printed: readonly Printed[]): void {
  for (const { file, stopped } of printed) {
    const pages = pageCount(file);
    world.say(`  ${file}${pages === null ? '' : `  ${pages} ${pages === 1 ? 'page' : 'pages'}`}`);
    for (const address of new Set(stopped))
      world.complain(`  The page asked another machine for ${address}; that was stopped.`);
  }
}
