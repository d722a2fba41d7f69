// The Barn board in a browser slowed down four times: first paint, the answer to a tap, and ten thousand seeded taps.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { ROOT } from '../../src/build/places.ts';
import { runTool } from '../../src/build/tool.ts';
import { openDesk } from '../../src/desk/serve.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { seededTaps } from '../support/seededTaps.ts';
import { timeText, type Line, type Part } from './line.ts';

const SLOW_DOWN = 4;
const PAINTS = 15;
const TAPS = 300;
const MONKEY_TAPS = 10_000;
const SEED = 20261128;
// Half a kilobyte of page with one line of text: what the browser itself takes.
const EMPTY = 'data:text/html,<!doctype html><title>x</title><h1>x</h1>';

/** Builds the demo site, opens its board and measures it beside an empty page and against the 100 ms that a tap may take. */
export const boardPart: Part = async (say) => {
  const dist = join(ROOT, '.pailside', 'bench-board');
  say('Building the demo site for the board …');
  const { code, said } = await runTool(ROOT, 'astro', ['build'], {
    env: { PAILSIDE_OUT: dist, ASTRO_TELEMETRY_DISABLED: '1' },
  });
  if (code !== 0) throw new Error(`The build failed:\n${said}`);
  const desk = await openDesk({ dist, prints: join(dist, 'none'), basePath: '/' }, 0);
  const browser = await startChromium();
  try {
    const lines = [...(await paints(browser, desk.url, say)), ...(await taps(browser, desk.url, say))];
    return [...lines, ...(await monkey(browser, desk.url, say))];
  } finally {
    await browser.close();
    await desk.close();
    rmSync(dist, { recursive: true, force: true });
  }
};

async function openSlow(browser: Browser): Promise<{ page: Page; session: CDPSession }> {
  const context = await browser.newContext({
    viewport: { width: 1080, height: 1920 },
    hasTouch: true,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
  return { page, session };
}

/** Medians of the first paint with content, ms. */
async function paints(browser: Browser, url: string, say: (line: string) => void): Promise<Line[]> {
  say('First paint …');
  const { page } = await openSlow(browser);
  const median_ms = async (address: string) => {
    const times: number[] = [];
    for (let run = 0; run < PAINTS; run += 1) {
      await page.goto(address, { waitUntil: 'load' });
      times.push(
        await page.evaluate(
          () =>
            new Promise<number>((done) => {
              new PerformanceObserver((list) => {
                const paint = list.getEntriesByName('first-contentful-paint')[0];
                if (paint) done(paint.startTime);
              }).observe({ type: 'paint', buffered: true });
            }),
        ),
      );
    }
    return quantile(times, 0.5);
  };
  const empty_ms = await median_ms(EMPTY);
  const lines: Line[] = [];
  for (const path of ['barn/', 'barn/how-much/', 'barn/whose-milk/', 'barn/do/year/']) {
    const ours_ms = await median_ms(new URL(path, url).href);
    lines.push({
      what: `first paint of /${path} at ${SLOW_DOWN} times slower`,
      ours: timeText(ours_ms),
      beside: 'an empty page',
      theirs: timeText(empty_ms),
      ratio: ours_ms / empty_ms,
    });
  }
  await page.context().close();
  return lines;
}

/** From a tap to the block shown pressed, and to the finished scene, over the things to do. */
async function taps(browser: Browser, url: string, say: (line: string) => void): Promise<Line[]> {
  say('Taps …');
  const { page } = await openSlow(browser);
  await page.addInitScript(watchTaps);
  const times: number[] = [];
  const scenes: number[] = [];
  const paths = ['pour', 'guess', 'cups', 'year', 'two-milks', 'steps', 'squeeze', 'grass', 'faces', 'menu'];
  for (let place = 0; times.length < TAPS; place += 1) {
    await page.goto(new URL(`barn/do/${paths[place % paths.length]}/`, url).href);
    await page.waitForSelector('#doing[data-awake]');
    for (let tap = 0; tap < 12; tap += 1) {
      const open = page.locator('.stage button:enabled');
      const count = await open.count();
      if (count === 0) break;
      await open.nth((place * 7 + tap * 3) % count).tap({ force: true, timeout: 5_000 }).catch(() => undefined); // prettier-ignore
    }
    await page.waitForTimeout(60);
    const seen = await page.evaluate(() => (window as unknown as { seen: SeenTaps }).seen);
    times.push(...seen.pressed_ms);
    scenes.push(...seen.scenes_ms);
  }
  await page.context().close();
  return [tapLine('tap to the block pressed', times), tapLine('tap to the finished scene', scenes)];
}

function tapLine(what: string, times: readonly number[]): Line {
  const p98_ms = quantile(times, 0.98);
  return {
    what: `${what}, p50 ${timeText(quantile(times, 0.5))}, p98 of ${times.length} at ${SLOW_DOWN} times slower`,
    ours: timeText(p98_ms),
    beside: 'what a tap may take',
    theirs: timeText(100),
    ratio: p98_ms / 100,
  };
}

interface SeenTaps {
  readonly pressed_ms: number[];
  readonly scenes_ms: number[];
}

// Runs in the page. Event timing counts from the touch to the next paint, which shows the block pressed; the page makes
// its own click only then, and the frame after that click is the finished scene.
function watchTaps(): void {
  const seen: SeenTaps = { pressed_ms: [], scenes_ms: [] };
  (window as unknown as { seen: SeenTaps }).seen = seen;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (entry.name === 'click') seen.pressed_ms.push(entry.duration);
  }).observe({ type: 'event', buffered: true, durationThreshold: 16 } as PerformanceObserverInit);
  let touched = 0;
  window.addEventListener(
    'click',
    (event) => {
      if (event.isTrusted) touched = event.timeStamp;
      else requestAnimationFrame(() => setTimeout(() => seen.scenes_ms.push(performance.now() - touched)));
    },
    { capture: true },
  );
}

