// Makes the worker that keeps the teacher's rooms usable without a network, once the pages stand; the board's beside it.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeBoardWorker } from './boardOffline.ts';
import { listFiles, workerText, type FileList } from './workerFile.ts';

/** The worker's name in the built site. */
export const WORKER_FILE = 'offline-worker.js';

// The rooms a teacher or a milker works in, in every language: their pages and what these fetch. What the desk answers
// below desk/ is no file of the site, and never on the list.
const ROOMS =
  /^(?:[a-z]{2,3}(?:-[\w-]+)?\/)?(?:bench|book|desk|labels|lessons|print|routine|sheets|trip|visits)\/(?:.*\.(?:html|json))?$/;
const TEMPLATE = new URL('./offlineWorker.js', import.meta.url);

/** What the site's generator calls when its files are written. */
export interface OfflineStep {
  readonly name: string;
  readonly hooks: { readonly 'astro:build:done': (built: { readonly dir: URL }) => void };
}

/** The last step of a build: it writes both workers into the built folder. */
export function offline(): OfflineStep {
  return {
    name: 'offline',
    hooks: {
      'astro:build:done': ({ dir }) => {
        writeWorker(fileURLToPath(dir));
        writeBoardWorker(fileURLToPath(dir));
      },
    },
  };
}

/** Writes the worker for the site in a folder. */
export function writeWorker(dist: string): void {
  const lists = { 'path: hash of the file': keptFiles(dist) };
  writeFileSync(join(dist, WORKER_FILE), workerText(TEMPLATE, lists, 'hash of the list'));
}

/** What is kept of the rooms: pages, and the assets that they name. */
export function keptFiles(dist: string): FileList {
  return listFiles(dist, ROOMS);
}
