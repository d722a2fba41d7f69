// What the built board sends to a browser, read from its files: how much script, and nothing that listens, films or asks outside.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { pagePaths } from '../support/openPages.ts';

const HEAVIEST_B = 45_000;
const ANSWER_B = 15_000;
// The data sheet is paper as all sheets are, and opens from the farm's page alone.
const PAPER = /\/sheet\/$/;

let site: TestSite;
let paths: string[] = [];
beforeAll(async () => {
  site = await builtSite('demo');
  paths = pagePaths(site).filter((path) => /^(es\/)?barn\//.test(path));
});

const htmlOf = (path: string) => readFileSync(join(site.dist, path, 'index.html'), 'utf8');
const sources = new Map<string, string>();

function sourceOf(file: string): string {
  const known = sources.get(file);
  if (known !== undefined) return known;
  const source = readFileSync(join(site.dist, file), 'utf8');
  sources.set(file, source);
  return source;
}

/** Scripts that a page loads at once: those it names, and what these import, but not what they fetch when it is wanted. */
function scriptsOf(path: string): Set<string> {
  const files = new Set(
    [...htmlOf(path).matchAll(/<script[^>]*\ssrc="\/([^"]+)"/g)].map(([, file = '']) => file),
  );
  for (const file of files)
    for (const [, name = ''] of sourceOf(file).matchAll(/(?:\bfrom|\bimport)\s*["']([^"']+\.js)["']/g))
      files.add(posix.join(posix.dirname(file), name));
  return files;
}

/** On the page of a thing to do, its own part is fetched at once as well. */
function doingPart(path: string): string[] {
  const name = /\/do\/([\w-]+)\/$/.exec(path)?.[1];
  if (!name) return [];
  const wake = [...scriptsOf(path)]
    .map(sourceOf)
    .find((source) => source.includes(`import("./`) || source.includes('import(`./'));
  const part = new RegExp(`["']?${name}["']?:\\(\\)=>[\\s\\S]{0,40}?import\\([\`"']\\./([^\`"']+\\.js)`).exec(
    wake ?? '',
  )?.[1];
  return part ? [posix.join('assets', part)] : [];
}

const gzipped_B = (files: Iterable<string>) =>
  [...files].reduce((sum, file) => sum + gzipSync(sourceOf(file), { level: 9 }).length, 0);

describe('the script of the board, gzipped', () => {
  it(`is at most ${ANSWER_B} bytes on any answer, proof, topic and the home`, () => {
    const plain = paths.filter((path) => !/\/(do\/.+|pail|pail\/sheet|farm)\/$/.test(path));
    expect(plain.length).toBeGreaterThan(100);
    const heavy = plain.filter((path) => gzipped_B(scriptsOf(path)) > ANSWER_B);
    expect(heavy).toEqual([]);
    // A page without any script would pass for the wrong reason.
    expect(gzipped_B(scriptsOf('barn/how-much/'))).toBeGreaterThan(1_000);
  });

  it(`is at most ${HEAVIEST_B} bytes on the heaviest page`, () => {
    const weights = paths
      .filter((path) => !PAPER.test(path))
      .map((path) => {
        const files = scriptsOf(path);
        for (const part of doingPart(path)) {
          files.add(part);
          for (const file of files)
            for (const [, name = ''] of sourceOf(file).matchAll(
              /(?:\bfrom|\bimport)\s*["']([^"']+\.js)["']/g,
            ))
              files.add(posix.join(posix.dirname(file), name));
        }
        return { path, bytes: gzipped_B(files) };
      });
    // Every thing to do brings a part of its own, or the part was not found.
    const doings = weights.filter(({ path }) => /\/do\/.+\/$/.test(path));
    expect(doings.filter(({ bytes }) => bytes < 20_000)).toEqual([]);
    expect(weights.filter(({ bytes }) => bytes > HEAVIEST_B)).toEqual([]);
  });
});

describe('the lock', () => {
  const FORBIDDEN = {
    'a camera or a microphone':
      /getUserMedia|mediaDevices|MediaRecorder|webkitSpeechRecognition|SpeechRecognition/,
    'a message on the way out': /sendBeacon|WebSocket\(|RTCPeerConnection|XMLHttpRequest/,
    'a place on the map': /geolocation/,
    'another window': /window\.open\(/,
    'another address': /fetch\(\s*["'`]https?:|import\(\s*["'`]https?:|EventSource\(\s*["'`]https?:/,
    cookies: /document\.cookie/,
  };

  it('has no camera, microphone, outside fetch, other window or cookie in any script of the board', () => {
    const files = new Set(paths.flatMap((path) => [...scriptsOf(path), ...doingPart(path)]));
    for (const extra of ['board-worker.js', 'board-first.js'])
      if (existsSync(join(site.dist, extra))) files.add(extra);
    // What is fetched later is a script of the board too.
    for (const file of files)
      for (const [, name = ''] of sourceOf(file).matchAll(/import\(\s*["'`]\.\/([^"'`]+\.js)["'`]/g))
        files.add(posix.join(posix.dirname(file), name));
    expect(files.size).toBeGreaterThan(5);
    const found = [...files].flatMap((file) =>
      Object.entries(FORBIDDEN).flatMap(([what, sign]) =>
        sign.test(sourceOf(file)) ? [`${file}: ${what}`] : [],
      ),
    );
    expect(found).toEqual([]);
  });

  it('has a policy of content that names this site alone, on every page', () => {
    const screens = paths.filter((path) => !PAPER.test(path));
    const without = screens.filter((path) => !/http-equiv="Content-Security-Policy" content="default-src &#39;self&#39;;|http-equiv="Content-Security-Policy" content="default-src 'self';/.test(htmlOf(path))); // prettier-ignore
    expect(without).toEqual([]);
    expect(screens.filter((path) => /unsafe-inline|unsafe-eval/.test(htmlOf(path)))).toEqual([]);
  });

  it('names no other site in any address of its pages', () => {
    const outside = paths.flatMap((path) =>
      [...htmlOf(path).matchAll(/\s(?:href|src|action|data|poster)="((?:https?:)?\/\/[^"]+)"/g)].map(
        ([, address]) => `/${path} ${address}`,
      ),
    );
    expect(outside).toEqual([]);
  });

  it('has no field to type in on any page that a child can reach', () => {
    const fields = paths.filter(
      (path) => !/barn\/farm\//.test(path) && /<(input|textarea|select|form)\b/.test(htmlOf(path)),
    );
    expect(fields).toEqual([]);
  });

  it('is made of the pages and scripts that were read here', () => {
    expect(readdirSync(join(site.dist, 'barn')).length).toBeGreaterThan(20);
  });
});
