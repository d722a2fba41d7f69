// Guess the pail, and the farm's page: guesses by tap, the milk from the book, counts with small ones hidden, paper.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { boardFarm } from '../../shared/board/boardFarm.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { readFarm } from '../../src/farm/readFarm.ts';
import { openPage, openVisit, type Visit } from '../support/openPages.ts';
import { hasPoppler, pdfInfo } from '../support/pdf.ts';

const SLIP_ms = 750;
let visit: Visit;

beforeAll(async () => {
  visit = await openVisit('demo');
});
afterAll(async () => {
  await visit?.close();
});

/** A board with nothing kept, or with what is given. */
async function board(kept: Readonly<Record<string, string>> = {}): Promise<BrowserContext> {
  const context = await visit.browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true, serviceWorkers: 'block' }); // prettier-ignore
  onTestFinished(() => context.close());
  await context.addInitScript((texts) => {
    if (sessionStorage.getItem('test.set')) return;
    sessionStorage.setItem('test.set', 'yes');
    for (const [name, text] of Object.entries(texts)) localStorage.setItem(name, text);
  }, kept);
  return context;
}

async function open(context: BrowserContext, path: string): Promise<Page> {
  const { page, complaints } = await openPage(visit, context, path);
  onTestFinished(() => expect(complaints).toEqual([]));
  await page.waitForSelector('[data-awake]');
  return page;
}

/** A tap, and what comes of it: the page has it once the button has been seen pressed. */
async function tap(page: Page, what: string): Promise<void> {
  await page.tap(what);
  await page.waitForFunction(() => document.querySelector('button.pressed') === null);
}

/** Children guess one after the other. */
async function guess(page: Page, guesses: readonly number[]): Promise<void> {
  for (const [place, parts] of guesses.entries()) {
    if (place > 0) {
      await page.waitForTimeout(SLIP_ms);
      await tap(page, '[data-way="next-child"]');
    }
    await tap(page, `button[data-parts="${parts}"]`);
  }
}

/** The board's farm a day later: the demo's book goes on. */
function dayLater(): unknown {
  const reading = readFarm('content/farm', { asOf: '2026-05-22', now_ms: 0 });
  if (!reading.ok) throw new Error('The demo farm cannot be read.');
  const { farm, book, asOf } = reading;
  return JSON.parse(JSON.stringify(boardFarm(farm, book, openLedger(book, asOf))));
}
const live = (page: Page) =>
  page.evaluate(
    (detail) => void document.dispatchEvent(new CustomEvent('board:live', { detail })),
    dayLater(),
  );
const keptIn = (page: Page, name: string) => page.evaluate((key) => localStorage.getItem(key), name);
const dots = (page: Page) => page.locator('.guess-dots circle:not([r="0"])').count();

describe('guessing', () => {
  it('counts a tap, shows where it falls, and takes one guess a turn', async () => {
    const page = await open(await board(), 'barn/pail/');
    const choices = await page.locator('.guess-choices button').count();
    expect(choices).toBeGreaterThanOrEqual(5);
    await guess(page, [6]);
    expect(await page.locator('.guess-choices').count()).toBe(0);
    expect(await page.locator('.said').textContent()).toContain('You are the first to guess.');
    // A second tap of the same hand does not pass the board on; a reload shows the same guess.
    await tap(page, '[data-way="next-child"]');
    expect(await page.locator('.guess-choices').count()).toBe(0);
    await page.reload();
    await page.waitForSelector('[data-awake]');
    expect(await page.locator('.said').textContent()).toContain('Your guess is 6 cups.');
    const kept = JSON.parse((await keptIn(page, 'pailside.guesses')) ?? '') as unknown;
    expect(kept).toEqual([
      { date: '2026-05-22', milking: 'am', doe: 'maribel', part: 'cup', counts: { 6: 1 } },
    ]);
  });

  it('shows all dots, the middle guess and the milk once it is in the book', async () => {
    const page = await open(await board(), 'barn/pail/');
    await guess(page, [4, 9, 6, 5, 6]);
    // Five dots, and the mark within the child's own.
    expect(await dots(page)).toBe(6);
    expect(await page.locator('.guessing').textContent()).not.toContain('She gave');
    await live(page);
    // The book has 6.25 cups of Maribel on May 22, a.m.; of 4 5 6 6 9 the middle is 6.
    expect(await page.locator('.question:visible').textContent()).toBe('She gave 6 cups.');
    expect(await page.locator('.said').textContent()).toContain('The middle guess is 6 cups.');
    await page.tap('[data-level-switch]');
    expect(await page.locator('.question:visible').textContent()).toBe('She gave 6¼ cups.');
    expect(await page.locator('.said').textContent()).toContain('The middle guess is ¼ cup too low.');
    await tap(page, '[data-way="next"]');
    expect(await page.locator('.guess-choices button').count()).toBeGreaterThanOrEqual(5);
  });

  it('shows the milk of a guess from before at once, where the page is built with it', async () => {
    // The demo's book is built up to May 21: Hester was asked that evening.
    const guesses = [
      { date: '2026-05-21', milking: 'pm', doe: 'hester', part: 'cup', counts: { 8: 2, 9: 3, 10: 1 } },
    ];
    const page = await open(await board({ 'pailside.guesses': JSON.stringify(guesses) }), 'es/barn/pail/');
    expect(await page.locator('.guessing').getAttribute('data-view')).toBe('known');
    expect(await dots(page)).toBe(6);
  });

  it('begins afresh when the board goes home by itself, and keeps the counts', async () => {
    const page = await open(await board(), 'barn/pail/');
    await guess(page, [7]);
    await page.evaluate(() => void document.dispatchEvent(new CustomEvent('board:forget')));
    expect(await page.locator('.guess-choices').count()).toBe(1);
    expect(await keptIn(page, 'pailside.guesses')).toContain('"7":1');
  });

  it.each(['{', '[1,{"date":"x"}]', '{"a":1}', 'null'])('goes on with %s in the storage', async (text) => {
    const page = await open(await board({ 'pailside.guesses': text, 'pailside.asked': text }), 'barn/pail/');
    await guess(page, [5]);
    expect(await page.locator('.said').count()).toBe(1);
    expect(await keptIn(page, 'pailside.guesses')).toContain('"5":1');
  });
});

