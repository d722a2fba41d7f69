// Makes the worker that keeps the teacher's rooms usable without a network, once the pages stand.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The worker's name in the built site. */
export const WORKER_FILE = 'offline-worker.js';

// The rooms a teacher works in, in every language: their pages and what these fetch.
const ROOMS = /^(?:[a-z]{2,3}(?:-[\w-]+)?\/)?(?:bench|lessons|print|sheets)\/(?:.*\.(?:html|json))?$/;
const LIST = '/* path: hash of the file */ {}';
const VERSION = "/* hash of the list */ ''";
const TEMPLATE = new URL('./offlineWorker.js', import.meta.url);

/** What the site's generator calls when its files are written. */
export interface OfflineStep {
  readonly name: string;
  readonly hooks: { readonly 'astro:build:done': (built: { readonly dir: URL }) => void };
}

/** The last step of a build: it writes the worker into the built folder. */
export function offline(): OfflineStep {
  return {
    name: 'offline',
    hooks: { 'astro:build:done': ({ dir }) => writeWorker(fileURLToPath(dir)) },
  };
}

/** Writes the worker for the site in a folder. Throws where a line that it fills in has gone from the template. */
export function writeWorker(dist: string): void {
  const template = readFileSync(TEMPLATE, 'utf8');
  if (!template.includes(LIST) || !template.includes(VERSION))
    throw new Error(`${fileURLToPath(TEMPLATE)} lacks the places for its list and its version.`);
  const list = JSON.stringify(keptFiles(dist));
  const version = hashOf(`${list}${template}`);
  writeFileSync(
    join(dist, WORKER_FILE),
    template.replace(LIST, () => list).replace(VERSION, () => `'${version}'`),
  );
}

/**
 * What is kept: addresses below the base path (a page by its folder) with the first 16 hex digits of their SHA-256.
 * Assets count where a kept file names them, directly or through others; a face of type only as WOFF2, since every
 * browser with workers reads it.
 */
export function keptFiles(dist: string): Readonly<Record<string, string>> {
  const files = readdirSync(dist, { recursive: true, encoding: 'utf8' }).map((one) =>
    one.split(sep).join('/'),
  );
  const assets = new Map(files.filter(isAsset).map((path) => [basename(path), path]));
  const kept = new Set(files.filter((path) => ROOMS.test(path)));
  // A set goes on to what is added while it is walked.
  for (const path of kept) {
    if (!/\.(?:html|css|js)$/.test(path)) continue;
    for (const [name] of readFileSync(join(dist, path), 'utf8').matchAll(
      /[\w.@~-]+\.(?:js|css|woff2|svg|png)\b/g,
    )) {
      const asset = assets.get(name);
      if (asset !== undefined) kept.add(asset);
    }
  }
  const pairs = [...kept]
    .sort()
    .map((path) => [addressOf(path), hashOf(readFileSync(join(dist, path)))] as const);
  return Object.fromEntries(pairs);
}

const isAsset = (path: string) => path.startsWith('assets/') || path === 'icon.svg';
const addressOf = (path: string) => path.replace(/(^|\/)index\.html$/, '$1');
const hashOf = (bytes: string | Buffer) => createHash('sha256').update(bytes).digest('hex').slice(0, 16);
