// A morning in the barn: a desk over a farm whose morning milking is still to be entered, and phones that open it.
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { findBrowser } from '../../scripts/findBrowser.mjs';
import { writeWorker } from '../../src/build/offline.ts';
import { ROOT } from '../../src/build/places.ts';
import { openAccess, type Access } from '../../src/desk/access/access.ts';
import { openKeeper, type Keeper } from '../../src/desk/book/keeper.ts';
import { openDesk, type Desk } from '../../src/desk/serve.ts';
import { CHROMIUM_FLAGS } from '../../src/print/chromium.ts';
import type { TestSite } from './builtSite.ts';

/** The milking that is entered: six does are milked in the demo farm on that morning. */
export const MORNING = { date: '2026-05-21', milking: 'am' } as const;
const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true } as const;
// A name for this machine that is no local one: pages under it are no secure context, as in a farm's Wi-Fi.
const LAN_NAME = 'barn.test';

/** A browser that finds this machine as phones in a farm's Wi-Fi do. */
export async function startPhones(): Promise<Browser> {
  const found = findBrowser(process.env);
  if (!found.ok) throw new Error(found.why ?? 'There is no browser.');
  return chromium.launch({
    executablePath: found.path,
    args: [...CHROMIUM_FLAGS, `--host-resolver-rules=MAP ${LAN_NAME} 127.0.0.1`],
  });
}

/** A desk that can be switched off and on again. */
export class BarnDesk {
  readonly folder = mkdtempSync(join(tmpdir(), 'barn-desk-'));
  readonly farm = join(this.folder, 'farm');
  readonly dist = join(this.folder, 'dist');
  readonly access: Access;
  #port = 0;
  #open: { desk: Desk; keeper: Keeper } | null = null;

  constructor(site: TestSite) {
    cpSync(join(ROOT, 'content', 'farm'), this.farm, { recursive: true });
    for (const name of ['assets', 'book', 'es/book', 'icon.svg', '.built']) {
      if (existsSync(join(site.dist, name)))
        cpSync(join(site.dist, name), join(this.dist, name), { recursive: true });
    }
    // The worker keeps what is here: fetching all rooms of the site would take each test seconds.
    writeWorker(this.dist);
    this.change('milkings/2026-05.csv', (text) => text.replace(/^2026-05-21,am,.*\n/gm, ''));
    mkdirSync(join(this.folder, 'workshop'));
    const opening = { workshop: join(this.folder, 'workshop'), lang: 'en', newWords: false };
    const env = { PAILSIDE_NAMES: LAN_NAME };
    this.access = openAccess({ ...opening, env, now_ms: () => Date.now() });
  }

  /** Writes a file of the farm anew. */
  change(file: string, how: (text: string) => string): void {
    const path = join(this.farm, file);
    writeFileSync(path, how(readFileSync(path, 'utf8')));
  }

  async start(): Promise<void> {
    const complain = () => undefined;
    const live = { farm: this.farm, now_ms: () => Date.now(), complain };
    const keeper = await openKeeper({ ...live, quiet_ms: 30 });
    const site = { dist: this.dist, prints: join(this.folder, 'prints'), basePath: '/' };
    const desk = await openDesk(
      { ...site, live, book: { keeper, complain }, access: this.access },
      this.#port,
    );
    this.#port = Number(new URL(desk.url).port);
    this.#open = { desk, keeper };
  }

  async stop(): Promise<void> {
    const open = this.#open;
    this.#open = null;
    await open?.desk.close();
    await open?.keeper.close();
  }

  async close(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** An address at the farm's own machine. */
  here(path: string): string {
    return `http://localhost:${this.#port}/${path}`;
  }

  /** The same in the farm's Wi-Fi. */
  lan(path: string): string {
    return `http://${LAN_NAME}:${this.#port}/${path}`;
  }

  /** Rows of this morning in the farm's own file, as written but for the time: `juniper,10,cup,kept,`. */
  rows(): string[] {
    const lines = readFileSync(join(this.farm, 'milkings/2026-05.csv'), 'utf8').split('\n');
    const start = `${MORNING.date},${MORNING.milking},`;
    return lines
      .filter((line) => line.startsWith(start))
      .map((line) => line.slice(start.length).replace(/,[^,]*$/, ''));
  }
}

/** The page of this morning's milking, below the site. */
export const morningPath = (lang: '' | 'es/' = ''): string =>
  `${lang}book/?date=${MORNING.date}&milking=${MORNING.milking}`;

/** A phone of its own; a worker only where the test is about one. */
export const takePhone = (browser: Browser, worker: 'allow' | 'block' = 'block'): Promise<BrowserContext> =>
  browser.newContext({ ...PHONE, serviceWorkers: worker });

/** Opens the milking and waits until its does are there. */
export async function openMorning(phone: BrowserContext, address: string): Promise<Page> {
  const page = await phone.newPage();
  await page.goto(address);
  await page.locator('.lines .line').first().waitFor();
  return page;
}

/** A doe's row. */
export const rowOf = (page: Page, name: string) => page.locator('.line', { hasText: name });

/** Opens a doe's pad, takes one of the amounts that it offers (her usual one, or by its words), and puts it down. */
export async function putDown(page: Page, name: string, amount: RegExp | 'usual'): Promise<void> {
  await rowOf(page, name).locator('.line-open').tap();
  const starts = page.locator('.starts');
  await (amount === 'usual' ? starts.locator('.usual') : starts.getByRole('button', { name: amount })).tap();
  await page.locator('.end .go-on').tap();
  await page.locator('dialog.pad').waitFor({ state: 'detached' });
}
