// The week's sheets: every band and language of the farm, printed again only when the site is another.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BuildWorld, ReadyFarm } from '../build/build.ts';
import { packJobs } from './jobs.ts';
import { readPrintOptions } from './options.ts';
import { printsFolder, printSheets, type ServeSite } from './printSheets.ts';
import { readShelf } from './shelf.ts';

// Beside the sheets, so that a folder thrown away is printed again.
const STAMP = '.printed';

/** Prints the week's sheets unless those that lie there are of this very site. Throws PlainError. */
export async function printWeekSheets(
  world: BuildWorld,
  reading: ReadyFarm,
  fingerprint: string,
  serveSite: ServeSite,
): Promise<void> {
  const shelf = readShelf(world.places.dist);
  if (shelf === null) return;
  const everything = readPrintOptions([], shelf);
  if (!everything.ok) throw new Error(everything.faults.join('\n'));
  const folder = printsFolder(world, reading.asOf);
  const stamp = join(folder, STAMP);
  const files = packJobs(everything.options.packs, shelf).map(({ file }) => join(folder, file));
  const printed =
    existsSync(stamp) &&
    readFileSync(stamp, 'utf8') === fingerprint &&
    files.every((file) => existsSync(file));
  if (printed) return;
  await printSheets(world, reading, shelf, everything.options, serveSite);
  writeFileSync(stamp, fingerprint);
}
