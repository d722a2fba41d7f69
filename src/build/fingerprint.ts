// One short text that stands for everything a site is built from.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Places } from './places.ts';

/** Where a site keeps the fingerprint of what it was built from; servers do not show it. */
export const FINGERPRINT_FILE = '.built';

/** The folder inside the farm folder that the desk keeps its own papers in. */
export const DESK_FOLDER = 'desk';

const SOURCES = [
  'content',
  'shared',
  'src',
  'public',
  'package-lock.json',
  'astro.config.mjs',
  'svelte.config.js',
  'tsconfig.json',
];

/**
 * The fingerprint of the site that the farm folder and the sources give for a day (a day number) and
 * a base path: a site with the same one need not be built again. `speaks`: whether this machine has a voice.
 */
export function fingerprintOf(places: Places, asOf: number, basePath: string, speaks: boolean): string {
  const hash = createHash('sha256').update(`${asOf}\n${basePath}\n${places.farm}\n${speaks}\n`);
  const trees = [places.farm, ...SOURCES.map((name) => join(places.root, name))];
  // What the desk keeps for itself is on no page.
  const besides = join(places.farm, DESK_FOLDER);
  for (const tree of trees)
    for (const file of filesUnder(tree, besides)) {
      const bytes = readFileSync(file);
      hash.update(`${file}\n${bytes.length}\n`).update(bytes);
    }
  return hash.digest('hex');
}

function filesUnder(path: string, besides: string): string[] {
  if (path === besides || !existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  const entries = readdirSync(path, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry) => {
    if (entry.isDirectory()) return filesUnder(join(path, entry.name), besides);
    return entry.isFile() || entry.isSymbolicLink() ? filesUnder(join(path, entry.name), besides) : [];
  });
}

/** The fingerprint of a site that stands, or null. */
export function fingerprintIn(dist: string): string | null {
  const file = join(dist, FINGERPRINT_FILE);
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : null;
}
