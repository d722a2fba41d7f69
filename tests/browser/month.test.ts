// The month of the book beside a desk: an entry appears by itself, corrections open by a tap, a file comes in and is seen.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startChromium } from '../../src/print/chromium.ts';
import { builtSite } from '../support/builtSite.ts';
import { openBookDesk, type BookDesk } from '../support/openBookDesk.ts';

let desk: BookDesk;
let browser: Browser;
let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  const { dist } = await builtSite('demo');
  [desk, browser] = await Promise.all([openBookDesk({ dist }), startChromium()]);
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()} ${response.url()}`);
  });
  await page.goto(`${desk.url}book/month/`);
  await page.locator('.take-away select').first().waitFor();
});
afterAll(async () => {
  await browser?.close();
  await desk?.close();
});

const monday = () => page.locator('.month-table tbody tr').nth(17);

describe('the month beside a desk', () => {
  it('shows the gap of May 18 with the way to enter it', async () => {
    const enter = page.locator('.lack li', { hasText: 'Tansy' }).locator('a');
    expect(await enter.getAttribute('href')).toBe('/book/?date=2026-05-18&milking=pm');
    expect(await monday().locator('.missing').count()).toBe(1);
  });

  it('takes in what is entered elsewhere, without being loaded anew', async () => {
    const now = Date.now();
    await desk.keeper.write({
      sent_ms: now,
      entries: [
        {
          ...{
            id: 'month-browser-test-0a1',
            doe: 'tansy',
            date: '2026-05-18',
            milking: 'pm',
            amount: '7 1/4',
          },
          ...{ unit: 'cup', use: 'kept', note: '', sure: false, saw: null, entered_ms: now },
        },
      ],
    });
    await monday().locator('td', { hasText: '7¼' }).first().waitFor({ timeout: 5000 });
    expect(await monday().locator('.missing').count()).toBe(0);
    expect(await page.locator('.lack', { hasText: 'missing' }).count()).toBe(0);
  });

  it('opens a corrected milking with the row that stood before', async () => {
    await page.locator('.month-table tbody tr').nth(7).locator('button:has(s)').click();
    const rows = page.locator('dialog .cell-rows li');
    expect(await rows.count()).toBe(2);
    expect(await rows.nth(1).locator('s').textContent()).toContain('1½ cups');
    await page.keyboard.press('Escape');
    await page.locator('dialog').waitFor({ state: 'detached' });
  });

  it('steps to another month and back by the browser’s own button', async () => {
    await page.locator('.month-steps a[rel=prev]').click();
    await page.locator('h1', { hasText: 'April 2026' }).waitFor();
    await page.goBack();
    await page.locator('h1', { hasText: 'May 2026' }).waitFor();
  });

  it('hands out the month as a file', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('.take-away a', { hasText: 'As CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^milk-book-2026-05-01-to-2026-05-\d\d\.csv$/);
    expect(complaints).toEqual([]);
  });
});

describe('rows from a file', () => {
  it('are shown, asked about, written, and then known', async () => {
    await page.goto(`${desk.url}book/import/`);
    await page.locator('input[type=file]:enabled').waitFor({ state: 'attached' });
    const text = 'Date,Doe,AM,PM\n2/3/2024,Junie,9 1/2,8\n2/28/2024,Juniper,soon,7\n';
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'old.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
    const write = page.locator('.import-sum button');
    await expect.poll(() => write.textContent()).toContain('Write 1 row');
    expect(await page.locator('.lines .faults .where').allTextContents()).toEqual(['B2', 'C3']);
    await page
      .locator('.asks label', { hasText: 'Junie' })
      .locator('select')
      .selectOption({ label: 'Juniper' });
    await expect.poll(() => write.textContent()).toContain('Write 3 rows');
    await write.click();
    await page.locator('.done', { hasText: '3 rows are in the book' }).waitFor();
    await expect.poll(() => write.textContent()).toContain('nothing to write');
    expect(await page.locator('.lines .known').count()).toBe(3);
    expect(complaints).toEqual([]);
  });
});
