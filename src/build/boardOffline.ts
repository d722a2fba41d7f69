// Makes the worker that keeps the Barn board standing without a network, in every language of the site.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { listFiles, listOnly, workerText, type FileList } from './workerFile.ts';

/** The worker's name in the built site. */
export const BOARD_WORKER_FILE = 'board-worker.js';

const LANG = String.raw`^(?:[a-z]{2,3}(?:-[\w-]+)?\/)?barn\/`;
// Lists of sounds among them: the board asks them what can be heard.
const PAGES = new RegExp(String.raw`${LANG}(?:.*\.(?:html|json))?$`);
const SOUNDS = new RegExp(String.raw`${LANG}sound\/.*(?<!\.json)$`);
const TEMPLATE = new URL('./boardWorker.js', import.meta.url);

/** Writes the worker for the site in a folder. */
export function writeBoardWorker(dist: string): void {
  const lists = {
    'path: hash of the file': boardFiles(dist),
    'path: hash of the sound': boardSounds(dist),
  };
  writeFileSync(join(dist, BOARD_WORKER_FILE), workerText(TEMPLATE, lists, 'hash of the lists'));
}

/** What must be there for the board to stand: its pages, what these fetch, and the assets that they name. */
export function boardFiles(dist: string): FileList {
  return listFiles(dist, PAGES);
}

/** What is kept once it has been heard. */
export function boardSounds(dist: string): FileList {
  return listOnly(dist, SOUNDS);
}
