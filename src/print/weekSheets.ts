// The week's sheets: every band and language of the farm, printed again only when the site is another.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BuildWorld, ReadyFarm } from '../build/build.ts';
import { readPrintOptions } from './options.ts';
import { printsFolder, printSheets, sheetLanguages } from './printSheets.ts';

// Beside the sheets, so that a folder thrown away is printed again.
const STAMP = '.printed';

/** Prints the week's sheets unless those that lie there are of this very site. Throws PlainError. */
export async function printWeekSheets(
  world: BuildWorld,
  reading: ReadyFarm,
  fingerprint: string,
): Promise<void> {
  const stamp = join(printsFolder(world, reading.asOf), STAMP);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === fingerprint) return;
  const langs = sheetLanguages(world.places.dist, reading.farm.languages);
  const everything = readPrintOptions([], langs);
  if (!everything.ok || langs.length === 0) return;
  await printSheets(world, reading, everything.options);
  writeFileSync(stamp, fingerprint);
}
