// What an open page tells of an entry, and how it takes its new numbers once the site has been made anew.
import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { openRebuilder, REBUILD_TIMES, type Rebuilt } from '../../src/desk/rebuild.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { builtSite } from '../support/builtSite.ts';
import { openBookDesk, type BookDesk } from '../support/openBookDesk.ts';
import { serveCopy } from '../support/servedCopy.ts';

const SOON = { timeout: 15_000, interval: 30 };
const PAGES = ['herd', 'es/milk', 'bench'];
const FAULTY: Rebuilt = {
  ok: false,
  again: false,
  failure: {
    why: 'book',
    faults: [{ file: 'does.csv', line: 3, column: 5, text: 'found "Alpin"; nearest "Alpine"' }],
  },
};

let browser: Browser;
let context: BrowserContext;
let dist = '';
let desk: BookDesk;
let complaints: string[] = [];
let ends: Rebuilt = { ok: true, fresh: false };
let builds = 0;

beforeAll(async () => {
  const site = await builtSite('demo');
  dist = join(mkdtempSync(join(tmpdir(), 'live-strip-')), 'dist');
  cpSync(site.dist, dist, { recursive: true });
  writeFileSync(join(dist, '.built'), 'build 0\n');
  const work = {
    build: () => Promise.resolve(makeAnew()),
    stands_ms: () => Date.now(),
    now_ms: () => Date.now(),
  };
  const rebuild = openRebuilder(work, null, { ...REBUILD_TIMES, quiet: 700, apart: 200 });
  desk = await openBookDesk({ dist, more: { rebuild } });
  browser = await startChromium();
});
afterAll(async () => {
  await browser?.close();
  await desk?.close();
  rmSync(join(dist, '..'), { recursive: true, force: true });
});
afterEach(async () => {
  await context.close();
  expect(complaints).toEqual([]);
});

/** Swaps a site in that says on some pages which build it is. */
function makeAnew(): Rebuilt {
  if (!ends.ok) return ends;
  builds += 1;
  const side = `${dist}-side`;
  cpSync(dist, side, { recursive: true });
  for (const name of PAGES) {
    const file = join(side, name, 'index.html');
    const text = readFileSync(file, 'utf8').replace(
      /(<p id="nth">.*?<\/p>)?<\/main>/,
      `<p id="nth">${builds}</p></main>`,
    );
    // The bench is made from what its script is given.
    writeFileSync(file, text.replace(/(id="bench-props"[^>]*>\{)/, `$1"nth":${builds},`));
  }
  writeFileSync(join(side, '.built'), `build ${builds}\n`);
  renameSync(dist, `${dist}-old`);
  renameSync(side, dist);
  rmSync(`${dist}-old`, { recursive: true });
  return ends;
}

async function open(path: string, url = desk.url): Promise<Page> {
  complaints = [];
  context = await browser.newContext({ viewport: { width: 390, height: 740 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('requestfailed', (request) => {
    // The stream ends with its page.
    if (!request.url().includes('/events?')) complaints.push(`failed: ${request.method()} ${request.url()}`);
  });
  const listening = page.waitForResponse(/\/events\?/, { timeout: 4_000 }).catch(() => null);
  await page.goto(url + path, { waitUntil: 'load' });
  if (url === desk.url) expect(await listening).not.toBeNull();
  return page;
}
let eighths = 0;
const enter = () =>
  desk.keeper.write({
    sent_ms: Date.now(),
    entries: [{ id: Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64url'), doe: 'juniper', date: '2026-05-21', milking: 'am', amount: `${(eighths += 1)}/8`, unit: 'cup', use: 'kept', note: '', sure: true, saw: null, entered_ms: Date.now() }],
  }); // prettier-ignore
const strip = (page: Page) => page.getByRole('status');

describe('a page that stands open', () => {
  it('tells of an entry, then takes its new numbers in without losing the place of who reads', async () => {
    ends = { ok: true, fresh: false };
    const page = await open('herd/');
    const link = page.locator('main a').nth(3);
    await link.focus();
    await page.evaluate(() => window.scrollTo({ top: 1200, behavior: 'instant' }));
    const before = await page.evaluate(() => ({ top: window.scrollY, focus: document.activeElement?.textContent, loaded: performance.timeOrigin })); // prettier-ignore
    await enter();
    await expect.poll(() => strip(page).textContent(), SOON).toMatch(/^Juniper, this morning: 0\.13 cups\. Milk of .*: [\d.]+ cups\. This page follows in a moment\.$/); // prettier-ignore
    expect(await page.locator('#nth').count()).toBe(0);
    await expect.poll(() => page.locator('#nth').textContent(), SOON).toMatch(/^[1-9]/);
    await expect.poll(() => strip(page).textContent(), SOON).toBe('This page has the new numbers now.');
    const after = await page.evaluate(() => ({ top: window.scrollY, focus: document.activeElement?.textContent, loaded: performance.timeOrigin })); // prettier-ignore
    expect(after).toEqual(before);
    await page.emulateMedia({ media: 'print' });
    expect(await strip(page).isVisible()).toBe(false);
  });

  it('tells it in the page’s language', async () => {
    const page = await open('es/milk/');
    await enter();
    await expect
      .poll(() => strip(page).textContent(), SOON)
      .toMatch(/^Juniper, esta mañana: 0\.25 tazas\. Leche del /);
    await expect.poll(() => strip(page).textContent(), SOON).toBe('Esta página ya tiene los números nuevos.');
  });

  it('on which somebody may have filled something in waits to be asked', async () => {
    const page = await open('bench/');
    const loaded = await page.evaluate(() => performance.timeOrigin);
    await enter();
    const button = page.getByRole('button', { name: 'Show the new numbers' });
    await button.waitFor({ timeout: 15_000 });
    expect(await page.evaluate(() => performance.timeOrigin)).toBe(loaded);
    await button.click();
    await expect.poll(() => page.evaluate(() => performance.timeOrigin), SOON).not.toBe(loaded);
  });

  it('keeps its numbers where the site cannot be made, and the desk’s page says why', async () => {
    ends = FAULTY;
    const page = await open('herd/');
    await enter();
    await expect
      .poll(() => strip(page).textContent(), SOON)
      .toBe('This page keeps the numbers from before for now.');
    await page.goto(`${desk.url}desk/`);
    await expect.poll(() => page.locator('.faults').textContent(), SOON).toMatch(/does\.csv\s*line 3, column 5\s*found "Alpin"; nearest "Alpine"/); // prettier-ignore
  });

  it('asks for nothing in vain where no desk serves it', async () => {
    const copy = await serveCopy({ dist, basePath: '/', env: {} });
    try {
      const page = await open('herd/', copy.at(''));
      await page.waitForTimeout(500);
      expect(copy.asked.filter((path) => /events|desk\//.test(path))).toEqual([]);
      expect(await strip(page).textContent()).toBe('');
      await page.goto(copy.at('desk/'));
      await expect.poll(() => strip(page).textContent(), SOON).toContain('without the farm');
    } finally {
      await copy.close();
    }
  });
});
