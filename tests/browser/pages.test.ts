// Every page of the built site in a real browser: accessible, whole, and nobody outside is asked.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sidewaysScroll } from '../support/inPage.ts';
import { openPage, openVisit, pagePaths, type Visit } from '../support/openPages.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES: RunOptions = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], resultTypes: ['violations'] }; // prettier-ignore

type Findings = Record<'axe' | 'complaints' | 'frame' | 'sideways', string[]>;

const found: Findings = { axe: [], complaints: [], frame: [], sideways: [] };
let paths: string[] = [];
let visit: Visit;

// Every page is opened once and asked everything; of the many that differ by a doe's numbers alone, one doe's.
beforeAll(async () => {
  visit = await openVisit('demo');
  const context = await visit.browser.newContext({ viewport: { width: 1080, height: 1920 } });
  paths = pagePaths(visit.site);
  const left = oneOfAKind(paths);
  const worker = async () => {
    for (let path = left.shift(); path !== undefined; path = left.shift()) await ask(context, path);
  };
  await Promise.all([worker(), worker()]);
}, 600_000);
afterAll(async () => {
  await visit?.close();
});

/** Opens a page and asks it everything. */
async function ask(context: BrowserContext, path: string): Promise<void> {
  const { page, complaints } = await openPage(visit, context, path);
  const note = (kind: keyof Findings, lines: string[]) =>
    found[kind].push(...lines.map((line) => `/${path} ${line}`));
  if (!isTwin(path)) note('axe', await axeFindings(page));
  // The board has a second level on each answer, which is hidden at the first.
  if (/(^|\/)barn\//.test(path) && (await page.locator('[data-for="older"]').count()) > 0) {
    await page.evaluate(() => (document.documentElement.dataset['level'] = 'older'));
    note('axe', await axeFindings(page));
  }
  note('frame', await oddFrame(page, path));
  if (!/(^|\/)barn\//.test(path)) {
    await page.setViewportSize({ width: 360, height: 740 });
    note('sideways', await page.evaluate(sidewaysScroll));
  }
  // The page that says that there is no such page is right to answer so.
  note('complaints', path === '404.html' ? complaints.filter((text) => !text.includes('404')) : complaints);
  await page.close();
}

/** A single sheet or lesson in Spanish has the elements of its English twin; axe is dear on so many. */
const isTwin = (path: string): boolean => /^es\/(sheets|lessons)\/./.test(path);

/** All pages, but of those of single does only the first doe's, in each language. */
function oneOfAKind(all: readonly string[]): string[] {
  const doeOf = (path: string) => /\/doe\.([^/]+?)\.[^/]*\/$/.exec(path)?.[1];
  const first = all.map(doeOf).find((doe) => doe !== undefined);
  return all.filter((path) => [undefined, first].includes(doeOf(path)));
}

/** What axe finds on a page, one line an element. */
async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const results = await page.evaluate(
    (rules) =>
      (window as unknown as { axe: { run(at: Document, rules: RunOptions): Promise<AxeResults> } }).axe.run(
        document,
        rules,
      ),
    RULES,
  );
  return results.violations.flatMap((one) =>
    one.nodes.map((node) => `${one.id}: ${node.target.join(' ')} (${one.help})`),
  );
}

// A pack in the print room is many documents, each with its own main heading; the room itself has one.
/** A wrong language, no title, or any number of main headings but one; a sheet and its key have one each. */
async function oddFrame(page: Page, path: string): Promise<string[]> {
  const headings = /(^|\/)sheets\/./.test(path) ? 2 : 1;
  const expected = { lang: path.startsWith('es/') ? 'es' : 'en', headings, hasTitle: true };
  const actual = {
    lang: await page.getAttribute('html', 'lang'),
    headings: await page.locator('h1:not(.pack h1)').count(),
    hasTitle: (await page.title()).trim() !== '',
  };
  return JSON.stringify(actual) === JSON.stringify(expected) ? [] : [JSON.stringify(actual)];
}

describe('every page', () => {
  it('is there, in both languages', () => {
    const english = paths.filter((path) => !path.startsWith('es/') && path !== '404.html');
    expect(english).toEqual(expect.arrayContaining(['', 'barn/', 'sheets/', 'sheets/cups-we-can-count/', 'sheets/milk-in-parts/', 'standards/', 'print/', 'lessons/', 'bench/'])); // prettier-ignore
    expect(paths.filter((path) => path.startsWith('es/'))).toEqual(english.map((path) => `es/${path}`));
  });

  it('passes axe', () => {
    expect(found.axe).toEqual([]);
  });

  it('throws no error, misses no file and asks nobody outside', () => {
    expect(found.complaints).toEqual([]);
  });

  it('names its language and has a title and one main heading, a sheet one more for its key', () => {
    expect(found.frame).toEqual([]);
  });

  it('fits a telephone without scrolling sideways, unless it is made for the board', () => {
    expect(found.sideways).toEqual([]);
  });
});
