// A farm folder of one doe and two milkings, and a world whose pages are one file, for tests of the build.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { onTestFinished } from 'vitest';
import type { BuildWorld } from '../../../src/build/build.ts';
import { ROOT } from '../../../src/build/places.ts';

/** A folder of this test alone. */
export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'pailside-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes files by their paths below a folder. */
export function writeFiles(folder: string, files: Readonly<Record<string, string>>): void {
  for (const [path, text] of Object.entries(files)) {
    const full = join(folder, path);
    mkdirSync(join(full, '..'), { recursive: true });
    writeFileSync(full, text);
  }
}

/** Every file below a folder with its text, so that two states can be compared whole. */
export function contentsOf(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  return Object.fromEntries(
    files.sort().map((file) => [relative(folder, file), readFileSync(file, 'latin1')]),
  );
}

/** The farm of one doe, ready to be read. */
export const SMALL_FARM: Readonly<Record<string, string>> = {
  'farm.yaml': [
    'name: Stony Brook',
    'timeZone: America/Chicago',
    'units: us',
    'recordUnit: cup',
    'languages: [en]',
    "milkings: { am: '06:30', pm: '17:30' }",
    'jar: { size: 64, unit: fl oz }',
    "asOf: '2026-05-21'",
    '',
  ].join('\n'),
  'does.csv': 'doe,name,breed,born,weight_kg\nclover,Clover,Alpine,2022-03-01,60\n',
  'kiddings.csv': 'doe,date,kids,apart,weaned,dry\nclover,2026-03-01,2,2026-03-15,2026-05-01,\n',
  'milkings/2026-05.csv': 'date,milking,doe,amount\n2026-05-20,am,clover,8\n2026-05-20,pm,clover,7 1/2\n',
};

/** What a world heard and did. */
export interface Heard {
  readonly said: string[];
  readonly complaints: string[];
  pagesMade: number;
}

/** A project with the small farm in a folder of its own; pages are one index.html that names the build. */
export function smallWorld(root: string, env: NodeJS.ProcessEnv = {}): { world: BuildWorld; heard: Heard } {
  writeFiles(join(root, 'farm'), SMALL_FARM);
  // A farm that says nothing of visits has the usual stations, and each of them its texts.
  cpSync(join(ROOT, 'content', 'stations'), join(root, 'content', 'stations'), { recursive: true });
  const heard: Heard = { said: [], complaints: [], pagesMade: 0 };
  const places = {
    root,
    farm: join(root, 'farm'),
    dist: join(root, 'dist'),
    workshop: join(root, '.pailside'),
    prints: join(root, 'prints'),
  };
  const world: BuildWorld = {
    places,
    env,
    now_ms: () => Date.UTC(2026, 4, 21, 15),
    say: (line) => void heard.said.push(line),
    complain: (text) => void heard.complaints.push(text),
    makePages: async (more) => {
      heard.pagesMade += 1;
      const page = `<!doctype html><title>build ${heard.pagesMade} for ${more['AS_OF'] ?? 'the day in farm.yaml'}</title>`;
      writeFiles(more['PAILSIDE_OUT'] ?? '', { 'index.html': page, 'barn/index.html': page });
      return Promise.resolve({ code: 0, said: '' });
    },
  };
  return { world, heard };
}
