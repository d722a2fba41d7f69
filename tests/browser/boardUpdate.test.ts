// A new build of the Barn board: taken whole while nobody is there, and by no half, whatever breaks on the way.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { findBrowser } from '../../scripts/findBrowser.mjs';
import { CHROMIUM_FLAGS, startChromium } from '../../src/print/chromium.ts';
import {
  boardPaths,
  buildAnew,
  isNew,
  keptBuilds,
  MINUTE_ms,
  until,
  untouched,
  updateBoard,
  visitBoard,
} from '../support/boardVisit.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { serveCopy, type ServedCopy } from '../support/servedCopy.ts';

const LONG_ms = 400_000;

let browser: Browser;
let site: TestSite;
let copy: ServedCopy;
let context: BrowserContext;

beforeAll(async () => {
  site = await builtSite('demo');
  browser = await startChromium();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  copy = await serveCopy(site);
  context = await browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true });
});
afterEach(async () => {
  await context.close();
  await copy.close();
});

const visit = (path: string) => visitBoard(context, copy, path);
const goTo = async (page: Page, path: string) => {
  await page.goto(copy.at(path));
  return isNew(page);
};

describe('a new build', () => {
  it('does not come while a child is on a page, in whichever language', async () => {
    const page = await visit('barn/how-much/');
    buildAnew(copy);
    expect(await updateBoard(page)).toEqual(['installed', 'installed']);
    await page.clock.runFor(80_000);
    for (const path of ['barn/how-much/', 'es/barn/how-much/', 'es/barn/', 'barn/how-much/', 'barn/'])
      expect(await goTo(page, path), path).toBe(false);
    expect(await keptBuilds(page)).toEqual(['whole', 'whole']);
  });

  it('comes when home has stood untouched for a minute, in all languages at once, without a network too', async () => {
    const page = await visit('barn/');
    buildAnew(copy);
    await untouched(page);
    expect(await isNew(page)).toBe(true);
    await context.setOffline(true);
    for (const path of ['es/barn/how-much/', 'barn/how-much/', 'es/barn/'])
      expect(await goTo(page, path), path).toBe(true);
    // A build that nobody asks for any more goes when the next one comes.
    await context.setOffline(false);
    copy.rebuild(['barn'], ' anew</h1>', ' and anew</h1>');
    await goTo(page, 'barn/');
    await untouched(page);
    expect(await keptBuilds(page)).toEqual(['whole', 'whole']);
  });

  it('waits while somebody touches home, or is on a page in another window', async () => {
    const page = await visit('barn/');
    const other = await context.newPage();
    await other.goto(copy.at('es/barn/how-much/'));
    buildAnew(copy);
    // All windows of a context have one clock, and a board that is left alone goes home.
    for (let part = 0; part < 4; part += 1) {
      await page.clock.runFor(MINUTE_ms / 2);
      for (const one of [page, other]) await one.touchscreen.tap(5, 5);
    }
    expect(await keptBuilds(page)).toEqual(['whole']);
    for (let part = 0; part < 3; part += 1) {
      await page.clock.runFor(MINUTE_ms / 2);
      await other.touchscreen.tap(5, 5);
    }
    await until(page, async () => {
      const all = await navigator.serviceWorker.getRegistrations();
      return all.every(({ waiting }) => waiting !== null);
    });
    expect(await isNew(page)).toBe(false);
    await other.close();
    const loaded = page.waitForEvent('load');
    await page.clock.runFor(60 * MINUTE_ms);
    await loaded;
    expect(await isNew(page)).toBe(true);
  });
});

