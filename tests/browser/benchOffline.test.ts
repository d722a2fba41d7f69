// The teacher's rooms without a network: after one visit, after an update, and never half of either.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { keptFiles, writeWorker } from '../../src/build/offline.ts';
import { openDesk, type Desk } from '../../src/desk/serve.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { unzip } from '../support/unzip.ts';

let browser: Browser;
let folder = '';
let site: TestSite;
let desk: Desk;
let context: BrowserContext;

beforeAll(async () => {
  // Kept below a path, where a worker's reach is easy to get wrong.
  site = await builtSite('winter');
  browser = await startChromium();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'offline-'));
  cpSync(site.dist, folder, { recursive: true });
  desk = await openDesk({ dist: folder, prints: join(folder, 'none'), basePath: site.basePath }, 0);
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
});
afterEach(async () => {
  await context.close();
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
});

const at = (path: string) => new URL(path, desk.url).href;

/** Visits a page and waits until its worker has kept everything. */
async function visit(path: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(at(path));
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
  return page;
}

const cachesOf = (page: Page) => page.evaluate(() => caches.keys());
/** The bytes that the caches hold. */
const keptBytes = (page: Page) =>
  page.evaluate(async () => {
    let bytes = 0;
    for (const name of await caches.keys())
      for (const answer of await (await caches.open(name)).matchAll()) bytes += (await answer.blob()).size;
    return bytes;
  });

/** Writes a file of the site anew, and its worker, as a later build would. */
function rebuild(path: string, from: string, to: string): void {
  const file = join(folder, path);
  writeFileSync(file, readFileSync(file, 'utf8').replaceAll(from, to));
  writeWorker(folder);
}

/** Fetches a page's newer worker and waits until it has taken over. */
async function update(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const taken = new Promise((done) => navigator.serviceWorker.addEventListener('controllerchange', done));
    await (await navigator.serviceWorker.ready).update();
    await taken;
  });
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
}

describe('after one visit, without a network', () => {
  it('opens the bench, lays out a lesson, and makes both files', async () => {
    const page = await visit('bench/');
    await context.setOffline(true);
    await desk.close();
    await page.goto(at('bench/?grade=4&min=40&children=18'));
    await page.locator('.wish').waitFor();
    expect(await page.locator('.step-list > li').count()).toBeGreaterThan(2);
    await page.locator('.wish input[type="number"]').first().fill('30');
    await page.locator('.wish input[type="number"]').first().press('Enter');
    await page.waitForURL('**/bench/?grade=4&min=30&children=18');
    const [word] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Word document' }).click(),
    ]);
    expect(word.suggestedFilename()).toBe('lesson-before-visit-grade-4-30-minutes.docx');
    const parts = unzip(readFileSync(await word.path()));
    expect(parts.get('word/document.xml')?.toString()).toContain('Grade 4, 30 minutes, before the visit');
    const [mdx] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Lesson file' }).click(),
    ]);
    expect(readFileSync(await mdx.path(), 'utf8')).toMatch(/^---\ntitle: "Grade 4, 30 minutes/);
  });

  it('opens the sheets, the lessons and the print room in both languages, with their styles and faces', async () => {
    const page = await visit('es/bench/');
    await context.setOffline(true);
    for (const path of ['sheets/cups-we-can-count/?seed=clover', 'es/sheets/', 'lessons/', 'es/lessons/', 'print/', 'es/bench/']) {
      const missing: string[] = [];
      // Whether the farm's own machine is there is asked with HEAD, and may well fail.
      page.on('requestfailed', (request) => {
        if (request.method() === 'GET') missing.push(request.url());
      });
      await page.goto(at(path));
      await page.evaluate(() => document.fonts.ready.then(() => undefined));
      expect(await page.locator('h1').first().textContent()).not.toBe('');
      expect(await page.evaluate(() => getComputedStyle(document.body).fontFamily)).toContain('Andika');
      expect(missing).toEqual([]);
      page.removeAllListeners('requestfailed');
    }
  }); // prettier-ignore

  it('plans a trip in both languages, also one that fails', async () => {
    const page = await visit('trip/');
    await context.setOffline(true);
    await desk.close();
    for (const [path, works, fails] of [
      ['trip/', 'This day works', 'This day does not work yet'],
      ['es/trip/', 'Este día funciona', 'Este día todavía no funciona'],
    ] as const) {
      await page.goto(at(`${path}?children=20`));
      const verdict = page.locator('#verdict-title');
      await page.locator('.trip-form').waitFor();
      expect((await verdict.textContent())?.trim()).toBe(works);
      await page.locator('.adults input').fill('0');
      expect((await verdict.textContent())?.trim()).toBe(fails);
      // What would help is fetched when it is needed.
      await page.locator('.ways-to button').first().click();
      expect((await verdict.textContent())?.trim()).toBe(works);
      expect(await page.evaluate(() => location.search)).toContain('children=20&adults=');
    }
  });

  it('shows what is kept where the network is there and does not answer', async () => {
    const page = await visit('lessons/');
    const port = Number(new URL(desk.url).port);
    await desk.close();
    const mute = createServer(() => {}).listen(port, '127.0.0.1');
    try {
      await page.goto(at('lessons/'), { timeout: 20_000 });
      expect(await page.locator('h1').first().textContent()).not.toBe('');
    } finally {
      mute.close();
    }
  });

  it('keeps what is on the list and no more, pressed', async () => {
    const page = await visit('lessons/');
    const kept = await page.evaluate(async () => {
      const [name = ''] = await caches.keys();
      return (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname);
    });
    expect(kept.sort()).toEqual(
      Object.keys(keptFiles(folder))
        .map((path) => `${site.basePath}${path}`)
        .sort(),
    );
    expect(await keptBytes(page)).toBeLessThan(8_000_000);
  });

  it('does not answer for figures, printed sheets and the board', async () => {
    const page = await visit('bench/');
    await context.setOffline(true);
    const asked = await page.evaluate((base) =>
      Promise.all([`${base}figures.json`, `${base}barn/`, `${base}pdf/`].map((path) => fetch(path).then(() => 'answered', () => 'failed'))), site.basePath); // prettier-ignore
    expect(asked).toEqual(['failed', 'failed', 'failed']);
  });
});

