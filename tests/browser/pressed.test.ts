// A tap on a thing to do: the block shows it at once, and the page has it once.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openVisit, type Visit } from '../support/openPages.ts';

let visit: Visit;
beforeAll(async () => {
  visit = await openVisit('demo');
});
afterAll(async () => {
  await visit.close();
});

describe('a tapped block', () => {
  it('is shown pressed before the page has the tap, and a second tap meanwhile is dropped', async () => {
    const context = await visit.browser.newContext({ hasTouch: true, serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(new URL('barn/do/pour/', visit.desk.url).href);
    await page.waitForSelector('#doing[data-awake]');
    // The page's own click comes after the frame in which the block was pressed.
    await page.evaluate(() => {
      const told: string[] = [];
      (window as unknown as { told: string[] }).told = told;
      window.addEventListener(
        'click',
        (event) => {
          const button = (event.target as Element).closest('button');
          told.push(
            event.isTrusted ? 'tap' : `page, pressed: ${String(button?.classList.contains('pressed'))}`,
          );
          if (event.isTrusted)
            requestAnimationFrame(() =>
              told.push(`frame, pressed: ${String(button?.classList.contains('pressed'))}`),
            );
        },
        { capture: true },
      );
    });
    const tapTwice = async () => {
      const box = await page.locator('.stage button:enabled').first().boundingBox();
      if (!box) throw new Error('No block to tap.');
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await Promise.all([page.touchscreen.tap(x, y), page.touchscreen.tap(x, y)]);
    };
    await tapTwice();
    await expect
      .poll(() =>
        page.evaluate(() =>
          (window as unknown as { told: string[] }).told.filter((t) => t.startsWith('page')),
        ),
      )
      .not.toEqual([]);
    const told = await page.evaluate(() => (window as unknown as { told: string[] }).told);
    expect(told[0]).toBe('tap');
    expect(told).toContain('frame, pressed: true');
    const taken = told.filter((one) => one.startsWith('page'));
    expect(new Set(taken)).toEqual(new Set(['page, pressed: false']));
    expect(taken.length).toBeLessThanOrEqual(told.filter((one) => one === 'tap').length);
    await context.close();
  });
});
