// The milker's ten seconds: a milking by taps, questions asked once, two phones at one milking, visitors, Spanish.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  BarnDesk,
  morningPath,
  openMorning,
  putDown,
  rowOf,
  startPhones,
  takePhone,
} from '../support/barnDesk.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { sidewaysScroll } from '../support/inPage.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let site: TestSite;
let browser: Browser;
let desk: BarnDesk;
let phone: BrowserContext;

beforeAll(async () => {
  [site, browser] = await Promise.all([builtSite('demo'), startPhones()]);
});
afterAll(() => browser?.close());
beforeEach(async () => {
  desk = new BarnDesk(site);
  [phone] = await Promise.all([takePhone(browser), desk.start()]);
});
afterEach(async () => {
  await phone.close();
  await desk.close();
});

const status = (page: Page) => page.locator('.post [role="status"]');

/** What axe finds on the page as it stands, in a word each, and whether it scrolls sideways. */
async function faults(page: Page): Promise<string[]> {
  // What is just moving is not judged.
  await page.waitForTimeout(250);
  await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() =>
    (window as unknown as { axe: { run(at: Document): Promise<AxeResults> } }).axe.run(document),
  );
  const sideways = await page.evaluate(sidewaysScroll);
  return [
    ...violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`),
    ...sideways,
  ];
}

describe('a milking of six does on a phone', () => {
  it('takes three taps a doe, well under a minute, and stands in the farm’s own file', async () => {
    const page = await openMorning(phone, desk.here(morningPath()));
    await page.evaluate(() => {
      const counted = window as unknown as { taps: number };
      counted.taps = 0;
      document.addEventListener('click', () => (counted.taps += 1), true);
    });
    const begun = performance.now();
    for (const [name, amount] of [['Juniper', 'usual'], ['Hester', /^10¾ cups/], ['Tansy', 'usual'], ['Maribel', /^5 cups/], ['Wren', 'usual'], ['Pepita', /^2½/]] as const)
      await putDown(page, name, amount);
    expect(await page.evaluate(() => (window as unknown as { taps: number }).taps)).toBeLessThanOrEqual(18);
    expect(performance.now() - begun).toBeLessThan(60_000);
    await expect.poll(() => desk.rows().length).toBe(6);
    await expect.poll(() => status(page).textContent()).toContain('All is at the desk');
    expect(desk.rows()[0]).toBe('juniper,10,cup,,');
    expect(await page.locator('.line.waits').count()).toBe(0);
    expect(await faults(page)).toEqual([]);
  }); // prettier-ignore

  it('asks once about a surprising amount, and about kept milk of a treated doe, and never stands in the way', async () => {
    desk.change('treatments.csv', (text) => `${text}wren,2026-05-19,2026-05-24,for worms,\n`);
    const page = await openMorning(phone, desk.here(morningPath()));
    await rowOf(page, 'Wren').locator('.treated').waitFor();
    await rowOf(page, 'Pepita').locator('.line-open').tap();
    await page.getByRole('button', { name: 'Keys' }).tap();
    for (const key of ['1', '2']) await page.locator('.part').getByRole('button', { name: key, exact: true }).tap();
    await page.locator('.end .go-on').tap();
    expect(await page.locator('.question').textContent()).toContain('far more');
    expect(await faults(page)).toEqual([]);
    await page.locator('.question .yes').tap();
    await expect.poll(() => desk.rows()).toEqual(['pepita,12,cup,,']);
    // Her milk is withheld unless somebody says otherwise.
    await putDown(page, 'Wren', 'usual');
    await expect.poll(() => desk.rows()[1]).toMatch(/^wren,\d.*,cup,withheld,$/);
  }); // prettier-ignore

  it('speaks Spanish', async () => {
    const page = await openMorning(phone, desk.here(morningPath('es/')));
    expect(await page.locator('h1').textContent()).toContain('Mañana');
    await putDown(page, 'Juniper', 'usual');
    await expect.poll(() => desk.rows()).toEqual(['juniper,10,cup,,']);
    await rowOf(page, 'Hester').locator('.line-open').tap();
    expect(await faults(page)).toEqual([]);
  });
});

describe('two phones at one milking', () => {
  it('agree at once, show a clash on both, and one tap settles it', async () => {
    const other = await takePhone(browser);
    const [one, two] = await Promise.all([
      openMorning(phone, desk.here(morningPath())),
      openMorning(other, desk.here(morningPath())),
    ]);
    await putDown(one, 'Juniper', 'usual');
    await expect.poll(() => rowOf(two, 'Juniper').locator('.amount').textContent()).toContain('10');
    // Both have her pad open when the first puts her down.
    for (const page of [one, two]) await rowOf(page, 'Hester').locator('.line-open').tap();
    for (const [page, amount] of [[one, /^10 cups/], [two, /^11 cups/]] as const) {
      await page.locator('.starts').getByRole('button', { name: amount }).tap();
      await page.locator('.end .go-on').tap();
      await expect.poll(() => desk.rows().filter((row) => row.startsWith('hester')).length).toBe(page === one ? 1 : 2);
    }
    for (const page of [one, two]) await page.locator('.clash .pair').waitFor();
    expect(await faults(one)).toEqual([]);
    await one.locator('.clash').getByRole('button', { name: '10 cups' }).tap();
    for (const page of [one, two]) {
      await page.locator('.clash .pair').waitFor({ state: 'detached' });
      await expect.poll(() => rowOf(page, 'Hester').locator('.amount').textContent()).toContain('10');
    }
    expect(desk.rows().filter((row) => row.startsWith('hester'))).toEqual(['hester,10,cup,,', 'hester,11,cup,,', 'hester,10,cup,,']);
    await other.close();
  }); // prettier-ignore
});

describe('a phone in the farm’s Wi-Fi', () => {
  it('cannot write until it has said the words, is told so kindly, and remembers them', async () => {
    const page = await phone.newPage();
    await page.goto(desk.lan(morningPath()));
    await page.getByLabel('The five words').waitFor();
    expect(await faults(page)).toEqual([]);
    const refused = await page.evaluate(async () => {
      const post = { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{"sent_ms":1,"entries":[]}' };
      return [(await fetch('/desk/entries', post)).status, (await fetch('/desk/book')).status];
    });
    expect(refused).toEqual([403, 403]);
    await page.getByLabel('The five words').fill('not the words at all');
    await page.getByRole('button', { name: 'Open the book' }).tap();
    await expect.poll(() => page.locator('#words-told').textContent()).toContain('not the words');
    const words = desk.access.lan?.secrets.words ?? [];
    await page.getByLabel('The five words').fill(words.join(' - ').toUpperCase());
    await page.getByRole('button', { name: 'Open the book' }).tap();
    await page.locator('.lines .line').first().waitFor();
    await putDown(page, 'Juniper', 'usual');
    await expect.poll(() => desk.rows()).toEqual(['juniper,10,cup,,']);
  }); // prettier-ignore

  it('is let in by the code it scans, and the words are gone from its address and its history', async () => {
    const page = await phone.newPage();
    await page.goto(desk.lan(`book/#words=${(desk.access.lan?.secrets.words ?? []).join('-')}`));
    await page.locator('.lines .line').first().waitFor();
    expect(page.url()).toBe(desk.lan('book/'));
    expect(await page.evaluate(() => history.length)).toBe(2);
    await page.goBack();
    expect(page.url()).toBe('about:blank');
  });
});
