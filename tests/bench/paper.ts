// How long thirty pages take to print through Chromium, beside WeasyPrint where that is installed.
import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from '../../src/build/places.ts';
import { PlainError } from '../../src/build/plainError.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { pageCount } from '../../src/print/pageCount.ts';
import { shortest_ms, timeText, type Line, type Part } from './line.ts';

const PAGES = 30;
const RUNS = 3;

/** Prints one document both ways into a folder that is thrown away. */
export const paperPart: Part = async (say) => {
  const folder = join(ROOT, '.pailside', 'bench-paper');
  mkdirSync(folder, { recursive: true });
  const html = join(folder, 'pages.html');
  writeFileSync(html, documentOf(PAGES));
  try {
    say(`Printing ${PAGES} pages …`);
    const theirs_ms = await byWeasyPrint(html, join(folder, 'weasyprint.pdf'));
    const cold_ms = await byChromium(html, join(folder, 'chromium.pdf'), false);
    const warm_ms = await byChromium(html, join(folder, 'chromium.pdf'), true);
    return [
      line('the browser started for it', cold_ms, theirs_ms),
      line('the browser running already', warm_ms, theirs_ms),
    ];
  } catch (error) {
    if (!(error instanceof PlainError)) throw error;
    say(`${error.message}\nPrinting is left out.`);
    return [];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

function line(how: string, ours_ms: number, theirs_ms: number | null): Line {
  return {
    what: `${PAGES} pages to PDF, ${how}`,
    ours: timeText(ours_ms),
    beside: 'WeasyPrint',
    theirs: theirs_ms === null ? null : timeText(theirs_ms),
    ratio: theirs_ms === null ? null : ours_ms / theirs_ms,
  };
}

async function byChromium(html: string, pdf: string, warm: boolean): Promise<number> {
  const print = async (browser: Awaited<ReturnType<typeof startChromium>>) => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(html).href);
    await page.pdf({
      path: pdf,
      tagged: true,
      outline: true,
      preferCSSPageSize: true,
      printBackground: true,
    });
    await page.close();
  };
  if (!warm) {
    const cold = async () => {
      const browser = await startChromium();
      await print(browser);
      await browser.close();
    };
    const cold_ms = await shortest_ms(RUNS, cold);
    mustHavePages(pdf);
    return cold_ms;
  }
  const browser = await startChromium();
  await print(browser);
  const warm_ms = await shortest_ms(RUNS, () => print(browser));
  await browser.close();
  return warm_ms;
}

async function byWeasyPrint(html: string, pdf: string): Promise<number | null> {
  if (spawnSync('weasyprint', ['--version']).status !== 0) return null;
  const time_ms = await shortest_ms(1, () => spawnSync('weasyprint', [html, pdf]));
  mustHavePages(pdf);
  return time_ms;
}

function mustHavePages(pdf: string): void {
  const pages = pageCount(pdf);
  if (pages !== null && pages !== PAGES) throw new Error(`${pdf} has ${pages} pages, not ${PAGES}.`);
}

/** Pages as a sheet has them: a heading, a table, a drawing, lines to write on. */
function documentOf(pages: number): string {
  const numbers = Array.from({ length: pages }, (_, index) => index + 1);
  const row = (day: number, page: number) =>
    `<tr><th>${day}</th><td>${(page * 7 + day * 3) % 19}</td><td>${(page * 5 + day) % 17}</td></tr>`;
  const bars = (page: number) =>
    [0, 1, 2, 3, 4, 5, 6].map(
      (bar) =>
        `<rect x="${bar * 20}" y="${(page * bar) % 60}" width="14" height="${80 - ((page * bar) % 60)}"/>`,
    );
  const section = (page: number) => `<section><h1>Sheet ${page}</h1>
<table><tr><th>Day</th><th>a.m.</th><th>p.m.</th></tr>${[1, 2, 3, 4, 5, 6, 7].map((day) => row(day, page)).join('')}</table>
<svg width="140" height="80" role="img" aria-label="Bars of the week">${bars(page).join('')}</svg>
${'<p>How much did she give on that day? ______________</p>\n'.repeat(6)}</section>`;
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Thirty sheets</title><style>
@page { size: letter; margin: 18mm } section { break-after: page } section:last-child { break-after: auto }
table { border-collapse: collapse } td, th { border: 1px solid; padding: 2mm }
</style></head><body>${numbers.map(section).join('\n')}</body></html>`;
}
