// What browsers may keep: assets for good, the Milk book's page for a day, and never without its assets.
import { rmSync, utimesSync, existsSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { cachingOf } from '../../../src/desk/caching.ts';
import { deskApp, openDesk } from '../../../src/desk/serve.ts';
import { ownFolder, writeFiles } from '../build/smallFarm.ts';

describe('cachingOf', () => {
  it.each([
    ['/assets/Page.B2jpvpA3.css', 'public, max-age=31536000, immutable'],
    ['/assets/wake.astro_astro_type_script_index_0_lang.vB7h-2R_.js', 'public, max-age=31536000, immutable'],
    ['/assets/andika.woff2', 'no-cache'],
    ['/assets/Page.B2jpvpA3.css/', 'no-cache'],
    ['/book/', 'max-age=86400, stale-while-revalidate=604800'],
    ['/es/book/', 'max-age=86400, stale-while-revalidate=604800'],
    ['/book/month/', 'no-cache'],
    ['/', 'no-cache'],
    ['/barn/book/', 'no-cache'],
    ['/figures.json', 'no-cache'],
    ['/offline-worker.js', 'no-cache'],
  ])('%s: %s', (address, caching) => {
    expect(cachingOf(address)).toBe(caching);
  });
});

describe('the shelf', () => {
  const site = () => {
    const root = ownFolder();
    const dist = join(root, 'dist');
    const shelf = join(root, '.pailside', 'shelf');
    const make = (build: string) => {
      rmSync(dist, { recursive: true, force: true });
      const name = `assets/book.${build.padEnd(8, 'x')}.js`;
      writeFiles(dist, { '.built': build, 'book/index.html': build, [name]: `script of ${build}`, 'assets/plain.js': 'x' }); // prettier-ignore
      return `/${name}`;
    };
    const first = make('one');
    const app = deskApp({ dist, prints: root, basePath: '/', shelf });
    const get = async (path: string) => {
      const answer = await app.request(path);
      return [answer.status, answer.status === 200 ? await answer.text() : ''];
    };
    return { make, first, get, shelf };
  };

  it('goes on serving the scripts of the page that a phone has kept', async () => {
    const { make, first, get } = site();
    expect(await get('/book/')).toEqual([200, 'one']);
    const second = make('two');
    expect(await get(first)).toEqual([200, 'script of one']);
    expect(await get(second)).toEqual([200, 'script of two']);
    expect(await get('/book/')).toEqual([200, 'two']);
    make('three');
    for (const [asset, of] of [[first, 'one'], [second, 'two']] as const) expect(await get(asset)).toEqual([200, `script of ${of}`]); // prettier-ignore
    expect(await get('/assets/none.12345678.js')).toEqual([404, '']);
    expect(await get('/assets/..%2f..%2fdist%2f.built')).toEqual([404, '']);
  });

  it('holds nothing of builds whose page nobody was given, and nothing older than two weeks', async () => {
    const { make, first, get, shelf } = site();
    make('two');
    expect(await get(first)).toEqual([404, '']);
    await get('/book/');
    const two = join(shelf, 'assets', 'book.twoxxxxx.js');
    expect(existsSync(two)).toBe(true);
    expect(existsSync(join(shelf, 'assets', 'plain.js'))).toBe(false);
    const old = Date.now() / 1000 - 15 * 86_400;
    utimesSync(two, old, old);
    make('three');
    await get('/book/');
    expect(existsSync(two)).toBe(false);
  });
});

describe('a connection that only waits', () => {
  it('is closed when its head does not come to an end', async () => {
    const root = ownFolder();
    writeFiles(root, { 'dist/index.html': 'x' });
    const desk = await openDesk({ dist: join(root, 'dist'), prints: root, basePath: '/' }, 0);
    onTestFinished(() => desk.close());
    const began = Date.now();
    const socket = connect(Number(new URL(desk.url).port), '127.0.0.1');
    socket.write('GET / HTTP/1.1\r\nHost: localhost\r\nX-Slow: ');
    const drip = setInterval(() => socket.write('x'), 500);
    const said: string[] = [];
    socket.on('data', (bytes) => said.push(bytes.toString('latin1')));
    await new Promise((done) => socket.on('close', done).on('error', done));
    clearInterval(drip);
    expect(said.join('')).toContain('408');
    expect(Date.now() - began).toBeLessThan(17_000);
  }, 25_000);
});
