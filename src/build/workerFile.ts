// What the site's two workers are made of: lists of built files with their hashes, filled into a template.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Addresses below the base path (a page by its folder), each with the first 16 hex digits of its SHA-256. */
export type FileList = Readonly<Record<string, string>>;

const SHARED = new URL('./keeping.js', import.meta.url);
const NAMED = /[\w.@~-]+\.(?:js|css|woff2|svg|png)\b/g;

/**
 * The files of a built site whose paths fit, and the assets that they name, directly or through others; a face of
 * type only as WOFF2, since every browser with workers reads it.
 */
export function listFiles(dist: string, fits: RegExp): FileList {
  const files = pathsIn(dist);
  const assets = new Map(files.filter(isAsset).map((path) => [basename(path), path]));
  const kept = new Set(files.filter((path) => fits.test(path)));
  // A set goes on to what is added while it is walked.
  for (const path of kept) {
    if (!/\.(?:html|css|js)$/.test(path)) continue;
    for (const [name] of readFileSync(join(dist, path), 'utf8').matchAll(NAMED)) {
      const asset = assets.get(name);
      if (asset !== undefined) kept.add(asset);
    }
  }
  return hashed(dist, [...kept]);
}

/** The files of a built site whose paths fit, and no more. */
export function listOnly(dist: string, fits: RegExp): FileList {
  return hashed(dist, pathsIn(dist).filter((path) => fits.test(path))); // prettier-ignore
}

/**
 * A worker's text from its template: each mark, as `{}` or `''` behind it stands in the template, gets what is given
 * for it, and the version the hash of all that. Throws where a mark has gone from the template.
 */
export function workerText(
  template: URL,
  lists: Readonly<Record<string, FileList>>,
  versionMark: string,
): string {
  let text = `${readFileSync(SHARED, 'utf8')}\n${readFileSync(template, 'utf8')}`;
  const place = (mark: string, empty: string) => {
    const found = `/* ${mark} */ ${empty}`;
    if (!text.includes(found)) throw new Error(`${fileURLToPath(template)} lacks the place "${found}".`);
    return found;
  };
  const versionPlace = place(versionMark, "''");
  for (const [mark, list] of Object.entries(lists))
    text = text.replace(place(mark, '{}'), () => JSON.stringify(list));
  return text.replace(versionPlace, () => `'${hashOf(text)}'`);
}

// What pages link to: everything under assets/, and what stands beside the front page. Workers are not for keeping.
const isAsset = (path: string) =>
  path.startsWith('assets/') || (/^[\w.-]+\.(?:js|css|svg|png)$/.test(path) && !/-worker\.js$/.test(path));

const pathsIn = (dist: string) =>
  readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(dist.replace(/[\\/]$/, '').length + 1))
    .map((path) => path.split(sep).join('/'));

function hashed(dist: string, paths: readonly string[]): FileList {
  const pairs = [...paths]
    .sort()
    .map((path) => [addressOf(path), hashOf(readFileSync(join(dist, path)))] as const);
  return Object.fromEntries(pairs);
}

const addressOf = (path: string) => path.replace(/(^|\/)index\.html$/, '$1');
const hashOf = (bytes: string | Buffer) => createHash('sha256').update(bytes).digest('hex').slice(0, 16);