/** Ten thousand taps anywhere: errors, ways off the board, and how the memory of the page grew. */
async function monkey(browser: Browser, url: string, say: (line: string) => void): Promise<Line[]> {
  say(`${MONKEY_TAPS} taps …`);
  const context = await browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('popup', (popup) => faults.push(`opened ${popup.url()}`));
  page.on('framenavigated', (frame) => {
    if (!/\/(es\/)?barn\//.test(new URL(frame.url()).pathname)) faults.push(`left for ${frame.url()}`);
  });
  const session = await context.newCDPSession(page);
  await page.goto(new URL('barn/', url).href);
  const heaps: number[] = [];
  const places = seededTaps(SEED);
  for (let tap = 0; tap < MONKEY_TAPS; tap += 1) {
    const { x, y } = places.next().value;
    if (!(await tapped(page, x * 1080, y * 1920)) && !(await isAlive(page)))
      faults.push(`nothing answers after a tap on ${page.url()}`);
    if (tap % 500 === 499) heaps.push(await homeHeap(page, session, url));
  }
  await context.close();
  if (faults.length > 0)
    throw new Error(`The monkey found, with seed ${SEED}:\n${[...new Set(faults)].join('\n')}`);
  const [early = 0, late = 0] = [quantile(heaps.slice(0, 5), 0.5), quantile(heaps.slice(-5), 0.5)];
  return [
    {
      what: `script memory at home after ${MONKEY_TAPS} taps, no error, no way out`,
      ours: `${(late / 1e6).toFixed(1)} MB`,
      beside: 'after the first 2,500',
      theirs: `${(early / 1e6).toFixed(1)} MB`,
      ratio: late / early,
    },
  ];
}

const LONGEST_TAP_ms = 2_000;

// The browser never answers for a tap whose page is taken away by the tap before it.
function tapped(page: Page, x: number, y: number): Promise<boolean> {
  const done = page.touchscreen.tap(x, y).then(
    () => true,
    (error: unknown) => {
      if (page.isClosed()) throw error;
      return false;
    },
  );
  return Promise.race([done, sleep(LONGEST_TAP_ms, false)]);
}

function isAlive(page: Page): Promise<boolean> {
  return Promise.race([page.evaluate(() => document.readyState !== 'loading'), sleep(LONGEST_TAP_ms, false)]);
}

/** Bytes that scripts hold once the board is home and rubbish is collected. */
async function homeHeap(page: Page, session: CDPSession, url: string): Promise<number> {
  await page.goto(new URL('barn/', url).href);
  await session.send('HeapProfiler.collectGarbage');
  return (await session.send('Runtime.getHeapUsage')).usedSize;
}

/** The value below which that share of the values lies. */
function quantile(values: readonly number[], share: number): number {
  const inOrder = values.toSorted((a, b) => a - b);
  return inOrder[Math.min(inOrder.length - 1, Math.floor(share * inOrder.length))] ?? Number.NaN;
}
