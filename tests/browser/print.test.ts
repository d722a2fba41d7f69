// The print room in a real browser: choose, share by address, find a key, print from the browser.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { AxeResults, RunOptions } from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { Shelf } from '../../shared/pack/order.ts';
import { sidewaysScroll, smallTargets } from '../support/inPage.ts';
import { openPage, openVisit, type Visit } from '../support/openPages.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES: RunOptions = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], resultTypes: ['violations'] }; // prettier-ignore
const WIDE = { width: 1280, height: 900 };

let visit: Visit;
let context: BrowserContext;
let shelf: Shelf;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({ viewport: WIDE });
  shelf = JSON.parse(readFileSync(join(visit.site.dist, 'print', 'shelf.json'), 'utf8')) as Shelf;
});
afterAll(async () => {
  await visit?.close();
});

async function open(path: string, inContext = context): Promise<Page> {
  const { page, complaints } = await openPage(visit, inContext, path);
  onTestFinished(async () => {
    await page.close();
    expect(complaints).toEqual([]);
  });
  await ready(page);
  return page;
}
const ready = (page: Page) =>
  page.waitForFunction(() => document.documentElement.dataset['sheetReady'] === 'yes');
/** Does what makes another pack, and waits until it stands. */
async function changing(page: Page, work: () => Promise<unknown>): Promise<void> {
  await page.evaluate(() => delete document.documentElement.dataset['sheetReady']);
  await work();
  await ready(page);
}
const select = (page: Page, label: string) =>
  page.locator('.order label', { hasText: label }).locator('select');
const queryOf = (page: Page) => new URL(page.url()).searchParams;
const codes = (page: Page) => page.locator('.leaf:not(.keys) .paper.first .foot .code').allTextContents(); // prettier-ignore
const named = (band: string) => shelf.sheets.filter((one) => one.band === band).map(({ name }) => name);

