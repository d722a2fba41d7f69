// The Barn board without a network: after one visit to one page, after a power cut that took files along, and by ear.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { boardFiles, writeBoardWorker } from '../../src/build/boardOffline.ts';
import { startChromium } from '../../src/print/chromium.ts';
import {
  boardPaths,
  buildAnew,
  complaintsOf,
  isNew,
  MINUTE_ms,
  until,
  visitBoard,
} from '../support/boardVisit.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { serveCopy, type ServedCopy } from '../support/servedCopy.ts';

const MOST_BYTES = 6_000_000;
const LONG_ms = 400_000;

let browser: Browser;
let site: TestSite;
let copy: ServedCopy;
let context: BrowserContext;

beforeAll(async () => {
  site = await builtSite('demo');
  browser = await startChromium();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  copy = await serveCopy(site);
  context = await browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true });
});
afterEach(async () => {
  await context.close();
  await copy.close();
});

const visit = (path: string) => visitBoard(context, copy, path);
const goTo = async (page: Page, path: string) => {
  await page.goto(copy.at(path));
  return isNew(page);
};

describe('after a visit to one page, with the network cut', () => {
  it(
    'opens every page of both languages, with styles and faces, and without a complaint',
    async () => {
      const page = await visit('barn/how-much/');
      await copy.stop();
      await context.setOffline(true);
      const complaints = complaintsOf(page);
      for (const path of boardPaths(site)) {
        await page.goto(copy.at(path));
        await page.evaluate(() => document.fonts.ready.then(() => undefined));
        expect(await page.locator('h1').first().textContent(), path).not.toBe('');
        expect(await page.evaluate(() => getComputedStyle(document.body).fontFamily)).toContain('Andika');
        if (/barn\/do\/./.test(path) && (await page.locator('#doing').count()) > 0)
          await page.locator('#doing[data-awake]').waitFor();
      }
      expect(complaints).toEqual([]);
    },
    LONG_ms,
  );

  it('taps from home to an answer, its proof, a thing to do, and over to Spanish', async () => {
    const page = await visit('barn/');
    await context.setOffline(true);
    await page.locator('.blocks a').first().tap();
    await page.waitForURL('**/barn/topic/milk/');
    await page.locator('.blocks a[href$="/how-much/"]').tap();
    await page.waitForURL('**/barn/how-much/');
    await page.locator('.ways a[href$="/proof/"]').tap();
    await page.waitForURL('**/proof/');
    await page.locator('[data-tool="back"]').tap();
    await page.waitForURL('**/barn/how-much/');
    await page.locator('.way.main').tap();
    await page.locator('#doing[data-awake] button:enabled').first().tap();
    await page.locator('.tongue').tap();
    await page.waitForURL('**/es/barn/do/**');
    await page.locator('[data-tool="home"]').tap();
    await page.waitForURL('**/es/barn/');
    expect(await page.locator('.blocks a').count()).toBeGreaterThan(3);
  });

  it('opens in English after a first visit in Spanish', async () => {
    const page = await visit('es/barn/why-milk/');
    await context.setOffline(true);
    for (const path of ['barn/', 'barn/how-much/', 'es/barn/']) {
      await page.goto(copy.at(path));
      expect(await page.locator('h1').first().textContent()).not.toBe('');
    }
  });

  it(
    'opens below a path, in December',
    async () => {
      await copy.close();
      const winter = await builtSite('winter');
      copy = await serveCopy(winter);
      const page = await visit('barn/');
      await context.setOffline(true);
      const complaints = complaintsOf(page);
      for (const path of boardPaths(winter)) await page.goto(copy.at(path));
      expect(complaints).toEqual([]);
    },
    LONG_ms,
  );

  it(`is below ${MOST_BYTES / 1e6} MB as it is kept, and keeps no file twice or for nothing`, async () => {
    const files = Object.keys(boardFiles(copy.folder));
    const page = await visit('barn/');
    const kept = await page.evaluate(async () => {
      const name = (await caches.keys()).find((one) => one.startsWith('pailside-board') && !/ (stands|heard)$/.test(one)); // prettier-ignore
      const cache = await caches.open(name ?? '');
      const sizes = (await cache.matchAll()).map(async (answer) => (await answer.arrayBuffer()).byteLength);
      const paths = (await cache.keys()).map(({ url }) => new URL(url).pathname.slice(1));
      return { bytes: (await Promise.all(sizes)).reduce((sum, one) => sum + one, 0), paths };
    });
    expect(kept.paths.filter((path) => path !== 'board-worker.js').sort()).toEqual(files.sort());
    console.log(`The board as it is kept: ${(kept.bytes / 1e6).toFixed(1)} MB in ${files.length} files`);
    expect(kept.bytes).toBeLessThan(MOST_BYTES);
    // Each file once, whichever board's worker fetched it.
    expect(copy.asked.filter((path) => path === 'es/barn/how-much/')).toHaveLength(1);
  });

  it('does not answer for figures, events and the teacher’s rooms', async () => {
    const page = await visit('barn/');
    await context.setOffline(true);
    const asked = await page.evaluate(() =>
      Promise.all(['figures.json', 'events', 'bench/', 'sheets/'].map((path) => fetch(`/${path}`).then(() => 'answered', () => 'failed')))); // prettier-ignore
    expect(asked).toEqual(['failed', 'failed', 'failed', 'failed']);
  });
});

