// The list of files that the Barn board is kept by, and the worker that carries it.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  BOARD_WORKER_FILE,
  boardFiles,
  boardSounds,
  writeBoardWorker,
} from '../../../src/build/boardOffline.ts';
import { keptFiles } from '../../../src/build/offline.ts';

let dist = '';
const write = (path: string, text: string) => {
  mkdirSync(dirname(join(dist, path)), { recursive: true });
  writeFileSync(join(dist, path), text);
};

beforeEach(() => {
  dist = mkdtempSync(join(tmpdir(), 'board-kept-'));
  write('barn/index.html', '<script src="/board-first.js"></script><link href="/assets/board.A1.css"><script src="/assets/kiosk.B2.js"></script>');
  write('pt-br/barn/how-much/proof/index.html', '<link rel="icon" href="/icon.svg">');
  write('barn/live/en.json', '{}');
  write('barn/sound/en.json', '{}');
  write('barn/sound/en/a1.opus', 'sound');
  write('sheets/index.html', '<link href="/assets/sheet.C3.css"><script src="/assets/shared.D4.js"></script>');
  write('figures.json', '{}');
  write('icon.svg', '<svg/>');
  write('board-first.js', '');
  write('board-worker.js', 'an older worker');
  write('assets/board.A1.css', '@font-face{src:url(face.E5.woff2),url(face.E5.woff)}');
  write('assets/face.E5.woff2', 'face');
  write('assets/face.E5.woff', 'face');
  write('assets/kiosk.B2.js', 'import"./shared.D4.js";register("board-worker.js")');
  write('assets/shared.D4.js', 'export{}');
  write('assets/sheet.C3.css', '');
}); // prettier-ignore
afterEach(() => rmSync(dist, { recursive: true, force: true }));

describe('boardFiles', () => {
  it('is the board in every language with what it names, lists of sounds too, and no sound', () => {
    expect(Object.keys(boardFiles(dist))).toEqual([
      'assets/board.A1.css',
      'assets/face.E5.woff2',
      'assets/kiosk.B2.js',
      'assets/shared.D4.js',
      'barn/',
      'barn/live/en.json',
      'barn/sound/en.json',
      'board-first.js',
      'icon.svg',
      'pt-br/barn/how-much/proof/',
    ]);
    expect(Object.keys(boardSounds(dist))).toEqual(['barn/sound/en/a1.opus']);
  });

  it('shares with the teacher’s rooms what both use, and nothing else', () => {
    const both = Object.keys(keptFiles(dist)).filter((path) => Object.hasOwn(boardFiles(dist), path));
    expect(both).toEqual(['assets/shared.D4.js']);
  });
});

describe('writeBoardWorker', () => {
  const heardBy = () => {
    const heard: string[] = [];
    const self = { location: { href: 'https://farm.example/hill/board-worker.js' }, addEventListener: (name: string) => heard.push(name) }; // prettier-ignore
    const text = readFileSync(join(dist, BOARD_WORKER_FILE), 'utf8');
    const name = runInNewContext(`${text}; NAME`, { self, URL }) as string;
    return { heard, name };
  };

  it('names the cache by the hash of its lists: it follows pages and sounds, and nothing else', () => {
    writeBoardWorker(dist);
    const { name } = heardBy();
    expect(name).toMatch(/^pailside-board \/hill\/ [0-9a-f]{16}$/);
    write('sheets/index.html', 'another sheet');
    writeBoardWorker(dist);
    expect(heardBy().name).toBe(name);
    for (const path of ['barn/live/en.json', 'barn/sound/en/a1.opus', 'assets/board.A1.css']) {
      const before = heardBy().name;
      write(path, `other ${path}`);
      writeBoardWorker(dist);
      expect(heardBy().name).not.toBe(before);
    }
  });

  it('takes no build over at its install', () => {
    writeBoardWorker(dist);
    expect(heardBy().heard).toEqual(['install', 'activate', 'message', 'fetch']);
    const text = readFileSync(join(dist, BOARD_WORKER_FILE), 'utf8');
    expect(text.slice(text.indexOf('function takeOver')).match(/skipWaiting/g)).toHaveLength(1);
    expect(text.match(/skipWaiting/g)).toHaveLength(1);
  });
});
