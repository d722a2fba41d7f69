// Small farms in a temporary folder, and what a reading of them says.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll } from 'vitest';
import type { MilkingRow } from '../../../shared/herd/types.ts';
import { readFarm, type FarmReading } from '../../../src/farm/readFarm.ts';
import { tellFaults } from '../../../src/farm/tell.ts';

/** Files by their path in the farm folder; null leaves a file out. */
export type Files = Readonly<Record<string, string | Uint8Array | null>>;

export const HEADING = 'date,milking,doe,amount,unit,use,note,entered';
/** The file that `bookWith` writes. */
export const BOOK = 'milkings/2026-05.csv';

/** A farm in which everything is right. */
export const SOUND_FARM: Files = {
  'farm.yaml': `name: Test farm
timeZone: America/Chicago
units: us
recordUnit: cup
languages: [en]
milkings: { am: '06:30', pm: '17:30' }
jar: { size: 1, unit: qt }
largestMilking: { amount: 24, unit: cup }
`,
  'does.csv': 'doe,name,breed,born,weight_kg\nclover,Clover,Nubian,2022-03-29,62\nbell,Bluebell,Alpine,,\n',
  'kiddings.csv': 'doe,date,kids,apart,weaned,dry\nclover,2026-03-03,2,2026-03-24,2026-05-09,\n',
  [BOOK]: `${HEADING}\n2026-05-20,am,clover,7 1/2,,,,\n`,
};

const made: string[] = [];
afterAll(() => {
  for (const dir of made) rmSync(dir, { recursive: true, force: true });
});

/** A new folder that is gone after the tests of the file. */
export function temporaryFolder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'farm-'));
  made.push(dir);
  return dir;
}

/** Writes the sound farm with some files changed. */
export function farmWith(changes: Files, dir = temporaryFolder()): string {
  for (const [file, content] of Object.entries({ ...SOUND_FARM, ...changes })) {
    if (content === null) continue;
    mkdirSync(dirname(join(dir, file)), { recursive: true });
    writeFileSync(join(dir, file), content);
  }
  return dir;
}

/** Noon in Chicago on 1 June 2026: the clock of the tests. */
export const NOW_MS = Date.parse('2026-06-01T17:00:00Z');

/** Reads the sound farm with some files changed. */
export function reading(changes: Files, asOf?: string): FarmReading {
  return readFarm(farmWith(changes), { asOf, now_ms: NOW_MS });
}

/** What the terminal says of the faults, without the lines about the folder; `ok` where there are none. */
export function told(changes: Files, asOf?: string): string {
  const dir = farmWith(changes);
  const read = readFarm(dir, { asOf, now_ms: NOW_MS });
  if (read.ok) return 'ok';
  return tellFaults(read.faults, dir).split('\n').slice(3).join('\n').trimEnd();
}

/** The milk book with these rows under the usual heading, or under another one. */
export function bookWith(rows: readonly string[], heading = HEADING): Files {
  return { [BOOK]: [heading, ...rows, ''].join('\n') };
}

/** The rows of a farm that reads; the faults as an error where it does not. */
export function rowsOf(changes: Files): readonly MilkingRow[] {
  const read = reading(changes);
  if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
  return read.book.rows;
}

/** The notices of a farm that reads, as `file:line text`. */
export function noticesOf(changes: Files, asOf?: string): string[] {
  const read = reading(changes, asOf);
  if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
  return read.notices.map(({ file, line, text }) => [file ?? '', line ?? '', text].join(' | '));
}
