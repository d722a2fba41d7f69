// The list of sheets and the page of standards as a teacher meets them: light, whole, and every way out of them leads on.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BANDS } from '../../shared/quantity/grade.ts';
import { STANDARDS } from '../../shared/tasks/standards.ts';
import { openPage, openVisit, pagePaths, type Visit } from '../support/openPages.ts';

/** Most that the list may weigh, bytes: a slow school line carries it in a few seconds. */
const MOST_BYTES = 400_000;
const LANGUAGES = [
  ['en', ''],
  ['es', 'es/'],
] as const;

let visit: Visit;
let context: BrowserContext;
beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({ viewport: { width: 1280, height: 800 } });
});
afterAll(async () => {
  await visit?.close();
});

const open = async (path: string): Promise<Page> => (await openPage(visit, context, path)).page;
const hrefs = (page: Page, selector: string): Promise<string[]> =>
  page.$$eval(selector, (links) => links.map((link) => link.getAttribute('href') ?? ''));

describe.each(LANGUAGES)('the list of sheets in %s', (_lang, prefix) => {
  it('shows every sheet of the site once, and its way to the print room', async () => {
    const page = await open(`${prefix}sheets/`);
    const listed = await hrefs(page, '.sheet-list h4 a');
    const own = pagePaths(visit.site).filter((path) => new RegExp(`^${prefix}sheets/[^/]+/$`).test(path));
    expect([...listed].sort()).toEqual(own.map((path) => `/${path}`).sort());
    expect(listed.length).toBeGreaterThanOrEqual(24);
    const names = listed.map((path) => path.split('/').at(-2));
    const packs = await hrefs(page, '.sheet-list a[href*="/print/"]');
    expect(packs).toEqual(names.map((name) => `/${prefix}print/?sheets=${name}`));
    await page.close();
  });

  it('parts them by grades and by the stages of a visit', async () => {
    const page = await open(`${prefix}sheets/`);
    expect(await hrefs(page, '.to-band a')).toEqual(BANDS.map((band) => `#band-${band}`));
    const stages = await page.$$eval('.sheet-band', (bands) =>
      bands.map((band) => [...band.querySelectorAll('.stage')].map((one) => one.querySelectorAll('.sheet-list > li').length)),
    ); // prettier-ignore
    expect(stages.map((counts) => counts.length)).toEqual([3, 3, 3, 3]);
    expect(stages.flat().every((count) => count >= 2)).toBe(true);
    await page.close();
  });

  it('is light, with a picture of every sheet', async () => {
    const file = join(visit.site.dist, prefix, 'sheets', 'index.html');
    expect(readFileSync(file).length).toBeLessThan(MOST_BYTES);
    const page = await open(`${prefix}sheets/`);
    const [pictures, sheets] = await Promise.all([
      page.locator('.sheet-list .mini svg').count(),
      page.locator('.sheet-list > li').count(),
    ]);
    expect(pictures).toBe(sheets);
    await page.close();
  });

  it('leads with one press to the print room, where that sheet is chosen', async () => {
    const page = await open(`${prefix}sheets/`);
    const title = await page.locator('.sheet-list h4').first().innerText();
    await page.locator('.sheet-list a[href*="/print/"]').first().click();
    await page.waitForURL(/\/print\//);
    await page.locator('.sheet .title', { hasText: title }).first().waitFor({ timeout: 20_000 });
    await page.close();
  });
});

describe.each(LANGUAGES)('the page of standards in %s', (_lang, prefix) => {
  it('names every standard once, with links for those that are supported', async () => {
    const page = await open(`${prefix}standards/`);
    const codes = await page.$$eval('.supported .code, .not-yet b', (marks) =>
      marks.map((mark) => mark.textContent?.trim() ?? ''),
    );
    expect([...codes].sort()).toEqual(Object.keys(STANDARDS).sort());
    const bare = await page.$$eval(
      '.supported > li',
      (rows) => rows.filter((row) => !row.querySelector('a')).length,
    );
    expect(bare).toBe(0);
    await page.close();
  });

  it('carries the frameworks’ notices and promises nothing', async () => {
    const page = await open(`${prefix}standards/`);
    const text = (await page.locator('main').innerText()).replace(/\s+/g, ' ');
    expect(text).toContain('WestEd');
    expect(text).toContain('© Copyright 2010. National Governors Association');
    expect(text).not.toMatch(/\baligned\b|\balinead[oa]s?\b/i);
    await page.close();
  });
});
