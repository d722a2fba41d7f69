// Every page of the Barn board at the screens it is made for: large enough to touch and to read, whole, and no way out.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import { ACTIVITIES } from '../../shared/board/do/plans.ts';
import { pxPerMm, TARGET_MM } from '../../shared/board/mount.ts';
import { LEVELS, type Level } from '../../shared/board/tell.ts';
import { TOPICS } from '../../shared/board/topics.ts';
import { cutText, faintText, sidewaysScroll, smallTargets, smallText, waysOut } from '../support/inPage.ts';
import { beyondPicture, beyondStage, coveredText, openDoors, touchFaults } from '../support/onBoard.ts';
import { openPage, openVisit, pagePaths, type Visit } from '../support/openPages.ts';

// A capital of 4.8 mm: Section 508, 402.4 (from memory). Andika's capital is 0.69 of its size, measured in the browser.
const CAPITAL_mm = 4.8;
// Labels of a drawing on a screen of ten inches, which one reads at arm's length (common practice, no source).
const DRAWN_CAPITAL_mm = 2.4;
const CAPITAL_SHARE = 0.69;
const LEAST_CONTRAST = 7;
// On a screen of ten inches, half a pace away: 0.7 degrees at 350 mm. EN 301 549, 5.1.4 (from memory).
const SMALL_CAPITAL_mm = 4.28;
// On a phone: WCAG 2.2, 2.5.5 Target Size (Enhanced).
const PHONE_TOUCH_px = 44;

/** A screen: its pixels and its diagonal, mm. */
interface Screen {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly diagonal_mm: number;
  /** Whether a page that is not made for slow reading must fit without going further down. */
  readonly whole: boolean;
}

const SCREENS: readonly Screen[] = [
  { name: 'tall', width: 1080, height: 1920, diagonal_mm: 21.5 * 25.4, whole: true },
  { name: 'wide', width: 1920, height: 1080, diagonal_mm: 21.5 * 25.4, whole: true },
  { name: 'small', width: 1280, height: 800, diagonal_mm: 10.1 * 25.4, whole: false },
];
const PHONE = { width: 390, height: 844 };
// These are read slowly, and are as long as they must be. The farm's own page is for an adult with a keyboard.
const LONG = /\/proof\/$/;
const OF_THE_FARM = /(^|\/)barn\/farm\//;
const PAPER = /\/sheet\//;

type Kind =
  'touch' | 'text' | 'sideways' | 'cut' | 'covered' | 'beyond' | 'links' | 'doors' | 'contrast' | 'complaints' | 'phone'; // prettier-ignore
const found: Record<Kind, string[]> = { touch: [], text: [], sideways: [], cut: [], covered: [], beyond: [], links: [], doors: [], contrast: [], complaints: [], phone: [] }; // prettier-ignore
let paths: string[] = [];
let visit: Visit;

// Every page is opened once, turned to each screen and level, and asked everything.
beforeAll(async () => {
  visit = await openVisit('demo');
  const context = await visit.browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true, serviceWorkers: 'block' }); // prettier-ignore
  // Things to do are drawn by lot in the browser; here the lot always falls the same.
  await context.addInitScript(() => {
    crypto.getRandomValues = ((into: Uint32Array) => into.fill(7)) as unknown as Crypto['getRandomValues'];
  });
  paths = pagePaths(visit.site).filter((path) => /^(es\/)?barn\//.test(path) && !PAPER.test(path));
  const left = paths.filter((path) => !OF_THE_FARM.test(path));
  const worker = async () => {
    for (let path = left.shift(); path !== undefined; path = left.shift()) await ask(context, path);
  };
  await Promise.all([worker(), worker()]);
}, 600_000);
afterAll(async () => {
  await visit?.close();
});

async function ask(context: BrowserContext, path: string): Promise<void> {
  const { page, complaints } = await openPage(visit, context, path);
  for (const level of LEVELS) {
    for (const screen of SCREENS) await askAt(page, path, level, screen);
    await page.setViewportSize(PHONE);
    const where = `/${path} ${level} phone`;
    note('phone', where, await page.evaluate(sidewaysScroll));
    note('phone', where, await page.evaluate(cutText));
    note('phone', where, await page.evaluate(smallTargets, PHONE_TOUCH_px));
  }
  note('links', `/${path}`, await page.evaluate(waysOut, visit.site.basePath));
  note('doors', `/${path}`, await page.evaluate(openDoors));
  note('complaints', `/${path}`, complaints);
  await page.close();
}

