// Labels from a book that is being written, and a routine that is ticked at a milking: in a real browser, on a phone.
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EntryPost } from '../../shared/book/types.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { builtSite } from '../support/builtSite.ts';
import { openBookDesk, type BookDesk } from '../support/openBookDesk.ts';
import { sidewaysScroll } from '../support/inPage.ts';

let desk: BookDesk;
let browser: Awaited<ReturnType<typeof startChromium>>;
let context: BrowserContext;
const PHONE = { width: 360, height: 740 };
// Seven in the morning and six in the evening of a summer day in Chicago (UTC−5), the demo farm's zone.
const MORNING = '2026-05-21T07:00:00-05:00';
const EVENING = '2026-05-21T18:00:00-05:00';

async function open(path: string, at?: string): Promise<Page> {
  const page = await context.newPage();
  if (at !== undefined) await page.clock.setFixedTime(at);
  await page.goto(new URL(path, desk.url).href);
  await page.waitForFunction(() => document.documentElement.dataset['sheetReady'] === 'yes');
  return page;
}

beforeAll(async () => {
  const site = await builtSite('demo');
  [desk, browser] = await Promise.all([openBookDesk({ dist: site.dist }), startChromium()]);
  context = await browser.newContext({ viewport: PHONE, hasTouch: true, serviceWorkers: 'block' });
});
afterAll(async () => {
  await browser?.close();
  await desk?.close();
});

describe('labels beside a desk', () => {
  it('take a row at once that somebody enters, and say large that its milk is withheld', async () => {
    const page = await open('labels/?date=2026-05-21&milking=am');
    await expect.poll(() => page.locator('.source').textContent()).toContain("on the farm's machine");
    expect(await page.locator('.label-page').getByText('WITHHELD').count()).toBe(0);
    const now = Date.now();
    const entry = { id: 'AAAAAAAAAAAAAAAAAAAAAA', doe: 'tansy', date: '2026-05-21', milking: 'am', amount: '9', unit: 'cup', use: 'withheld', note: '', sure: true, saw: null, entered_ms: now } as const; // prettier-ignore
    const post: EntryPost = { sent_ms: now, entries: [entry] };
    const answered = await page.evaluate(
      async (body) =>
        (await fetch('/desk/entries', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body })).status,
      JSON.stringify(post),
    ); // prettier-ignore
    expect(answered).toBe(200);
    // 9 cups are a jar of 8 and a cup more: two jars, each with its warning.
    await expect.poll(() => page.locator('.label-page').getByText('WITHHELD').count()).toBe(2);
    expect(await page.evaluate(sidewaysScroll)).toEqual([]);
    await page.close();
  });

  it('are pasteurized only on a day on which raw milk may still wait', async () => {
    const page = await open('labels/?date=2026-05-14&milking=am&pasteurized=2026-05-20');
    expect(await page.getByRole('alert').first().textContent()).toContain('Raw milk waits at most until');
    expect(await page.locator('.label-page').getByText('Raw: do not drink').count()).toBeGreaterThan(0);
    expect(await page.locator('.label-page').getByText('Use by').count()).toBe(0);
    await page.close();
  });
});

describe('the routine at a milking', () => {
  it('keeps its ticks on this phone, frees the steps for the next doe, and begins anew with the next milking', async () => {
    const page = await open('routine/', MORNING);
    const ticked = () => page.locator('.tick-list input:checked').count();
    const box = (n: number) => page.locator('.tick-list input').nth(n - 1);
    for (const n of [1, 2, 4]) await box(n).check();
    await page.reload();
    await expect.poll(ticked).toBe(3);
    await page.getByRole('button', { name: 'Tansy, not yet' }).click();
    // The hands are washed once; what was done with Tansy is free for the doe after her.
    expect(await ticked()).toBe(1);
    expect(await page.getByRole('button', { name: 'Tansy, milked' }).getAttribute('aria-pressed')).toBe('true'); // prettier-ignore
    await page.clock.setFixedTime(EVENING);
    await page.reload();
    await expect.poll(() => page.getByText('p.m.').count()).toBeGreaterThan(0);
    expect(await ticked()).toBe(0);
    expect(await page.evaluate(sidewaysScroll)).toEqual([]);
    await page.close();
  });

  it('tells by the thermometer whether the milk was cold in time, and what to do where it was not', async () => {
    const page = await open('routine/', MORNING);
    await page.getByLabel('Milking began').first().fill('06:30');
    await page.getByLabel('Milking ended').first().fill('07:30');
    const read = async (degrees: string, at: string) => {
      await page.getByLabel('Milk, °F').fill(degrees);
      await page.getByLabel('At', { exact: true }).fill(at);
      await page.getByRole('button', { name: 'Write it down' }).click();
    };
    const verdicts = () => page.locator('.marks strong').allTextContents();
    expect(await verdicts()).toEqual(['not known', 'not known', 'not known']);
    // 45 °F two hours after the end is in time by the ordinance, and not by the stricter practice.
    await read('45', '09:30');
    expect(await verdicts()).toEqual(['in time', 'too late', 'in time']);
    expect(await page.locator('.chill-clock .note').count()).toBe(0);
    await page.getByRole('button', { name: 'Take out' }).click();
    await read('47', '09:30');
    expect(await verdicts()).toEqual(['too late', 'too late', 'in time']);
    expect(await page.locator('.chill-clock .note').textContent()).toContain('health department');
    await page.close();
  });
});
