// A visit to the Barn board that is kept for times without a network, and what a test asks of it.
import { expect } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import type { TestSite } from './builtSite.ts';
import { pagePaths } from './openPages.ts';
import type { ServedCopy } from './servedCopy.ts';

/** A minute on a page's clock. */
export const MINUTE_ms = 60_000;

/** The board's pages in all languages. */
export const boardPaths = (site: TestSite): string[] =>
  pagePaths(site).filter((path) => /^(es\/)?barn\//.test(path));

/** Opens a page with its clock in the test's hand, and waits until the boards of all languages are kept. */
export async function visitBoard(context: BrowserContext, copy: ServedCopy, path: string): Promise<Page> {
  const page = await context.newPage();
  await page.clock.install();
  await page.goto(copy.at(path));
  await boardKept(page);
  return page;
}

/** Waits until a page says yes. */
export const until = (page: Page, isSo: () => Promise<boolean>): Promise<void> =>
  expect.poll(() => page.evaluate(isSo), { timeout: 60_000, interval: 100 }).toBe(true);

/** Waits until every board's worker has come to rest. */
export const boardKept = (page: Page): Promise<void> =>
  until(page, async () => {
    const scopes = document.body.dataset['boardScopes']?.split(' ') ?? [];
    const all = await navigator.serviceWorker.getRegistrations();
    const ours = all.filter(({ scope }) => scopes.includes(new URL(scope).pathname));
    return ours.length === scopes.length && ours.every((one) => one.active?.state === 'activated' && !one.installing); // prettier-ignore
  });

/** Fetches newer workers for all boards; tells how each ended. */
export const updateBoard = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const ended: string[] = [];
    for (const one of await navigator.serviceWorker.getRegistrations()) {
      await one.update().catch(() => undefined);
      const worker = one.installing;
      while (worker?.state === 'installing') await new Promise((done) => worker.addEventListener('statechange', done)); // prettier-ignore
      ended.push(worker?.state ?? (one.waiting ? 'waits' : 'none'));
    }
    return ended;
  });

/** The builds that are kept: `whole` where nothing is missing. */
export const keptBuilds = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const found: string[] = [];
    for (const name of await caches.keys()) {
      if (!name.startsWith('pailside-board') || / (stands|heard)$/.test(name)) continue;
      const keys = (await (await caches.open(name)).keys()).map(({ url }) => url);
      found.push(keys.some((url) => url.endsWith('?list')) ? 'whole' : 'cut off');
    }
    return found.sort();
  });

const NEW = ' anew</h1>';
const CHANGED = ['barn', 'barn/how-much', 'es/barn', 'es/barn/how-much'];

/** Makes a later build, whose headings say so. */
export const buildAnew = (copy: ServedCopy): void => copy.rebuild(CHANGED, '</h1>', NEW);

/** Whether a page is of the later build. */
export const isNew = async (page: Page): Promise<boolean> =>
  (await page.locator('h1').first().textContent())?.endsWith(' anew') ?? false;

/** Lets the page at home stand untouched, and waits until it has loaded itself again. */
export async function untouched(page: Page): Promise<void> {
  const loaded = page.waitForEvent('load', { timeout: 60_000 });
  await page.clock.runFor(MINUTE_ms + 1000);
  await loaded;
}

/** Everything that goes wrong on a page from now on. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('requestfailed', (request) => {
    // What a page was still fetching when it was left was not missed.
    if (request.failure()?.errorText !== 'net::ERR_ABORTED') complaints.push(`failed: ${request.url()}`);
  });
  return complaints;
}