async function askAt(page: Page, path: string, level: Level, screen: Screen): Promise<void> {
  await page.setViewportSize(screen);
  await page.evaluate(
    ([name, diagonal]) => {
      document.documentElement.dataset['level'] = name;
      document.documentElement.style.setProperty('--diagonal_mm', diagonal);
    },
    [level, String(screen.diagonal_mm)] as const,
  );
  const where = `/${path} ${level} ${screen.name}`;
  const px = pxPerMm(screen.width, screen.height, screen.diagonal_mm);
  const { apart, rest } = TARGET_MM;
  const touch = { side_px: TARGET_MM[level] * px, apart_px: apart * px, rest_px: rest * px };
  note('touch', where, await page.evaluate(touchFaults, touch));
  note('text', where, await tooSmall(page, screen, px));
  note('sideways', where, await page.evaluate(sidewaysScroll));
  note('cut', where, await page.evaluate(cutText));
  note('covered', where, await page.evaluate(coveredText));
  note('covered', where, await page.evaluate(beyondPicture));
  if (screen.whole && !LONG.test(path)) note('beyond', where, await page.evaluate(beyondStage));
  if (screen.name === 'tall') note('contrast', where, await page.evaluate(faintText, LEAST_CONTRAST));
}

/** Text below its least size: on a small screen a drawing is as large as there is room, and its labels with it. */
async function tooSmall(page: Page, screen: Screen, px: number): Promise<string[]> {
  const least_px = ((screen.whole ? CAPITAL_mm : SMALL_CAPITAL_mm) / CAPITAL_SHARE) * px;
  if (screen.whole) return page.evaluate(smallText, least_px);
  const drawn = await page.evaluate(smallText, (DRAWN_CAPITAL_mm / CAPITAL_SHARE) * px);
  const own = await page.evaluate(smallText, least_px);
  const inDrawings = await page.evaluate(() =>
    [...document.querySelectorAll('figure, .scene, svg')].map((one) => one.textContent),
  );
  return [...drawn, ...own.filter((line) => !inDrawings.some((text) => text.includes(/^"(.*)" [\d.]+ px$/.exec(line)?.[1] ?? line)))]; // prettier-ignore
}

function note(kind: Kind, where: string, lines: readonly string[]): void {
  found[kind].push(...lines.map((line) => `${where} ${line}`));
}

describe('every page of the Barn board', () => {
  it('is there: every question with its proof, every topic, every thing to do, in two languages', () => {
    const questions = Object.values(TOPICS).flat();
    expect(questions.length).toBeGreaterThanOrEqual(24);
    expect(ACTIVITIES.length).toBeGreaterThanOrEqual(10);
    const english = [
      '',
      ...questions.flatMap((name) => [`${name}/`, `${name}/proof/`]),
      ...Object.keys(TOPICS).map((name) => `topic/${name}/`),
      'do/',
      ...ACTIVITIES.map((name) => `do/${name}/`),
      'pail/',
    ].map((path) => `barn/${path}`);
    expect(paths).toEqual(expect.arrayContaining([...english, ...english.map((path) => `es/${path}`)]));
  });

  it('has targets of 25 mm at the younger level and 20 mm at the older, 5 mm apart, none in the lowest 15 mm', () => {
    expect(found.touch).toEqual([]);
  });

  it(`has capitals of at least ${CAPITAL_mm} mm, in drawings too, and of ${SMALL_CAPITAL_mm} mm on a small screen`, () => {
    expect(found.text).toEqual([]);
  });

  it('fits a tall and a wide screen without going further down, proofs apart', () => {
    expect(found.beyond).toEqual([]);
  });

  it('does not scroll sideways, cuts no text off, lays none under a target and keeps each drawing in its place', () => {
    expect([...found.sideways, ...found.cut, ...found.covered]).toEqual([]);
  });

  it('has links, and none that leaves the board', () => {
    expect(found.links).toEqual([]);
  });

  it('has no field to type in, no frame, no other window, no inline style or script', () => {
    expect(found.doors).toEqual([]);
  });

  it(`has text with a contrast of at least ${LEAST_CONTRAST} to 1`, () => {
    expect(found.contrast).toEqual([]);
  });

  it('throws no error, misses no file and asks nobody outside', () => {
    expect(found.complaints).toEqual([]);
  });

  it('suits a phone: no scrolling sideways, no cut text, nothing too small to tap', () => {
    expect(found.phone).toEqual([]);
  });
});