describe('a damaged cache', () => {
  /** Takes a file out of the standing build, or spoils it. */
  const damage = (page: Page, path: string, how: 'lost' | 'spoilt') =>
    page.evaluate(
      async ([one, way]) => {
        for (const name of await caches.keys()) {
          if (!name.startsWith('pailside-board')) continue;
          const cache = await caches.open(name);
          const url = new URL(one, location.origin);
          const found = await cache.match(url);
          if (!found) continue;
          if (way === 'lost') await cache.delete(url);
          else await cache.put(url, new Response((await found.blob()).slice(0, 40), { headers: found.headers })); // prettier-ignore
        }
      },
      [path, how] as const,
    );

  it.each(['lost', 'spoilt'] as const)('is mended from the network where a file is %s', async (how) => {
    const page = await visit('barn/');
    await damage(page, 'barn/how-much/', how);
    await damage(page, 'board-first.js', how);
    expect(await goTo(page, 'barn/how-much/')).toBe(false);
    await context.setOffline(true);
    const complaints = complaintsOf(page);
    expect(await goTo(page, 'barn/how-much/')).toBe(false);
    expect(complaints).toEqual([]);
  });

  it.each(['lost', 'spoilt'] as const)(
    'leads home where a page is %s and there is no network',
    async (how) => {
      const page = await visit('barn/');
      await damage(page, 'es/barn/how-much/', how);
      await context.setOffline(true);
      await page.goto(copy.at('es/barn/how-much/'));
      expect(new URL(page.url()).pathname).toBe('/es/barn/');
    },
  );

  it.each(['stands', 'list'])('goes on where the note "%s" is lost', async (which) => {
    const page = await visit('barn/');
    await page.evaluate(async (what) => {
      for (const name of await caches.keys())
        if (name.startsWith('pailside-board') && (what === 'stands') === name.endsWith(' stands'))
          await (await caches.open(name)).delete('/board-worker.js?list');
    }, which);
    await context.setOffline(true);
    for (const path of ['barn/how-much/', 'es/barn/', 'barn/']) expect(await goTo(page, path)).toBe(false);
  });

  it('does not mix builds where a page of the old one is lost and the network has the new one', async () => {
    const page = await visit('barn/');
    await damage(page, 'barn/how-much/', 'lost');
    buildAnew(copy);
    await page.goto(copy.at('barn/how-much/'));
    expect([new URL(page.url()).pathname, await isNew(page)]).toEqual(['/barn/', false]);
  });
});

describe('sounds', () => {
  it('are kept when they are first asked for, and played in parts', async () => {
    mkdirSync(join(copy.folder, 'barn', 'sound'), { recursive: true });
    writeFileSync(join(copy.folder, 'barn', 'sound', 'test.opus'), '0123456789');
    writeFileSync(join(copy.folder, 'barn', 'sound', 'other.opus'), 'never heard');
    writeBoardWorker(copy.folder);
    const page = await visit('barn/');
    const ask = (name: string, range?: string) =>
      page.evaluate(
        ([file, part]) =>
          fetch(`/barn/sound/${file}`, part ? { headers: { Range: part } } : {}).then(
            async (answer) => `${answer.status} ${await answer.text()}`,
            () => 'failed',
          ),
        [name, range] as const,
      );
    expect(await ask('test.opus')).toBe('200 0123456789');
    await context.setOffline(true);
    expect(await ask('test.opus')).toBe('200 0123456789');
    expect(await ask('test.opus', 'bytes=2-4')).toBe('206 234');
    expect(await ask('test.opus', 'bytes=7-')).toBe('206 789');
    expect(await ask('test.opus', 'bytes=70-')).toBe('416 ');
    expect(await ask('other.opus')).toBe('failed');
  });

  it('come by themselves once the board stands, where the site is near', async () => {
    mkdirSync(join(copy.folder, 'es', 'barn', 'sound'), { recursive: true });
    writeFileSync(join(copy.folder, 'es', 'barn', 'sound', 'hola.opus'), 'hola');
    writeBoardWorker(copy.folder);
    const page = await visit('barn/');
    await page.clock.runFor(MINUTE_ms + 1000);
    await until(page, async () => (await caches.match('/es/barn/sound/hola.opus')) !== undefined);
  });
});
