// A board that nobody touches goes home after a minute, in the farm's first language, and stays while it is touched.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import { openVisit, type Visit } from '../support/openPages.ts';

let visit: Visit;
let context: BrowserContext;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true });
});
afterAll(async () => {
  await visit?.close();
});

/** A page whose clock stands in the test's hand. */
async function openAt(path: string): Promise<Page> {
  const page = await context.newPage();
  await page.clock.install();
  await page.goto(new URL(path, visit.desk.url).href);
  return page;
}

const placeOf = (page: Page) => new URL(page.url()).pathname;

describe('the Barn board, left alone', () => {
  it('goes home after a minute, out of Spanish too', async () => {
    const page = await openAt('es/barn/how-much/');
    await page.clock.runFor(59_000);
    expect(placeOf(page)).toBe('/es/barn/how-much/');
    const home = page.waitForURL('**/barn/');
    await page.clock.runFor(2_000);
    await home;
    expect(placeOf(page)).toBe('/barn/');
    await page.close();
  });

  it('stays as long as somebody touches it', async () => {
    const page = await openAt('barn/whose-milk/');
    for (let half = 0; half < 4; half += 1) {
      await page.clock.runFor(40_000);
      await page.touchscreen.tap(500, 700);
    }
    expect(placeOf(page)).toBe('/barn/whose-milk/');
    await page.close();
  });

  it('does not load its home again and again', async () => {
    const page = await openAt('barn/');
    let loads = 0;
    page.on('load', () => (loads += 1));
    await page.clock.runFor(300_000);
    expect(loads).toBe(0);
    await page.close();
  });
});

describe('two taps', () => {
  it('lead from the board to the proof of an answer, and one back', async () => {
    const page = await openAt('barn/');
    await page.locator('.questions a').nth(1).tap();
    await page.waitForURL('**/barn/how-much/');
    await page.locator('.step.main').tap();
    await page.waitForURL('**/barn/how-much/proof/');
    expect(await page.locator('.sums dd').count()).toBeGreaterThan(1);
    await page.locator('.step.main').tap();
    await page.waitForURL('**/barn/how-much/');
    await page.close();
  });
});
