// The calendar in a browser: no school stands in a built file, a teacher's link becomes a visit, a class gets its sheet.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readFarm } from '../../src/farm/readFarm.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { openBookDesk, type BookDesk } from '../support/openBookDesk.ts';

let site: TestSite;
let desk: BookDesk;
let browser: Browser;
let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  site = await builtSite('demo');
  [desk, browser] = await Promise.all([openBookDesk({ dist: site.dist }), startChromium()]);
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    if (new URL(request.url()).origin !== new URL(desk.url).origin) complaints.push(`asks ${request.url()}`);
  });
});
afterAll(async () => {
  await browser?.close();
  await desk?.close();
});

it('no file of the built site names a school, its code or its file', () => {
  const farm = readFarm(desk.farm, { now_ms: 0 });
  if (!farm.ok) throw new Error('The demo farm cannot be read.');
  const secrets = (farm.visits ?? []).flatMap(({ school, note, file }) => [file, note, /^\d+$/.test(school) ? `"${school}"` : school]); // prettier-ignore
  expect(secrets.length).toBeGreaterThan(5);
  const texts = readdirSync(site.dist, { recursive: true, encoding: 'utf8' }).filter((name) => /\.(html|json|js|txt|xml)$/.test(name)); // prettier-ignore
  for (const name of texts) {
    const text = readFileSync(join(site.dist, name), 'utf8');
    for (const secret of secrets) if (secret !== '') expect(text.includes(secret), `${name}: ${secret}`).toBe(false); // prettier-ignore
  }
});

it("plans a teacher's link against the visits on file, keeps it, and takes its state further", async () => {
  await page.goto(`${desk.url}visits/`);
  await page.getByText('Millpond School, class fern').first().waitFor();
  const link = 'https://elsewhere.example/trip/?date=2026-05-27&grade=2&children=30&adults=7&arrive=8:50&leave=12:15&buses=1&lunch=no&stations=goat-barn.kid-table.measuring-table'; // prettier-ignore
  await page.locator('.take-over textarea').fill(link);
  await page.locator('.take-over .verdict.hand').waitFor();
  expect(await page.locator('.take-over .visit-findings li').first().textContent()).toContain('Millpond School'); // prettier-ignore
  await page.locator('.take-over textarea').fill(link.replace('05-27', '05-29'));
  await page.locator('.take-over .verdict.good').waitFor();
  await page.getByLabel('School, or a code').fill('Heron Lake');
  await page.getByRole('button', { name: 'Keep this visit' }).click();
  const row = page.locator('.month-visits li', { hasText: 'Heron Lake' });
  await row.waitFor();
  await row.locator('select').selectOption('agreed');
  await page.locator('.month-visits .told', { hasText: 'now agreed' }).waitFor();
  expect(readFileSync(join(desk.farm, 'visits', '2026-05-29-heron-lake.yaml'), 'utf8')).toContain('state: agreed\n'); // prettier-ignore
  // From the list the coordinator comes to the very plan, where the pack is printed.
  const plan = await row.getByRole('link', { name: 'The plan and its pack' }).getAttribute('href');
  expect(plan).toMatch(
    /\/trip\/\?date=2026-05-29&children=30&.*stations=goat-barn\.measuring-table\.kid-table/,
  );
  expect(complaints).toEqual([]);
});

it('makes a class its sheet, and keeps in the address what was understood', async () => {
  await page.goto(`${desk.url}visits/after/?grade=7`);
  await page.locator('html[data-sheet-ready]').waitFor();
  await page.getByLabel('What was measured').selectOption('height');
  await page.getByLabel('The numbers', { exact: true }).or(page.getByLabel(/^The numbers/)).first().fill('4 x 3\n5 x 5\nAna\n6 x 2'); // prettier-ignore
  await page.locator('.dot-plot').first().waitFor();
  expect(await page.locator('.key .answer', { hasText: '4.9' }).count()).toBeGreaterThan(0);
  expect(page.url()).toContain('numbers=4x3_5x5_6x2');
  expect(page.url()).not.toContain('Ana');
  expect(complaints).toEqual([]);
});