describe('the print room', () => {
  it('opens with a whole class of the first sheet, covered and with a short key', async () => {
    const page = await open('print/');
    expect(await page.locator('h1').first().textContent()).toBe('Print room');
    expect(new Set(await codes(page)).size).toBe(24);
    const leaves = page.locator('.pack > .leaf');
    expect(await leaves.count()).toBe(26);
    expect(await leaves.first().locator('.cover').count()).toBe(1);
    expect(await leaves.last().locator('.class-key').count()).toBe(1);
    expect(await page.locator('progress').getAttribute('value')).toBe('24');
  });

  it('says which week its numbers are of, and that a word gives the same set', async () => {
    const page = await open('print/');
    const head = await page.locator('.room-lead').textContent();
    expect(head).toContain('21, 2026');
    expect(head).toMatch(/same word makes the same set/);
  });

  it('makes what its address asks for, in the other language, on other paper, in large print', async () => {
    const [, second = ''] = named('k-2');
    const page = await open(`print/?grade=1&sheets=${second}&copies=3&word=fern&lang=es&paper=a4&print=large&key=full&cover=no`); // prettier-ignore
    expect(await codes(page)).toHaveLength(3);
    expect(await page.locator('.leaf:not(.keys) .sheet.large').count()).toBe(3);
    expect(await page.locator('.pack .cover').count()).toBe(0);
    expect(await page.locator('.leaf.keys .key').count()).toBe(3);
    expect(await page.locator('.pack').getAttribute('lang')).toBe('es');
    expect(await page.locator('.pack .foot .page').first().textContent()).toMatch(/^Página 1 de/);
    expect(await page.locator('#paper-of-sheet').textContent()).toMatch(/size: A4/);
  });

  it('gives the same pack for the same address', async () => {
    const path = `print/?grade=5&sheets=${named('3-5')[0]}&copies=4&word=clover`;
    const texts = [];
    for (let time = 0; time < 2; time += 1) {
      const page = await open(path);
      texts.push(await page.locator('.pack').innerHTML());
    }
    expect(texts[0]).toBe(texts[1]);
  });

  it('keeps every choice in its address, so that it can be shared and read', async () => {
    const page = await open('print/?copies=2&word=fern');
    const second = named('k-2')[1] ?? '';
    const title = await page.locator(`.sheets .tick span b`).nth(1).textContent();
    await changing(page, () => page.getByRole('checkbox', { name: title ?? '' }).check());
    await changing(page, () => select(page, 'Paper').selectOption('a4'));
    await changing(page, () => select(page, 'Language of the sheets').selectOption('es'));
    await changing(page, async () => {
      await page.locator('.order .word input').fill('trébol');
      await page.keyboard.press('Tab');
    });
    expect(Object.fromEntries(queryOf(page))).toMatchObject({ grade: '2', copies: '2', word: 'trébol', lang: 'es', paper: 'a4', cover: 'yes' }); // prettier-ignore
    expect(queryOf(page).get('sheets')?.split(',')).toEqual(named('k-2').filter((name) => [named('k-2')[0], second].includes(name))); // prettier-ignore
    const here = await page.locator('.pack').innerText();
    const other = await open(page.url().replace(visit.desk.url, ''));
    expect(await other.locator('.pack').innerText()).toBe(here);
  });

  it('tells nonsense in its address and leaves it aside', async () => {
    const page = await open('print/?grade=99&sheets=no-such&copies=0&word=two%20words&paper=a5&child=Eva');
    const told = await page.locator('.told li').allTextContents();
    expect(told).toHaveLength(6);
    expect(told.join(' ')).toMatch(/no-such/);
    expect(await codes(page)).toHaveLength(24);
    await changing(page, () => select(page, 'Paper').selectOption('a4'));
    expect(await page.locator('.told li').count()).toBe(0);
    expect(page.url()).not.toMatch(/no-such|Eva/);
  });

  it('says what a number or word of the form lacks, and keeps the pack that stands', async () => {
    const page = await open('print/?copies=2&word=fern');
    await page.locator('.order input[type=number]').fill('99');
    await page.keyboard.press('Tab');
    await page.getByText('Write a whole number from 1 to 60.').waitFor();
    await page.locator('.order .word input').fill('two words');
    await page.keyboard.press('Tab');
    await page.getByText(/^One word of letters, digits/).waitFor();
    expect(await codes(page)).toHaveLength(2);
    expect(await page.locator('.order input[type=number]').getAttribute('aria-invalid')).toBe('true');
  });

  it('shows other sheets for another grade, in the order of a visit', async () => {
    const page = await open('print/?copies=1');
    await changing(page, () => page.locator('.grade select').selectOption({ label: 'Grade 7' }));
    expect(await page.locator('.sheets input').count()).toBe(named('6-8').length);
    expect(await page.locator('.sheets .when').allTextContents()).toEqual(['Before the visit', 'At the farm', 'After the visit']); // prettier-ignore
    expect(queryOf(page).get('sheets')).toBe(named('6-8')[0]);
  });

  it('asks for a tick where no sheet is chosen, and then does not print', async () => {
    const page = await open('print/?sheets=');
    expect(await page.locator('.state').textContent()).toMatch(/Nothing is ticked/);
    expect(await page.getByRole('button', { name: 'Print', exact: true }).getAttribute('aria-disabled')).toBe('true'); // prettier-ignore
  });

  it('stays answering while it makes many copies', async () => {
    const page = await open('print/?sheets=');
    const sheets = named('k-2').slice(0, 3).join(',');
    // Counted, not timed: how often the page had its turn says nothing of how fast the machine is.
    const turns = await page.evaluate(async (query) => {
      let count = 0;
      delete document.documentElement.dataset['sheetReady'];
      history.pushState(null, '', query);
      dispatchEvent(new PopStateEvent('popstate'));
      for (; document.documentElement.dataset['sheetReady'] !== 'yes'; count += 1)
        await new Promise((done) => setTimeout(done, 0));
      return count;
    }, `?grade=2&sheets=${sheets}&copies=60&word=fern`);
    expect(await codes(page)).toHaveLength(180);
    expect(turns).toBeGreaterThan(20);
  });

  it('prints from the browser, and only once the pack is whole', async () => {
    const page = await open('print/?copies=2');
    await page.evaluate(() => {
      window.print = () => void (document.body.dataset['printed'] = 'yes');
    });
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    expect(await page.locator('body').getAttribute('data-printed')).toBe('yes');
  });

  it('is used by keyboard alone', async () => {
    const page = await open('print/?copies=1');
    const reached = new Set<string>();
    for (let step = 0; step < 40; step += 1) {
      await page.keyboard.press('Tab');
      reached.add(await page.evaluate(() => document.activeElement?.closest('label')?.querySelector('span')?.textContent?.trim() ?? document.activeElement?.textContent?.trim() ?? '')); // prettier-ignore
    }
    for (const name of ['Grade', 'Copies', 'Class word', 'Language of the sheets', 'Paper', 'Answer key', 'Print', 'Show its key'])
      expect([...reached]).toContain(name); // prettier-ignore
  });
});

