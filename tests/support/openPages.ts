// Opens the built sites in a real browser, as a visitor would meet them.
import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { openDesk, type Desk } from '../../src/desk/serve.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { builtSite, type SiteName, type TestSite } from './builtSite.ts';

/** A site that is served, and a browser to look at it with. */
export interface Visit {
  readonly site: TestSite;
  readonly desk: Desk;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** Serves a built site and starts a browser. */
export async function openVisit(name: SiteName): Promise<Visit> {
  const site = await builtSite(name);
  const desk = await openDesk(
    { dist: site.dist, prints: join(site.dist, 'none'), basePath: site.basePath },
    0,
  );
  const browser = await startChromium();
  const close = async () => {
    await browser.close();
    await desk.close();
  };
  return { site, desk, browser, close };
}

/** Addresses of a site's pages below its base path: ``, `barn/`, `es/barn/how-much/`. */
export function pagePaths({ dist }: TestSite): string[] {
  return readdirSync(dist, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .map((name) =>
      relative('', name)
        .split(sep)
        .join('/')
        .replace(/(^|\/)index\.html$/, '$1'),
    )
    .sort();
}

/** What went wrong on a page, or left its site, while it was open. */
export interface Watched {
  readonly page: Page;
  readonly complaints: string[];
}

/** Opens a page and notes its errors, its failed requests and every request to another origin. */
export async function openPage(visit: Visit, context: BrowserContext, path: string): Promise<Watched> {
  const page = await context.newPage();
  const complaints: string[] = [];
  const { origin } = new URL(visit.desk.url);
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()}`);
  });
  page.on('request', (request) => {
    if (!/^(data|blob):/.test(request.url()) && new URL(request.url()).origin !== origin)
      complaints.push(`asks ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()} ${response.url()}`);
  });
  await page.goto(new URL(path, visit.desk.url).href, { waitUntil: 'load' });
  await page.evaluate(() => document.fonts.ready.then(() => true));
  return { page, complaints };
}
