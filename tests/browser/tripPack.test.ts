// The pack of a trip as a teacher prints it: what is in it, one PDF from the farm's own machine, the calendar file.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { AxeResults } from 'axe-core';
import ICAL from 'ical.js';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { openDesk, type Desk } from '../../src/desk/serve.ts';
import { openPackPrinter } from '../../src/print/packPrinter.ts';
import { sidewaysScroll } from '../support/inPage.ts';
import { openVisit, type Visit } from '../support/openPages.ts';
import { hasPoppler, pdfInfo, pdfPages } from '../support/pdf.ts';
import { pdfOutline } from '../support/pdfOutline.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const MOST_SCRIPT_bytes = 60_000;
const SMALL = '?date=2026-05-27&children=6&adults=2';

let visit: Visit;
let context: BrowserContext;
let desk: Desk;
let closePrinter: () => Promise<void>;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({
    viewport: { width: 1280, height: 900 },
    serviceWorkers: 'block',
  });
  const printer = openPackPrinter(visit.site.dist, () => desk.url, process.env);
  closePrinter = printer.close;
  desk = await openDesk({ dist: visit.site.dist, prints: join(visit.site.dist, 'none'), basePath: '/', printer }, 0); // prettier-ignore
});
afterAll(async () => {
  await closePrinter?.();
  await desk?.close();
  await visit?.close();
});

async function open(path: string, from: BrowserContext = context, ready = true): Promise<Page> {
  const page = await from.newPage();
  onTestFinished(() => page.close());
  await page.goto(new URL(path, desk.url).href);
  if (ready) await page.waitForFunction(() => document.documentElement.dataset['sheetReady'] === 'yes');
  return page;
}

