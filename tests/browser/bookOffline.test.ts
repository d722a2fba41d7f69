// Nothing is lost: no network, a closed page, a lost answer, a desk that comes back; on https and on plain http.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
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
  await desk.start();
});
afterEach(async () => {
  await phone?.close();
  await desk.close();
});

const status = (page: Page) => page.locator('.post [role="status"]');
const says = (page: Page, text: string) => expect.poll(() => status(page).textContent(), { timeout: 15_000 }).toContain(text); // prettier-ignore
const JUNIPER = 'juniper,10,cup,,';

/** What is entered without a desk waits on the phone, whatever happens to the page, and is sent once. */
async function survivesClosing(first: Page, open: () => Promise<Page>): Promise<Page> {
  await says(first, 'All is at the desk');
  await desk.stop();
  await putDown(first, 'Juniper', 'usual');
  await says(first, '1 waits');
  expect(await rowOf(first, 'Juniper').textContent()).toContain('waits here');
  await first.close();
  const second = await open();
  await says(second, '1 waits');
  expect(await rowOf(second, 'Juniper').locator('.amount').textContent()).toContain('10');
  // A second thought, still without a network.
  await putDown(second, 'Juniper', /^10¼ cups/);
  await putDown(second, 'Hester', 'usual');
  await says(second, '3 wait');
  expect(desk.rows()).toEqual([]);
  await desk.start();
  await second.evaluate(() => window.dispatchEvent(new Event('online')));
  await says(second, 'All is at the desk');
  expect(desk.rows().sort()).toEqual(['hester,10 1/2,cup,,', JUNIPER, 'juniper,10 1/4,cup,,'].sort());
  expect(await second.locator('.line.waits, .clash').count()).toBe(0);
  return second;
}

describe('a page whose desk has gone', () => {
  it('opens again by the site’s worker, with all that waits, and sends it once', async () => {
    phone = await takePhone(browser, 'allow');
    const page = await openMorning(phone, desk.here(morningPath()));
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
    await survivesClosing(page, () => openMorning(phone, desk.here(morningPath())));
  });

  it('opens again on plain http from the browser’s own cache, and takes a newer page when it is there', async () => {
    phone = await takePhone(browser);
    const first = await phone.newPage();
    const words = (desk.access.lan?.secrets.words ?? []).join('-');
    await first.goto(desk.lan(`${morningPath()}#words=${words}`));
    await first.locator('.lines .line').first().waitFor();
    expect(await first.evaluate(() => [isSecureContext, 'locks' in navigator])).toEqual([false, false]);
    const second = await survivesClosing(first, () => openMorning(phone, desk.lan(morningPath())));
    await second.close();
    const file = join(desk.dist, 'book', 'index.html');
    writeFileSync(file, readFileSync(file, 'utf8').replaceAll('Morning', 'Early morning'));
    // The old page opens at once, and is loaded anew as soon as it has heard the desk.
    const third = await openMorning(phone, desk.lan('book/'));
    await expect.poll(() => third.content(), { timeout: 15_000 }).toContain('Early morning');
  });
});

describe('an answer that is lost', () => {
  it('leads to no second row', async () => {
    phone = await takePhone(browser);
    const page = await openMorning(phone, desk.here(morningPath()));
    let posts = 0;
    await page.route('**/desk/entries', async (route) => {
      posts += 1;
      if (posts > 2) return route.continue();
      await route.fetch();
      await route.abort();
    });
    await putDown(page, 'Juniper', 'usual');
    await expect.poll(() => desk.rows()).toEqual([JUNIPER]);
    await expect.poll(() => posts, { timeout: 15_000 }).toBeGreaterThan(2);
    await says(page, 'All is at the desk');
    expect(desk.rows()).toEqual([JUNIPER]);
  });

  it('of two open pages of one phone leads to none either', async () => {
    phone = await takePhone(browser);
    const open = () => openMorning(phone, desk.here(morningPath()));
    const [one, two] = [await open(), await open()];
    await desk.stop();
    await putDown(one, 'Juniper', 'usual');
    await expect.poll(() => rowOf(two, 'Juniper').textContent()).toContain('waits here');
    await putDown(two, 'Hester', 'usual');
    await desk.start();
    for (const page of [one, two]) await page.evaluate(() => window.dispatchEvent(new Event('online')));
    for (const page of [one, two]) await says(page, 'All is at the desk');
    expect(desk.rows().sort()).toEqual(['hester,10 1/2,cup,,', JUNIPER]);
  });
});
