// The Barn board without a network: after one visit, after an update, after a power cut, and never half of anything.
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { boardFiles, writeBoardWorker } from '../../src/build/boardOffline.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { pagePaths } from '../support/openPages.ts';
import { serveCopy, type ServedCopy } from '../support/servedCopy.ts';

const MOST_BYTES = 6_000_000;
const NEW = ' anew</h1>';
const MINUTE_ms = 60_000;

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

const boardPaths = (of: TestSite) => pagePaths(of).filter((path) => /^(es\/)?barn\//.test(path));

/** Opens a page with its clock in the test's hand, and waits until the boards of all languages are kept. */
async function visit(path: string): Promise<Page> {
  const page = await context.newPage();
  await page.clock.install();
  await page.goto(copy.at(path));
  await kept(page);
  return page;
}

/** Waits until every board's worker has come to rest. */
const kept = (page: Page) =>
  until(page, async () => {
    const scopes = document.body.dataset['boardScopes']?.split(' ') ?? [];
    const all = await navigator.serviceWorker.getRegistrations();
    const ours = all.filter(({ scope }) => scopes.includes(new URL(scope).pathname));
    return ours.length === scopes.length && ours.every((one) => one.active?.state === 'activated' && !one.installing); // prettier-ignore
  });

/** Waits until a page says yes. */
const until = (page: Page, isSo: () => Promise<boolean>) =>
  expect.poll(() => page.evaluate(isSo), { timeout: 30_000, interval: 100 }).toBe(true);

/** Fetches newer workers for all boards; tells how each ended. */
const update = (page: Page) =>
  page.evaluate(async () => {
    const ended: string[] = [];
    for (const one of await navigator.serviceWorker.getRegistrations()) {
      await one.update();
      const worker = one.installing;
      while (worker?.state === 'installing') await new Promise((done) => worker.addEventListener('statechange', done)); // prettier-ignore
      ended.push(worker?.state ?? (one.waiting ? 'waits' : 'none'));
    }
    return ended;
  });

/** The builds that are kept: `whole` where nothing is missing. */
const builds = (page: Page) =>
  page.evaluate(async () => {
    const found: string[] = [];
    for (const name of await caches.keys()) {
      if (!name.startsWith('pailside-board') || / (stands|heard)$/.test(name)) continue;
      const keys = (await (await caches.open(name)).keys()).map(({ url }) => url);
      found.push(keys.some((url) => url.endsWith('?list')) ? 'whole' : 'cut off');
    }
    return found.sort();
  });

const isNew = async (page: Page) => (await page.locator('h1').first().textContent())?.endsWith(' anew');
const goTo = async (page: Page, path: string) => {
  await page.goto(copy.at(path));
  return isNew(page);
};
const CHANGED = ['barn', 'barn/how-much', 'es/barn', 'es/barn/how-much'];
/** A later build, whose headings say so. */
const buildAnew = () => copy.rebuild(CHANGED, '</h1>', NEW);

/** Lets the page at home stand untouched, and waits until it has loaded itself again. */
async function untouched(page: Page): Promise<void> {
  const loaded = page.waitForEvent('load');
  await page.clock.runFor(MINUTE_ms + 1000);
  await loaded;
}

/** Everything that goes wrong on a page from now on. */
function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('requestfailed', (request) => {
    // What a page was still fetching when it was left was not missed.
    if (request.failure()?.errorText !== 'net::ERR_ABORTED') complaints.push(`failed: ${request.url()}`);
  });
  return complaints;
}