describe('a code', () => {
  it('leads to the key of its copy', async () => {
    const page = await open('print/?copies=5&word=fern');
    const [, , third = ''] = await codes(page);
    const code = /[2-9A-Z]{5}$/.exec(third.trim())?.[0] ?? '';
    await page.getByLabel('Code at the foot of a sheet').fill(` ${code.toLowerCase()} `);
    await page.keyboard.press('Enter');
    const found = page.locator('.found');
    await found.waitFor();
    expect(await page.locator('.code-search [role=status]').textContent()).toMatch(/^This is copy 3 of /);
    expect(await found.textContent()).toContain(code);
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('found');
  });

  it('of another grade and sheet of the same word is found as well', async () => {
    const other = await open(`print/?grade=4&sheets=${named('3-5')[2]}&copies=7&word=fern`);
    const code = /[2-9A-Z]{5}$/.exec((await codes(other))[6]?.trim() ?? '')?.[0] ?? '';
    const page = await open('print/?copies=1&word=fern');
    await page.getByLabel('Code at the foot of a sheet').fill(code);
    await page.keyboard.press('Enter');
    await page.locator('.found').waitFor();
    expect(await page.locator('.code-search [role=status]').textContent()).toMatch(/copy 7 of .*Grade 4/);
  });

  it('that is none is told, and one that is misread', async () => {
    const page = await open('print/?copies=1&word=fern');
    for (const [code, answer] of [['22222', /No sheet of the word/], ['AB0CD', /No code holds 0/], ['', /Type the code/]] as const) {
      await page.getByLabel('Code at the foot of a sheet').fill(code);
      await page.keyboard.press('Enter');
      await page.locator('.code-search [role=status]', { hasText: answer }).waitFor();
      expect(await page.locator('.found').count()).toBe(0);
    } // prettier-ignore
  });
});

describe.each(['', 'es/'])('the print room below "%s"', (prefix) => {
  it('passes axe with a found key, and fits a telephone', async () => {
    const page = await open(`${prefix}print/?copies=2&word=fern&nonsense=1`);
    const code = /[2-9A-Z]{5}$/.exec((await codes(page))[0]?.trim() ?? '')?.[0] ?? '';
    await page.locator('.code-search input').fill(code);
    await page.keyboard.press('Enter');
    await page.locator('.found').waitFor();
    await page.evaluate(axeSource);
    const { violations } = await page.evaluate((rules) => (window as unknown as { axe: { run(at: Document, rules: RunOptions): Promise<AxeResults> } }).axe.run(document, rules), RULES); // prettier-ignore
    expect(violations.flatMap((one) => one.nodes.map((node) => `${one.id}: ${node.target.join(' ')}`))).toEqual([]); // prettier-ignore
    await page.setViewportSize({ width: 360, height: 740 });
    expect(await page.evaluate(sidewaysScroll)).toEqual([]);
    expect(await page.evaluate(smallTargets, 24)).toEqual([]);
  });

  it('lists sheets with their pages where no script runs', async () => {
    const quiet = await visit.browser.newContext({ javaScriptEnabled: false });
    const page = await quiet.newPage();
    await page.goto(new URL(`${prefix}print/`, visit.desk.url).href);
    expect(await page.locator('main li a').count()).toBe(shelf.sheets.length);
    await quiet.close();
  });
});
