// A board that nobody touches asks, and goes home in the farm's first language; it stays while it is touched or speaks.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import { openVisit, type Visit } from '../support/openPages.ts';

let visit: Visit;
let context: BrowserContext;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true, serviceWorkers: 'block' }); // prettier-ignore
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
const asks = (page: Page) => page.locator('.still-there').isVisible();
// What a child of another language and level would find changed.
const levelOf = (page: Page) => page.evaluate(() => document.documentElement.dataset['level']);

describe('the Barn board, left alone', () => {
  it('asks after 90 seconds, and half a minute later goes home, out of Spanish and the older level too', async () => {
    const page = await openAt('es/barn/topic/goats/');
    await page.clock.runFor(89_000);
    expect(await asks(page)).toBe(false);
    await page.clock.runFor(2_000);
    expect(await asks(page)).toBe(true);
    await page.clock.runFor(27_000);
    expect(placeOf(page)).toBe('/es/barn/topic/goats/');
    const home = page.waitForURL('**/barn/');
    await page.clock.runFor(3_000);
    await home;
    expect(placeOf(page)).toBe('/barn/');
    await page.close();
  });

  it('forgets the level that a child has chosen', async () => {
    const page = await openAt('barn/how-much/');
    await page.locator('[data-level-switch]').tap();
    expect(await levelOf(page)).toBe('older');
    await page.goto(new URL('barn/whose-milk/', visit.desk.url).href);
    expect(await levelOf(page)).toBe('older');
    const home = page.waitForURL('**/barn/');
    await page.clock.runFor(215_000);
    await home;
    expect(await levelOf(page)).toBe('younger');
    await page.close();
  });

  it('keeps the page at a touch of the question, and does nothing else with that touch', async () => {
    const page = await openAt('barn/topic/milk/');
    await page.clock.runFor(91_000);
    await page.touchscreen.tap(540, 700);
    expect(await asks(page)).toBe(false);
    await page.clock.runFor(60_000);
    expect([placeOf(page), await asks(page)]).toEqual(['/barn/topic/milk/', false]);
    await page.close();
  });

  it('gives a long page up to three minutes', async () => {
    const page = await openAt('barn/how-much/proof/');
    await page.clock.runFor(178_000);
    expect(await asks(page)).toBe(false);
    await page.clock.runFor(3_000);
    expect(await asks(page)).toBe(true);
    await page.close();
  });

  it('stays as long as somebody touches it, or something plays', async () => {
    const page = await openAt('barn/topic/food/');
    for (let half = 0; half < 4; half += 1) {
      await page.clock.runFor(60_000);
      await page.touchscreen.tap(5, 5);
    }
    await page.evaluate(() => (document.documentElement.dataset['busy'] = ''));
    await page.clock.runFor(200_000);
    expect([placeOf(page), await asks(page)]).toEqual(['/barn/topic/food/', false]);
    await page.close();
  });

  it('does not wait for ever for a sound that never ends', async () => {
    const page = await openAt('barn/topic/food/');
    await page.evaluate(() => (document.documentElement.dataset['busy'] = ''));
    await page.clock.runFor(361_000);
    expect(await asks(page)).toBe(true);
    await page.close();
  });

  it('does not load its home again and again', async () => {
    const page = await openAt('barn/');
    let loads = 0;
    page.on('load', () => (loads += 1));
    await page.clock.runFor(600_000);
    expect([loads, await asks(page)]).toEqual([0, false]);
    await page.close();
  });
});

describe('a few taps', () => {
  it('lead from the board to an answer, to its proof, and back', async () => {
    const page = await openAt('barn/');
    await page.locator('.blocks a').first().tap();
    await page.waitForURL('**/barn/topic/milk/');
    await page.locator('.blocks a').nth(1).tap();
    await page.waitForURL('**/barn/how-much/');
    await page.locator('.ways a').nth(1).tap();
    await page.waitForURL('**/barn/how-much/proof/');
    expect(await page.locator('.sums dd').count()).toBeGreaterThan(1);
    await page.locator('[data-tool="back"]').tap();
    await page.waitForURL('**/barn/how-much/');
    await page.close();
  });

  it('lead down a page that is longer than the screen, and up again, without dragging', async () => {
    const page = await openAt('barn/how-much/proof/');
    const top = () => page.locator('.stage').evaluate((stage) => stage.scrollTop);
    const further = page.locator('[data-further]');
    for (let tap = 0; tap < 40 && (await further.getAttribute('data-further')) === 'down'; tap += 1)
      await further.tap();
    expect(await top()).toBeGreaterThan(0);
    expect(await further.getAttribute('data-further')).toBe('up');
    await further.tap();
    expect(await top()).toBe(0);
    await page.close();
  });
});
