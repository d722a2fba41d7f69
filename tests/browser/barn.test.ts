// The Barn board at the size of its screen: large enough to touch and to read, and no way out.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cutText, faintText, sidewaysScroll, smallTargets, smallText, waysOut } from '../support/inPage.ts';
import { openPage, openVisit, pagePaths, type Visit } from '../support/openPages.ts';

const LEAST_TOUCH_px = 64;
const LEAST_TEXT_px = 28;
const LEAST_CONTRAST = 7;

/** What is wrong on the pages of the board, by kind. */
type Findings = Record<'touch' | 'text' | 'sideways' | 'cut' | 'links' | 'contrast' | 'complaints', string[]>;

const found: Findings = {
  touch: [],
  text: [],
  sideways: [],
  cut: [],
  links: [],
  contrast: [],
  complaints: [],
};
let paths: string[] = [];
let visit: Visit;

// Every page is opened once and asked everything.
beforeAll(async () => {
  visit = await openVisit('demo');
  const context = await visit.browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true });
  paths = pagePaths(visit.site).filter((path) => /^(es\/)?barn\//.test(path));
  for (const path of paths) {
    const { page, complaints } = await openPage(visit, context, path);
    const note = (kind: keyof Findings, lines: string[]) =>
      found[kind].push(...lines.map((line) => `/${path} ${line}`));
    note('touch', await page.evaluate(smallTargets, LEAST_TOUCH_px));
    note('text', await page.evaluate(smallText, LEAST_TEXT_px));
    note('sideways', await page.evaluate(sidewaysScroll));
    note('cut', await page.evaluate(cutText));
    note('links', await page.evaluate(waysOut, visit.site.basePath));
    note('contrast', await page.evaluate(faintText, LEAST_CONTRAST));
    note('complaints', complaints);
    await page.close();
  }
}, 300_000);
afterAll(async () => {
  await visit?.close();
});

describe('every page of the Barn board, 1080 by 1920', () => {
  it('is there: home, six questions and their proofs, in two languages', () => {
    expect(paths).toHaveLength(2 * (1 + 6 * 2));
  });

  it(`has touch targets of at least ${LEAST_TOUCH_px} px both ways`, () => {
    expect(found.touch).toEqual([]);
  });

  it(`has text of at least ${LEAST_TEXT_px} px, in drawings too`, () => {
    expect(found.text).toEqual([]);
  });

  it('does not scroll sideways', () => {
    expect(found.sideways).toEqual([]);
  });

  it('cuts no text off', () => {
    expect(found.cut).toEqual([]);
  });

  it('has links, and none that leaves the board', () => {
    expect(found.links).toEqual([]);
  });

  it(`has text with a contrast of at least ${LEAST_CONTRAST} to 1`, () => {
    expect(found.contrast).toEqual([]);
  });

  it('throws no error, misses no file and asks nobody outside', () => {
    expect(found.complaints).toEqual([]);
  });
});