describe('after a visit to one page, with the network cut', () => {
  it('opens every page of both languages, with styles and faces, and without a complaint', async () => {
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
  });

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

  it('opens below a path, in December', async () => {
    await copy.close();
    const winter = await builtSite('winter');
    copy = await serveCopy(winter);
    const page = await visit('barn/');
    await context.setOffline(true);
    const complaints = complaintsOf(page);
    for (const path of boardPaths(winter)) await page.goto(copy.at(path));
    expect(complaints).toEqual([]);
  });

  it(`is below ${MOST_BYTES / 1e6} MB, counted as the files are, and keeps no file twice or for nothing`, async () => {
    const files = Object.keys(boardFiles(copy.folder));
    const bytes = files.map((path) => statSync(join(copy.folder, path.replace(/(^|\/)$/, '$1index.html'))).size); // prettier-ignore
    expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThan(MOST_BYTES);
    const page = await visit('barn/');
    const found = await page.evaluate(async () => {
      const name = (await caches.keys()).find((one) => one.startsWith('pailside-board') && !/ (stands|heard)$/.test(one)); // prettier-ignore
      return (await (await caches.open(name ?? '')).keys()).map(({ url }) => new URL(url).pathname.slice(1));
    });
    expect(found.filter((path) => path !== 'board-worker.js').sort()).toEqual(files.sort());
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

describe('a new build', () => {
  it('does not come while a child is on a page, in whichever language', async () => {
    const page = await visit('barn/how-much/');
    buildAnew();
    expect(await update(page)).toEqual(['installed', 'installed']);
    await page.clock.runFor(80_000);
    for (const path of ['barn/how-much/', 'es/barn/how-much/', 'es/barn/', 'barn/how-much/', 'barn/'])
      expect(await goTo(page, path), path).toBe(false);
    expect(await builds(page)).toEqual(['whole', 'whole']);
  });

  it('comes when home has stood untouched for a minute, in all languages at once, without a network too', async () => {
    const page = await visit('barn/');
    buildAnew();
    await untouched(page);
    expect(await isNew(page)).toBe(true);
    await context.setOffline(true);
    for (const path of ['es/barn/how-much/', 'barn/how-much/', 'es/barn/'])
      expect(await goTo(page, path), path).toBe(true);
    // A build that nobody asks for any more goes when the next one comes.
    await context.setOffline(false);
    copy.rebuild(['barn'], NEW, ' anew anew</h1>');
    await goTo(page, 'barn/');
    await untouched(page);
    expect(await builds(page)).toEqual(['whole', 'whole']);
  });

  it('waits while somebody touches home, or is on a page in another window', async () => {
    const page = await visit('barn/');
    const other = await context.newPage();
    await other.goto(copy.at('es/barn/how-much/'));
    buildAnew();
    for (let part = 0; part < 4; part += 1) {
      await page.clock.runFor(MINUTE_ms / 2);
      await page.touchscreen.tap(5, 5);
    }
    expect(await builds(page)).toEqual(['whole']);
    await page.clock.runFor(2 * MINUTE_ms);
    await until(page, async () => {
      const all = await navigator.serviceWorker.getRegistrations();
      return all.every(({ waiting }) => waiting !== null);
    });
    expect(await isNew(page)).toBe(false);
    await other.close();
    const loaded = page.waitForEvent('load');
    await page.clock.runFor(60 * MINUTE_ms);
    await loaded;
    expect(await isNew(page)).toBe(true);
  });
});

/** A later build of which one file is wrong, or none comes any more after some. */
describe('half an update', () => {
  const halves: Record<string, () => void> = {
    'serves a file of another build': () =>
      (copy.gate = (path) => (path === 'es/barn/' ? new Response('<h1>Something else</h1>') : undefined)),
    'answers with an error': () =>
      (copy.gate = (path) => (path === 'es/barn/' ? new Response('No.', { status: 500 }) : undefined)),
    'dies': () =>
      (copy.gate = (path) => {
        if (path === 'es/barn/how-much/') void copy.stop();
        return undefined;
      }),
  }; // prettier-ignore

  it.each(Object.keys(halves))('where the server %s leaves the old build whole', async (how) => {
    const page = await visit('barn/');
    buildAnew();
    halves[how]?.();
    await page.evaluate(async () => {
      for (const one of await navigator.serviceWorker.getRegistrations()) {
        await one.update().catch(() => undefined);
        const worker = one.installing;
        while (worker?.state === 'installing') await new Promise((done) => worker.addEventListener('statechange', done)); // prettier-ignore
      }
    });
    expect(await builds(page)).toEqual(['whole']);
    await page.clock.runFor(2 * MINUTE_ms);
    await context.setOffline(true);
    for (const path of boardPaths(site).slice(0, 8)) expect(await goTo(page, path)).toBe(false);
    // The whole of it comes later.
    await context.setOffline(false);
    copy.gate = () => undefined;
    await copy.start();
    await goTo(page, 'barn/');
    await untouched(page);
    expect(await isNew(page)).toBe(true);
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
    buildAnew();
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
