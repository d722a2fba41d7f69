// The lessons in a real browser: the list, and a page whose materials follow the size of the class.
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { materialsFor } from '../../shared/lesson/materials.ts';
import type { Material } from '../../shared/lesson/types.ts';
import { smallTargets } from '../support/inPage.ts';
import { openPage, openVisit, pagePaths, type Visit } from '../support/openPages.ts';

const LESSON = 'lessons/morning-with-the-goats/';
let visit: Visit;
let context: BrowserContext;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({ viewport: { width: 1280, height: 900 } });
});
afterAll(async () => {
  await visit?.close();
});

async function open(path: string): Promise<Page> {
  const { page, complaints } = await openPage(visit, context, path);
  onTestFinished(async () => {
    await page.close();
    expect(complaints).toEqual([]);
  });
  return page;
}

const amounts = async (page: Page) =>
  (await page.locator('.materials [data-amount]').allTextContents()).map(Number);
const materialsOf = async (page: Page) =>
  JSON.parse((await page.locator('#materials').textContent()) ?? '[]') as Material[];
const expected = (materials: readonly Material[], children: number) =>
  materialsFor(materials, children).map(({ count }) => count);

describe('the list of lessons', () => {
  it('has every lesson of every band once, and three places in each band', async () => {
    const page = await open('lessons/');
    const links = await page
      .locator('.lesson-list h4 a')
      .evaluateAll((all) => all.map((one) => one.getAttribute('href')));
    const pages = pagePaths(visit.site).filter((path) => /^lessons\/./.test(path));
    expect(links.map((one) => one?.replace(visit.site.basePath, '')).sort()).toEqual(pages.sort());
    expect(await page.locator('.lesson-band').count()).toBe(4);
    for (const band of await page.locator('.lesson-band').all())
      expect(await band.locator('.lesson-place').count()).toBe(3);
  });
});

describe('the page of a lesson', () => {
  it('shows the materials for a usual class, and for another one as soon as its size is typed', async () => {
    const page = await open(LESSON);
    const materials = await materialsOf(page);
    expect(new Set(materials.map(({ per }) => per))).toEqual(new Set(['child', 'group', 'class']));
    expect(await amounts(page)).toEqual(expected(materials, 24));
    await page.getByLabel('How many are in your class?').fill('31');
    expect(await amounts(page)).toEqual(expected(materials, 31));
    expect(expected(materials, 31)).not.toEqual(expected(materials, 24));
    expect((await page.locator('.materials caption').textContent())?.trim()).toContain('For a class of 31:');
    expect(new URL(page.url()).searchParams.get('class')).toBe('31');
  });

  it('keeps the size in its address, and its amounts where a size is none', async () => {
    const page = await open(`es/${LESSON}?class=17`);
    const materials = await materialsOf(page);
    const field = page.getByLabel('¿Cuántos son en su clase?');
    expect(await field.inputValue()).toBe('17');
    expect(await amounts(page)).toEqual(expected(materials, 17));
    for (const wrong of ['9', '61', '', '2.5']) {
      await field.fill(wrong);
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      expect(await amounts(page)).toEqual(expected(materials, 17));
    }
    await field.fill('60');
    expect(await field.getAttribute('aria-invalid')).toBe('false');
    expect(await amounts(page)).toEqual(expected(materials, 60));
  });

  it('counts the minutes on from step to step, up to what it says at the top', async () => {
    for (const path of pagePaths(visit.site)
      .filter((one) => /^lessons\/./.test(one))
      .slice(0, 4)) {
      const page = await open(path);
      const spans = await page.locator('.clock tbody td:first-child').allTextContents();
      const read = spans.map((one) => one.split('–').map(Number));
      expect(read[0]?.[0]).toBe(0);
      read.slice(1).forEach(([from], index) => expect(from).toBe(read[index]?.[1]));
      const total = read.at(-1)?.[1];
      expect(await page.locator('.lesson-head .facts').textContent()).toContain(`${total} minutes`);
      expect(await page.locator('.clock tfoot td').textContent()).toBe(String(total));
      expect(await page.locator('.step-facts b').allTextContents()).toEqual(spans);
    }
  });

  it('says in words what is for the class and what for the teacher', async () => {
    const page = await open(LESSON);
    const whose = (kind: string) => page.locator(`.for-${kind} > .whose`).allTextContents();
    expect(new Set(await whose('class'))).toEqual(new Set(['To the class']));
    expect(new Set(await whose('teacher'))).toEqual(new Set(['For you']));
    expect((await whose('teacher')).length).toBe(await page.locator('.for-teacher').count());
  });

  it('leads to its sheets, to the print room with them, and to the lesson bench', async () => {
    const page = await open(LESSON);
    const hrefs = (await page.locator('.lesson a').evaluateAll((all) => all.map((one) => one.getAttribute('href')))).map((one) => one ?? ''); // prettier-ignore
    expect(hrefs.filter((one) => one.includes('/bench/'))).toEqual([expect.stringMatching(/\/bench\/\?lesson=morning-with-the-goats$/)]); // prettier-ignore
    const sheets = hrefs.filter((one) => /\/sheets\/./.test(one)).map((one) => /\/sheets\/(.+)\//.exec(one)?.[1]); // prettier-ignore
    expect(sheets.length).toBeGreaterThan(0);
    for (const name of sheets) expect(hrefs.some((one) => one.endsWith(`/print/?sheets=${name}`))).toBe(true);
  });

  it('has controls that a finger can hit', async () => {
    const page = await open(LESSON);
    await page.setViewportSize({ width: 390, height: 844 });
    // The way to the main part is hidden until it has the focus.
    expect((await page.evaluate(smallTargets, 24)).filter((one) => !one.endsWith(' 1 x 1'))).toEqual([]);
  });

  it('prints on Letter and A4 with every step, without the settings and the site’s own frame', async () => {
    const page = await open(LESSON);
    await page.emulateMedia({ media: 'print' });
    for (const hidden of ['.masthead nav', 'body > footer', '.class-size', '.links'])
      expect(await page.locator(hidden).first().isVisible(), hidden).toBe(false);
    const steps = await page.locator('.lesson-step').count();
    expect(steps).toBeGreaterThan(4);
    for (const step of await page.locator('.lesson-step').all()) expect(await step.isVisible()).toBe(true);
  });
});
