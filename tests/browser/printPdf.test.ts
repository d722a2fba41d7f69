// One PDF of a pack from the farm's own machine: tagged, with an outline, keys last, and for this site's pages alone.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { Shelf } from '../../shared/pack/order.ts';
import { openDesk, type Desk } from '../../src/desk/serve.ts';
import { openPackPrinter } from '../../src/print/packPrinter.ts';
import { openVisit, type Visit } from '../support/openPages.ts';
import { hasPoppler, pdfInfo, pdfPages } from '../support/pdf.ts';
import { pdfOutline } from '../support/pdfOutline.ts';

let visit: Visit;
let context: BrowserContext;
let shelf: Shelf;
/** A desk that prints, beside the visit's own, which does not. */
let desk: Desk;
let closePrinter: () => Promise<void>;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({ viewport: { width: 1280, height: 900 } });
  shelf = JSON.parse(readFileSync(join(visit.site.dist, 'print', 'shelf.json'), 'utf8')) as Shelf;
  const printer = openPackPrinter(visit.site.dist, () => desk.url, process.env);
  closePrinter = printer.close;
  desk = await openDesk({ dist: visit.site.dist, prints: join(visit.site.dist, 'none'), basePath: '/', printer }, 0); // prettier-ignore
});
afterAll(async () => {
  await closePrinter?.();
  await desk?.close();
  await visit?.close();
});

async function open(address: string): Promise<Page> {
  const page = await context.newPage();
  onTestFinished(() => page.close());
  await page.goto(address);
  await page.waitForFunction(() => document.documentElement.dataset['sheetReady'] === 'yes');
  return page;
}
const named = (band: string) => shelf.sheets.filter((one) => one.band === band).map(({ name }) => name);

describe('one PDF', () => {
  it('is not offered where nobody prints', async () => {
    const page = await open(new URL('print/?copies=1', visit.desk.url).href);
    await page.waitForLoadState('networkidle');
    expect(await page.getByRole('button', { name: 'One PDF' }).count()).toBe(0);
  });

  it.skipIf(!hasPoppler)(
    'comes from the farm’s own machine: tagged, covered, keys last, with an outline',
    async () => {
      const [first = '', second = ''] = named('3-5');
      const query = `?grade=5&sheets=${first},${second}&copies=3&word=fern&lang=es&paper=a4`;
      const page = await open(new URL(`print/${query}`, desk.url).href);
      await page.getByRole('button', { name: 'One PDF' }).click();
      const link = page.locator('.one-pdf a');
      await link.waitFor({ timeout: 60_000 });
      expect(await link.getAttribute('download')).toBe(`sheets-grade-5-${first}-${second}-3-copies-fern-es-a4.pdf`); // prettier-ignore
      const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
      const file = join(visit.site.dist, '..', 'test-pack.pdf');
      await download.saveAs(file);
      const { facts, sizes } = pdfInfo(file);
      expect(facts['Tagged']).toBe('yes');
      expect(facts['Title']).toMatch(/Grado 5, 6 copias, fern · Hobnail Hill Teaching Dairy$/);
      expect(sizes.every(([width]) => Math.abs(width - (210 / 25.4) * 72) < 1)).toBe(true);
      const pages = pdfPages(file);
      const cover = pages.findIndex((text) => /Página 1 de/.test(text));
      const keys = pages.findIndex((text) => /Respuestas para el grupo/.test(text));
      const papers = await page.locator('.leaf:not(.keys) > .sheet:not(.cover) > .paper').count();
      expect(cover).toBeGreaterThanOrEqual(1);
      expect(pages.slice(cover, keys).every((text) => /Página \d de \d/.test(text))).toBe(true);
      expect(keys - cover).toBe(papers);
      expect(pages.slice(keys).every((text) => /Hoja de respuestas/.test(text))).toBe(true);
      const outline = pdfOutline(file);
      const titles = await page.locator('.pack h1').allTextContents();
      const plain = (text: string) => text.replace(/\s+/g, '');
      expect(outline.map(({ title }) => plain(title))).toEqual(titles.map(plain));
      expect(outline).toHaveLength(5);
      expect(outline.at(-1)?.below[0]?.below).toHaveLength(3);
      expect(readFileSync(file, 'latin1')).toMatch(/\/Lang \(es\)/);
    },
  );

  it('is not given to a page of another origin', async () => {
    const pack = new URL('print/pack.pdf?grade=2&copies=1', desk.url).href;
    const other = createServer((_, response) => {
      response.setHeader('Content-Type', 'text/html');
      response.end(
        `<!doctype html><title>x</title><iframe src="${pack}"></iframe><img src="${pack}" alt="">`,
      );
    });
    await new Promise<void>((done) => void other.listen(0, '127.0.0.1', done));
    onTestFinished(() => void other.close());
    const page = await context.newPage();
    onTestFinished(() => page.close());
    const statuses: number[] = [];
    page.on('response', (response) => {
      if (response.url() === pack) statuses.push(response.status());
    });
    await page.goto(`http://127.0.0.1:${(other.address() as AddressInfo).port}/`, { waitUntil: 'load' });
    expect(statuses.length).toBeGreaterThan(0);
    expect(statuses.filter((status) => status !== 403)).toEqual([]);
  });
});
