// The list of files that are kept for times without a network, and the worker that carries it.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keptFiles, WORKER_FILE, writeWorker } from '../../../src/build/offline.ts';

let dist = '';
const write = (path: string, text: string) => {
  mkdirSync(dirname(join(dist, path)), { recursive: true });
  writeFileSync(join(dist, path), text);
};

beforeEach(() => {
  dist = mkdtempSync(join(tmpdir(), 'kept-'));
  write('bench/index.html', '<link rel="icon" href="/icon.svg"><script src="/assets/bench.A1.js"></script>');
  write('es/lessons/why-milk/index.html', '<link href="/assets/page.B2.css">');
  write('print/en.json', '{}');
  write('barn/index.html', '<link href="/assets/board.C3.css">');
  write('sheets/old.pdf', 'a printed sheet');
  write('book/month/index.html', '');
  write('es/book/index.html', '<script src="/assets/bench.A1.js"></script>');
  write('desk/index.html', '');
  write('trip/index.html', '');
  write('es/visits/index.html', '');
  write('figures.json', '{}');
  write('icon.svg', '<svg/>');
  write('assets/bench.A1.js', 'import"./other.D4.js";const later=()=>import("./word.E5.js")');
  write('assets/other.D4.js', 'export{}');
  write('assets/word.E5.js', 'export{}');
  write('assets/page.B2.css', '@font-face{src:url(face.F6.woff2),url(face.F6.woff)}');
  write('assets/face.F6.woff2', 'face');
  write('assets/face.F6.woff', 'face');
  write('assets/board.C3.css', '');
});
afterEach(() => rmSync(dist, { recursive: true, force: true }));

describe('keptFiles', () => {
  it('is the teacher’s and the milker’s rooms in every language, and what they name, also by way of other files', () => {
    expect(Object.keys(keptFiles(dist))).toEqual([
      'assets/bench.A1.js',
      'assets/face.F6.woff2',
      'assets/other.D4.js',
      'assets/page.B2.css',
      'assets/word.E5.js',
      'bench/',
      'book/month/',
      'desk/',
      'es/book/',
      'es/lessons/why-milk/',
      'es/visits/',
      'icon.svg',
      'print/en.json',
      'trip/',
    ]);
  });

  it('has hashes that change with a file and with nothing else', () => {
    const before = keptFiles(dist);
    expect(Object.values(before)).toEqual(
      Object.values(before).filter((hash) => /^[0-9a-f]{16}$/.test(hash)),
    );
    write('bench/index.html', '<script src="/assets/bench.A1.js"></script><p>New.</p>');
    const after = keptFiles(dist);
    const changed = Object.keys(before).filter((path) => before[path] !== after[path]);
    expect(changed).toEqual(['bench/', 'icon.svg']);
  });
});

describe('writeWorker', () => {
  it('fills list and version into the worker, and the version follows the list', () => {
    const versionOf = () => /const NAME = `\$\{PREFIX\}\$\{'([0-9a-f]{16})'\}`/.exec(readFileSync(join(dist, WORKER_FILE), 'utf8'))?.[1]; // prettier-ignore
    writeWorker(dist);
    const text = readFileSync(join(dist, WORKER_FILE), 'utf8');
    const list = /const KEPT = (\{.*?\});/.exec(text)?.[1] ?? '';
    expect(JSON.parse(list)).toEqual(keptFiles(dist));
    const first = versionOf();
    expect(first).toMatch(/^[0-9a-f]{16}$/);
    writeWorker(dist);
    expect(versionOf()).toBe(first);
    write('print/en.json', '{"new":1}');
    writeWorker(dist);
    expect(versionOf()).not.toBe(first);
  });

  it('listens to nothing but install, activate, fetch and what pages ask', () => {
    writeWorker(dist);
    const heard: string[] = [];
    const self = { registration: { scope: 'https://farm.example/hill/' }, addEventListener: (name: string) => heard.push(name) }; // prettier-ignore
    runInNewContext(readFileSync(join(dist, WORKER_FILE), 'utf8'), { self, URL });
    expect(heard).toEqual(['install', 'activate', 'fetch', 'message']);
  });
});
