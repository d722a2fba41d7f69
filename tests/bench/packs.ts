// How long a class set takes from its order to its PDF, beside WeasyPrint on the very pages that were printed.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { sheetsFor, type Shelf } from '../../shared/pack/order.ts';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { topGrade } from '../../shared/tasks/standards.ts';
import { ROOT } from '../../src/build/places.ts';
import { PlainError } from '../../src/build/plainError.ts';
import { runTool } from '../../src/build/tool.ts';
import { openDesk } from '../../src/desk/serve.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { pageCount } from '../../src/print/pageCount.ts';
import { shortest_ms, timeText, type Line, type Part } from './line.ts';

const COPIES = 30;
const RUNS = 5;
const PAGES_EACH = 2;
/** How long WeasyPrint may take over one set before it is stopped, ms. */
const LONGEST_THEIRS_ms = 15_000;

/** Builds the site beside the standing one and prints thirty copies of a two-page sheet of each band, with their short key. */
export const packsPart: Part = async (say) => {
  const workshop = join(ROOT, '.pailside', 'bench-packs');
  const dist = join(workshop, 'site');
  mkdirSync(workshop, { recursive: true });
  try {
    say('Building the site for its print room …');
    const { code, said } = await runTool(ROOT, 'astro', ['build'], { env: { ASTRO_TELEMETRY_DISABLED: '1', PAILSIDE_OUT: dist, BASE_PATH: '/' } }); // prettier-ignore
    if (code !== 0) throw new PlainError(`The site could not be built:\n${said}`);
    const shelf = JSON.parse(readFileSync(join(dist, 'print', 'shelf.json'), 'utf8')) as Shelf;
    const desk = await openDesk({ dist, prints: workshop, basePath: '/' }, 0);
    const browser = await startChromium();
    try {
      const page = await browser.newPage();
      await page.goto(`${desk.url}print/?sheets=`);
      await ready(page);
      const lines: Line[] = [];
      for (const band of BANDS) lines.push(...(await printBand(page, shelf, band, workshop, say)));
      return lines;
    } finally {
      await browser.close();
      await desk.close();
    }
  } catch (error) {
    if (!(error instanceof PlainError)) throw error;
    say(`${error.message}\nPrinting packs is left out.`);
    return [];
  } finally {
    rmSync(workshop, { recursive: true, force: true });
  }
};

/** The first sheet of a band that has two pages, thirty times; each run with another word, so that nothing is kept ready. */
async function printBand(
  page: Page,
  shelf: Shelf,
  band: Band,
  workshop: string,
  say: (line: string) => void,
): Promise<Line[]> {
  const pdf = join(workshop, `${band}.pdf`);
  const queryOf = (sheet: string, copies: number, word: string) =>
    `?grade=${topGrade(band)}&sheets=${sheet}&copies=${copies}&word=${word}&lang=en&paper=letter&print=ordinary&key=short&cover=yes`;
  let sheet: string | null = null;
  for (const { name } of sheetsFor(shelf, band, 'en')) {
    await order(page, queryOf(name, 1, 'fern'));
    if ((await papers(page)) === PAGES_EACH) sheet = name;
    if (sheet !== null) break;
  }
  if (sheet === null) {
    say(`No sheet of ${band} has ${PAGES_EACH} pages.`);
    return [];
  }
  const chosen = sheet;
  say(`Printing ${COPIES} copies of ${chosen} …`);
  let run = 0;
  let made_ms = Number.POSITIVE_INFINITY;
  const whole_ms = await shortest_ms(RUNS, async () => {
    run += 1;
    made_ms = Math.min(
      made_ms,
      await shortest_ms(1, () => order(page, queryOf(chosen, COPIES, `fern${run}`))),
    );
    await page.pdf({
      path: pdf,
      tagged: true,
      outline: true,
      preferCSSPageSize: true,
      printBackground: true,
    });
  });
  const theirs = byWeasyPrint(await plainHtml(page), workshop);
  const [ours, others] = [pageCount(pdf), theirs?.pages ?? null];
  const pages = `${await papers(page)} pages of sheets, ${ours ?? '?'} in all`;
  return [
    {
      what: `${COPIES} × ${chosen} (${pages}): make ${timeText(made_ms)}, then PDF`,
      ours: timeText(whole_ms),
      beside:
        theirs === null
          ? 'WeasyPrint'
          : `WeasyPrint, PDF alone (${others === null ? 'stopped unfinished' : `${others} pages`})`,
      theirs: theirs === null ? null : `${others === null ? 'over ' : ''}${timeText(theirs.time_ms)}`,
      ratio: theirs === null ? null : whole_ms / theirs.time_ms,
    },
  ];
}

const papers = (page: Page) => page.locator('.pack .leaf:not(.keys) > .sheet:not(.cover) > .paper').count();

async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => document.documentElement.dataset['sheetReady'] === 'yes');
}

/** Gives the open page another order, as the way back in a browser does. */
async function order(page: Page, query: string): Promise<void> {
  await page.evaluate((address) => {
    delete document.documentElement.dataset['sheetReady'];
    history.pushState(null, '', address);
    dispatchEvent(new PopStateEvent('popstate'));
  }, query);
  await ready(page);
}

/**
 * The page as it stands, with its styles in it and without layers, which WeasyPrint does not know; what else it does not
 * know it leaves out, so its pages differ.
 */
function plainHtml(page: Page): Promise<string> {
  return page.evaluate(() => {
    const LAYERS = ['tokens', 'base', 'frame', 'part'];
    const byLayer = new Map<string, string[]>();
    const note = (layer: string, text: string) => byLayer.set(layer, [...(byLayer.get(layer) ?? []), text]);
    for (const sheet of document.styleSheets)
      for (const rule of sheet.cssRules) {
        if (rule instanceof CSSLayerBlockRule)
          for (const inner of rule.cssRules) note(rule.name, inner.cssText);
        else if (!(rule instanceof CSSLayerStatementRule)) note('', rule.cssText);
      }
    const css = ['', ...LAYERS].flatMap((layer) => byLayer.get(layer) ?? []).join('\n');
    const pack = document.querySelector('.pack')?.outerHTML ?? '';
    return `<!doctype html><html lang="en" class="on-paper"><head><meta charset="utf-8"><title>Pack</title><base href="${location.origin}"><style>${css}</style></head><body>${pack}</body></html>`;
  });
}

function byWeasyPrint(html: string, workshop: string): { time_ms: number; pages: number | null } | null {
  if (spawnSync('weasyprint', ['--version']).status !== 0) return null;
  const [from, to] = [join(workshop, 'pack.html'), join(workshop, 'weasyprint.pdf')];
  writeFileSync(from, html);
  const start_ms = performance.now();
  const { status } = spawnSync('weasyprint', [from, to], { timeout: LONGEST_THEIRS_ms });
  const time_ms = performance.now() - start_ms;
  // Where it was not through in time the ratio is at most this.
  return status === 0 || time_ms > LONGEST_THEIRS_ms
    ? { time_ms, pages: status === 0 ? pageCount(to) : null }
    : null;
}