describe('the pack of a trip', () => {
  it.skipIf(!hasPoppler)(
    'comes as one PDF: tagged, in both languages, papers first, a copy for each child, keys last (skipped without poppler-utils)',
    async () => {
      const page = await open(`es/trip/pack/${SMALL}&paper=a4&word=fern`);
      await page.getByRole('button', { name: 'Un solo PDF' }).click();
      const link = page.locator('.one-pdf a');
      await link.waitFor({ timeout: 60_000 });
      expect(await link.getAttribute('download')).toBe('trip-2026-05-27-grade-2-6-children-0930-fern-es-a4.pdf');
      const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
      const file = join(visit.site.dist, '..', 'test-trip-pack.pdf');
      await download.saveAs(file);
      const { facts, sizes } = pdfInfo(file);
      expect(facts['Tagged']).toBe('yes');
      expect(facts['Title']).toMatch(
        /^27 de mayo de 2026, Grado 2, 6 estudiantes · Hobnail Hill Teaching Dairy$/,
      );
      // A4 by ISO 216.
      expect(sizes.every(([width]) => Math.abs(width - (210 / 25.4) * 72) < 1)).toBe(true);
      const pages = pdfPages(file);
      const first = (text: RegExp) => pages.findIndex((one) => text.test(one));
      const papers = await page.locator('.trip-paper').count();
      expect(papers).toBeGreaterThanOrEqual(8);
      const sheet = first(/Página 1 de/);
      const keys = first(/Respuestas para el grupo/);
      expect(sheet).toBeGreaterThanOrEqual(papers);
      expect(pages.slice(0, sheet).join()).toContain('608-555-0142');
      const copies = pages.filter((text) => /Página 1 de \d/.test(text)).length;
      expect(copies).toBe(12);
      expect(pages.slice(keys).every((text) => /Hoja de respuestas/.test(text))).toBe(true);
      expect(pages.slice(0, keys).some((text) => /Hoja de respuestas/.test(text))).toBe(false);
      // A letter home in each language, each told to a screen reader in its own.
      const raw = readFileSync(file, 'latin1');
      expect(raw).toMatch(/\/Lang \(es\)/);
      expect(raw).toMatch(/\/Lang \(en\)/);
      const titles = await page.locator('.pack h1').allTextContents();
      const plain = (text: string) => text.replace(/\s+/g, '');
      expect(pdfOutline(file).map(({ title }) => plain(title))).toEqual(titles.map(plain));
      // Lines of a paper's heading are joined by a space, as a reader of the outline hears them.
      const headings = await page.locator('.trip-paper h1').allTextContents();
      expect(
        pdfOutline(file)
          .slice(0, headings.length)
          .map(({ title }) => title),
      ).toEqual(headings.map((text) => text.trim()));
    },
  );

  it('keeps what is ticked in the address, and fetches no sheets where none is wanted', async () => {
    const page = await open(`trip/pack/${SMALL}&pack=home.emergency`);
    expect(await page.locator('.trip-paper h1').count()).toBe(3);
    expect(await page.locator('.pack .leaf').count()).toBe(0);
    await page.getByLabel('Timetable').check();
    await page.getByLabel('Letter home').uncheck();
    expect(new URL(page.url()).searchParams.get('pack')).toBe('timetable.emergency');
    await page.getByLabel('Paper size').selectOption({ label: 'A4' });
    await page.reload();
    await page.locator('.trip-paper').first().waitFor();
    expect(await page.getByLabel('Timetable').isChecked()).toBe(true);
    expect(await page.getByLabel('Letter home').isChecked()).toBe(false);
    expect(await page.locator('nav a[hreflang="es"]').getAttribute('href')).toContain('pack=timetable.emergency&paper=a4'); // prettier-ignore
    expect(await page.locator('nav a').first().getAttribute('href')).toBe('/trip/?date=2026-05-27&children=6&adults=2'); // prettier-ignore
  });

  it('gives a calendar file whose entries lie on the farm’s clock', async () => {
    const page = await open(`trip/pack/${SMALL}&pack=emergency`);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Calendar file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('trip-2026-05-27-grade-2-6-children-0930.ics');
    const calendar = ICAL.Component.fromString(readFileSync((await download.path()) ?? '', 'utf8'));
    const events = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    expect(events.length).toBeGreaterThan(6);
    // 9:30 in Chicago's summer is 14:30 in Greenwich (five hours behind, time zone database).
    const [whole] = events;
    expect([whole?.startDate.toJSDate().toISOString(), whole?.endDate.toJSDate().toISOString()]).toEqual(['2026-05-27T14:30:00.000Z', '2026-05-27T18:00:00.000Z']); // prettier-ignore
  });

  it('says why where the day does not work, and leads back with the same numbers', async () => {
    const page = await open('trip/pack/?date=2026-05-27&adults=2&grade=15', context, false);
    await page.locator('.whys li').first().waitFor();
    expect(await page.locator('.whys').textContent()).toContain('you have 2');
    expect(await page.locator('main a').getAttribute('href')).toBe('/trip/?date=2026-05-27&adults=2');
    expect(await page.locator('.pack').count()).toBe(0);
  });

  it('passes axe on a phone, without a sideways scroll', async () => {
    const phone = await visit.browser.newContext({ viewport: { width: 360, height: 740 }, serviceWorkers: 'block' }); // prettier-ignore
    const page = await open(`es/trip/pack/${SMALL}&pack=timetable.lesson-before`, phone);
    expect(await page.evaluate(sidewaysScroll)).toEqual([]);
    await page.evaluate(axeSource);
    const found = await page.evaluate(() =>
      (window as unknown as { axe: { run(at: Document): Promise<AxeResults> } }).axe.run(document),
    );
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')}`)).toEqual([]);
    await phone.close();
  });

  it(`loads at most ${MOST_SCRIPT_bytes} bytes of script at once, gzipped`, () => {
    const { dist } = visit.site;
    const html = readFileSync(join(dist, 'trip', 'pack', 'index.html'), 'utf8');
    const files = new Set([...html.matchAll(/<script[^>]*\ssrc="\/([^"]+)"/g)].map(([, file = '']) => file));
    const textOf = (file: string) => readFileSync(join(dist, file), 'utf8');
    for (const file of files)
      for (const [, name = ''] of textOf(file).matchAll(/(?:\bfrom|\bimport)\s*["']([^"']+\.js)["']/g))
        files.add(posix.join(posix.dirname(file), name));
    const sum = [...files].reduce((so, file) => so + gzipSync(textOf(file), { level: 9 }).length, 0);
    expect(sum).toBeGreaterThan(10_000);
    expect(sum).toBeLessThanOrEqual(MOST_SCRIPT_bytes);
  });
});