describe('with a network', () => {
  it('shows a page that has changed at once, and the figures as they are', async () => {
    const page = await visit('lessons/');
    rebuild('lessons/index.html', '</h1>', ' anew</h1>');
    writeFileSync(join(folder, 'figures.json'), '{"new":true}');
    await page.reload();
    expect(await page.locator('h1').textContent()).toMatch(/ anew$/);
    expect(await page.evaluate((base) => fetch(`${base}figures.json`).then((one) => one.json()), site.basePath)).toEqual({ new: true }); // prettier-ignore
  });

  it('asks for the worker and for pages each time, as the desk tells it', async () => {
    for (const path of ['offline-worker.js', 'bench/']) {
      const answer = await fetch(at(path));
      expect(answer.headers.get('Cache-Control')).toBe('no-cache');
    }
    expect((await fetch(at('offline-worker.js'))).headers.get('Content-Type')).toContain('javascript');
  });
});

describe('an update from an older worker', () => {
  it('switches to the new site whole and forgets the old one', async () => {
    const page = await visit('lessons/');
    const [old] = await cachesOf(page);
    rebuild('lessons/index.html', '</h1>', ' anew</h1>');
    await update(page);
    const now = await cachesOf(page);
    expect(now).toHaveLength(1);
    expect(now[0]).not.toBe(old);
    await context.setOffline(true);
    await page.reload();
    expect(await page.locator('h1').textContent()).toMatch(/ anew$/);
  });

  it('keeps the old site whole where a file is not of the new build', async () => {
    const page = await visit('lessons/');
    const before = await cachesOf(page);
    // The worker of a build whose page has not arrived.
    const page2 = join(folder, 'lessons', 'index.html');
    const old = readFileSync(page2, 'utf8');
    rebuild('lessons/index.html', '</h1>', ' anew</h1>');
    writeFileSync(page2, old);
    const ended = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      const next = new Promise<ServiceWorker | null>((done) =>
        registration.addEventListener('updatefound', () => done(registration.installing)),
      );
      await registration.update();
      const worker = await next;
      if (!worker) return 'none';
      await new Promise((done) => worker.addEventListener('statechange', done));
      return worker.state;
    });
    expect(ended).toBe('redundant');
    expect(await cachesOf(page)).toEqual(before);
    await context.setOffline(true);
    await page.reload();
    expect(await page.locator('h1').textContent()).not.toMatch(/ anew$/);
  });
});