/** A later build of which one file is wrong, or none comes any more after some. */
describe('half an update', () => {
  const halves: Record<string, () => void> = {
    'serves a file of another build': () =>
      (copy.gate = (path) => (path === 'es/barn/' ? new Response('<h1>Something else</h1>') : undefined)),
    'answers with an error': () =>
      (copy.gate = (path) => (path === 'es/barn/' ? new Response('No.', { status: 500 }) : undefined)),
    'dies': () =>
      (copy.gate = (path) => {
        if (path === 'es/barn/how-much/') void copy.stop();
        return undefined;
      }),
  }; // prettier-ignore

  it.each(Object.keys(halves))('where the server %s leaves the old build whole', async (how) => {
    const page = await visit('barn/');
    buildAnew(copy);
    halves[how]?.();
    await updateBoard(page);
    expect(await keptBuilds(page)).toEqual(['whole']);
    await page.clock.runFor(2 * MINUTE_ms);
    await context.setOffline(true);
    for (const path of boardPaths(site).slice(0, 8)) expect(await goTo(page, path)).toBe(false);
    // The whole of it comes later.
    await context.setOffline(false);
    copy.gate = () => undefined;
    await copy.start();
    await goTo(page, 'barn/');
    await untouched(page);
    expect(await isNew(page)).toBe(true);
  });
});

/** A browser of its own whose machine can lose its power: it is killed, and started again with what lies on the disk. */
async function startMachine(
  profile: string,
): Promise<{ context: BrowserContext; cutPower: () => Promise<void> }> {
  const found = findBrowser(process.env);
  if (!found.ok) throw new Error('There is no browser.');
  const noted = join(profile, 'DevToolsActivePort');
  rmSync(noted, { force: true });
  const machine = spawn(found.path, [...CHROMIUM_FLAGS, `--user-data-dir=${profile}`, '--remote-debugging-port=0', 'about:blank'], { stdio: 'ignore' }); // prettier-ignore
  // Also where the test fails before it cuts the power itself.
  onTestFinished(() => void machine.kill('SIGKILL'));
  // The file is there a moment before its port is written into it.
  const port = () => (existsSync(noted) ? readFileSync(noted, 'utf8').split('\n')[0] : '');
  await expect.poll(port, { timeout: 30_000 }).toMatch(/^\d+$/);
  const connected = await chromium.connectOverCDP(`http://127.0.0.1:${port()}`);
  const [own] = connected.contexts();
  if (!own) throw new Error('The browser has no window.');
  const cutPower = async () => {
    const gone = new Promise((done) => machine.once('exit', done));
    machine.kill('SIGKILL');
    await gone;
  };
  return { context: own, cutPower };
}

describe('a power cut', () => {
  it(
    'in the middle of the first filling or of an update leaves a board that stands, and the rest comes later',
    async () => {
      const profile = mkdtempSync(join(tmpdir(), 'board-machine-'));
      onTestFinished(() => rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }));
      /** The server sends this file no more; resolves when it was asked for it. */
      const held = (path: string) =>
        new Promise<void>((reached) => {
          copy.gate = (asked) => {
            if (asked !== path) return undefined;
            reached();
            return new Promise<Response>(() => undefined);
          };
        });

      let machine = await startMachine(profile);
      let half = held('es/barn/how-much/');
      await (await machine.context.newPage()).goto(copy.at('barn/'));
      await half;
      await machine.cutPower();

      copy.gate = () => undefined;
      machine = await startMachine(profile);
      let page = await visitBoard(machine.context, copy, 'barn/');
      // What was on its way to the disk is lost in a power cut.
      await sleep(3000);
      buildAnew(copy);
      half = held('es/barn/how-much/');
      void page.evaluate(async () => {
      for (const one of await navigator.serviceWorker.getRegistrations()) await one.update();
    }).catch(() => undefined); // prettier-ignore
      await half;
      await machine.cutPower();

      await copy.stop();
      machine = await startMachine(profile);
      page = await machine.context.newPage();
      for (const path of ['barn/', 'es/barn/how-much/', 'barn/how-much/', 'es/barn/'])
        expect(await goTo(page, path), path).toBe(false);
      await page.close();

      copy.gate = () => undefined;
      await copy.start();
      page = await visitBoard(machine.context, copy, 'barn/');
      await untouched(page);
      expect(await isNew(page)).toBe(true);
      expect(await goTo(page, 'es/barn/how-much/')).toBe(true);
      await machine.cutPower();
    },
    LONG_ms,
  );
});