describe("the farm's page", () => {
  it('opens by F2 from any page of the board and leaves by Escape; no link leads there', async () => {
    const { page } = await openPage(visit, await board(), 'es/barn/how-much/');
    expect(await page.locator('a[href*="/farm/"]').count()).toBe(0);
    await page.keyboard.press('F2');
    await page.waitForURL(/\/es\/barn\/farm\/$/);
    await page.keyboard.press('Escape');
    await page.waitForURL(new URL('barn/', visit.desk.url).href);
    expect(await page.locator('a[href*="/farm/"]').count()).toBe(0);
  });

  it('counts a page once a turn, and shows five and more', async () => {
    const context = await board();
    const { page } = await openPage(visit, context, 'barn/');
    const at = (path: string) => new URL(path, visit.desk.url).href;
    for (let turn = 0; turn < 5; turn += 1) {
      await page.goto(at('barn/how-much/'));
      await page.goto(at('barn/topic/milk/'));
      await page.goto(at('barn/how-much/'));
      await page.goto(at('barn/'));
    }
    await page.goto(at('barn/why-milk/'));
    await page.goto(at('barn/farm/'));
    await page.waitForSelector('table');
    const cells = await page.locator('tbody tr').allTextContents();
    expect(cells.map((text) => text.replace(/\s+/g, ' ').trim())).toEqual([
      'How much milk does one doe give?5 fewer than 5',
    ]);
    expect(await page.locator('tfoot').textContent()).not.toMatch(/\d/);
  });

  it('clears guesses and counts after one question back', async () => {
    const guesses = [{ date: '2026-05-22', milking: 'am', doe: 'maribel', part: 'cup', counts: { 6: 3 } }];
    const page = await open(await board({ 'pailside.guesses': JSON.stringify(guesses) }), 'barn/farm/');
    await page.click('[data-clear="guesses"]');
    await page.click('[data-clear="no"]');
    expect(await keptIn(page, 'pailside.guesses')).not.toBeNull();
    await page.click('[data-clear="guesses"]');
    await page.click('[data-clear="yes"]');
    expect(await keptIn(page, 'pailside.guesses')).toBeNull();
    expect(await page.locator('.kept-guesses').count()).toBe(0);
  });
});

describe.runIf(hasPoppler)('the data sheet', () => {
  const class25 = { 3: 1, 4: 3, 5: 5, 6: 7, 7: 5, 8: 2, 9: 1, 11: 1 };
  const guesses = [
    { date: '2026-05-22', milking: 'am', doe: 'maribel', part: 'cup', counts: class25 },
    { date: '2026-05-21', milking: 'pm', doe: 'hester', part: 'cup', counts: { ...class25, 10: 6, 12: 2 } },
  ];

  it.each(['', 'es/'])(
    'is one page and its key on a second, on both papers, in each grade (%s)',
    async (tongue) => {
      const context = await board({ 'pailside.guesses': JSON.stringify(guesses) });
      const { page } = await openPage(visit, context, `${tongue}barn/farm/`);
      const folder = mkdtempSync(join(tmpdir(), 'pail-'));
      onTestFinished(() => rmSync(folder, { recursive: true }));
      const found: string[] = [];
      for (const paper of ['a4', 'letter'])
        for (const grades of ['k-2', '3-5', '6-8'])
          for (const { date, milking, doe } of guesses) {
            const query = new URLSearchParams({ date, milking, doe, paper, grades }).toString();
            await page.goto(new URL(`${tongue}barn/pail/sheet/?${query}`, visit.desk.url).href);
            await page.waitForSelector('html[data-sheet-ready]');
            const file = join(folder, 'sheet.pdf');
            await page.pdf({ path: file, preferCSSPageSize: true });
            const { sizes } = pdfInfo(file);
            if (sizes.length !== 2) found.push(`${paper} ${grades} ${doe}: ${sizes.length} pages`);
          }
      expect(found).toEqual([]);
    },
  );
});
