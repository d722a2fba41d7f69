// The Lesson bench as a teacher uses it: by pointer and by keyboard, by ear, by link, on a phone and on paper.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { AxeResults } from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sidewaysScroll, smallTargets } from '../support/inPage.ts';
import { openPage, openVisit, type Visit } from '../support/openPages.ts';
import { unzip } from '../support/unzip.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const MOST_SCRIPT_bytes = 60_000;

let visit: Visit;
let context: BrowserContext;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({
    viewport: { width: 1280, height: 900 },
    serviceWorkers: 'block',
  });
});
afterAll(async () => {
  await visit?.close();
});

async function openBench(
  query = '',
  path = 'bench/',
  from = context,
): Promise<{ page: Page; complaints: string[] }> {
  const watched = await openPage(visit, from, `${path}${query}`);
  await watched.page.locator('.wish').waitFor();
  return watched;
}

const titles = (page: Page) => page.locator('.step-list h3').allTextContents();
const said = async (page: Page) => ((await page.locator('[aria-live]').textContent()) ?? '').trim();
const queryOf = (page: Page) => new URL(page.url()).search;
const clocks = (page: Page) => page.locator('.step-list .clock').allTextContents();

describe('the bench', () => {
  it('lays out a lesson that fills the time, and follows every wish', async () => {
    const { page, complaints } = await openBench('?grade=2&min=45');
    expect(await page.locator('.laid .full').textContent()).toBe('The time is full: 45 minutes.');
    await page.getByLabel('Minutes', { exact: true }).fill('20');
    await page.getByLabel('Minutes', { exact: true }).press('Tab');
    expect(await page.locator('.laid .full').textContent()).toBe('The time is full: 20 minutes.');
    await page.getByLabel('At the farm').check();
    await page.getByLabel('Begins at').fill('09:30');
    expect(queryOf(page)).toBe('?grade=2&min=20&place=barn&start=9:30');
    expect((await clocks(page))[0]).toMatch(/^9:30 to /);
    expect(await page.locator('.cautions-of').first().textContent()).toContain('washes hands');
    await page.getByLabel('Grade').selectOption('11');
    expect(await page.locator('.plan-title').textContent()).toContain('Grade 11');
    expect(complaints).toEqual([]);
    await page.close();
  });

  it('says why each step is left out, and puts one in where it belongs', async () => {
    const { page } = await openBench('?grade=2&min=30');
    const count = (await titles(page)).length;
    const first = page.locator('.left-out > .out-list > li').first();
    const title = (await first.locator('h3').textContent()) ?? '';
    expect(await first.locator('.why').textContent()).not.toBe('');
    await first.getByRole('button').click();
    expect((await titles(page)).length).toBeGreaterThan(count);
    expect(await titles(page)).toContain(title);
    expect(await said(page)).toContain(`${title} is now step `);
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H3');
    expect(await page.locator('.laid .full').textContent()).toMatch(/That is \d+ minutes? too long\.$/);
    await page.getByRole('button', { name: 'Fit the steps to the time' }).click();
    expect(await said(page)).toMatch(/^The steps fit the time\./);
    await page.close();
  });

  it('moves a step by keyboard: the focus stays with it and the live region tells its place and time', async () => {
    const { page } = await openBench('?grade=2&min=45');
    const [, second = '', third = ''] = await titles(page);
    await page.locator('.step-list > li').nth(1).getByRole('button', { name: /^Move down/ }).focus();
    await page.keyboard.press('Enter');
    expect((await titles(page)).slice(1, 3)).toEqual([third, second]);
    expect(await said(page)).toMatch(new RegExp(`^${second} is now step 3, 0:\\d\\d to 0:\\d\\d\\.$`));
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(`Move down: ${second}`);
    for (let press = 0; press < 8; press += 1) await page.keyboard.press('Enter');
    expect(await said(page)).toMatch(/ it can go no further\.$/);
    expect((await titles(page)).at(-1)).toBe(second);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(`Move down: ${second}`);
    await page.close();
  }); // prettier-ignore

  it('lengthens within bounds, takes out, exchanges, and lays out anew with a way back', async () => {
    const { page } = await openBench('?grade=2&min=45');
    const before = await titles(page);
    const row = page.locator('.step-list > li').nth(1);
    const longer = row.getByRole('button', { name: /longer/ });
    for (let press = 0; press < 130; press += 1) {
      await longer.click();
      if ((await longer.getAttribute('aria-disabled')) === 'true') break;
    }
    // It stays in reach of the keyboard, and says why it does nothing.
    await longer.press('Enter');
    expect(await said(page)).toMatch(/ and stays at \d+ minutes\.$/);
    await row.getByRole('button', { name: /^Take out/ }).click();
    expect(await titles(page)).toEqual(before.filter((_, index) => index !== 1));
    const changed = queryOf(page);
    expect(changed).toContain('&steps=');
    await page.locator('.exchange summary').first().click();
    const other = page.locator('.exchange button').first();
    const name = /: (.*), \d+ minutes?$/.exec((await other.textContent()) ?? '')?.[1] ?? '';
    await other.click();
    expect(await titles(page)).toContain(name);
    const exchanged = queryOf(page);
    await page.getByRole('button', { name: 'Lay it out anew' }).click();
    expect(await titles(page)).toEqual(before);
    expect(queryOf(page)).toBe('?grade=2&min=45');
    await page.goBack();
    await expect.poll(() => queryOf(page)).toBe(exchanged);
    expect(await titles(page)).toContain(name);
    await page.close();
  });

  it('is shared by its address, in the other language too', async () => {
    const { page } = await openBench('?grade=4&min=60&place=after');
    await page.getByRole('button', { name: /^Take out/ }).first().click();
    const steps = await clocks(page);
    const again = (await openBench(queryOf(page))).page;
    expect(await titles(again)).toEqual(await titles(page));
    expect(await clocks(again)).toEqual(steps);
    await page.getByRole('link', { name: 'Español' }).click();
    await page.locator('.wish').waitFor();
    expect(queryOf(page)).toBe(queryOf(again));
    expect(await page.locator('.step-list > li').count()).toBe(steps.length);
    expect(await page.locator('h1').textContent()).toBe('Mesa de lecciones');
    await again.close();
    await page.close();
  }); // prettier-ignore

  it('tells what of a link it could not use, and goes on', async () => {
    const { page, complaints } = await openBench('?grade=99&min=30&topics=milk.cheese&steps=no-lesson.no-step.5&x=1');
    const notes = await page.locator('.aside-notes li').allTextContents();
    expect(notes).toHaveLength(4);
    expect(notes.join(' ')).toMatch(/grade=99.*cheese.*no-lesson\.no-step\.5|x.*no-lesson/s);
    expect(complaints).toEqual([]);
    await page.getByRole('button', { name: 'All right' }).click();
    expect(await page.locator('.aside-notes').count()).toBe(0);
    await page.getByRole('button', { name: 'Lay it out anew' }).click();
    expect((await titles(page)).length).toBeGreaterThan(1);
    await page.close();
  }); // prettier-ignore

  it('stands as a plan where scripts do not run', async () => {
    const plain = await visit.browser.newContext({ javaScriptEnabled: false });
    const page = await plain.newPage();
    await page.goto(new URL('bench/', visit.desk.url).href);
    expect((await titles(page)).length).toBeGreaterThan(2);
    expect(await page.locator('.bench').textContent()).toContain('your browser needs scripts');
    expect(await page.locator('.bench button').count()).toBe(0);
    await plain.close();
  });
});

describe('the bench in every state', () => {
  const states = {
    'at rest': '?grade=2&min=45',
    full: '?grade=7&min=90&place=barn&topics=numbers.milk&start=9:30',
    emptied: '?grade=2&min=45&steps=',
    'too short': '?grade=2&min=5',
    'with a bad link': '?grade=2&steps=a.b.1&y=2',
  };

  it.each(Object.entries(states))('passes axe %s, with room for a finger and no sideways scroll', async (_, query) => {
    for (const path of ['bench/', 'es/bench/']) {
      const phone = await visit.browser.newContext({ viewport: { width: 390, height: 800 }, serviceWorkers: 'block' });
      const { page, complaints } = await openBench(query, path, phone);
      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
      expect(await page.evaluate(sidewaysScroll)).toEqual([]);
      const small = await page.evaluate(smallTargets, 24);
      expect(small.filter((text) => !/^"(To the main part|Al contenido principal)"/.test(text))).toEqual([]);
      await page.evaluate(axeSource);
      const found = await page.evaluate(() =>
        (window as unknown as { axe: { run(at: Document): Promise<AxeResults> } }).axe.run(document));
      expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')}`)).toEqual([]);
      expect(complaints).toEqual([]);
      await phone.close();
    }
  }); // prettier-ignore
});

describe('what a teacher takes along', () => {
  it('is a Word document and a lesson file under plain names', async () => {
    const { page, complaints } = await openBench('?grade=K&min=30', 'es/bench/');
    const [word] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Documento de Word' }).click()]);
    expect(word.suggestedFilename()).toBe('leccion-antes-de-la-visita-grado-k-30-minutos.docx');
    const text = unzip(readFileSync(await word.path())).get('word/document.xml')?.toString() ?? '';
    for (const title of await titles(page)) expect(text).toContain(title.replaceAll('&', '&amp;'));
    const [mdx] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Archivo de lección' }).click()]);
    expect(mdx.suggestedFilename()).toBe('leccion-antes-de-la-visita-grado-k-30-minutos.mdx');
    expect((readFileSync(await mdx.path(), 'utf8').match(/^<Step /gm) ?? []).length).toBe((await titles(page)).length);
    expect(complaints).toEqual([]);
    await page.close();
  }); // prettier-ignore

  it.each(['letter', 'a4'])('is a plan on %s paper: clock, texts, materials and cautions, and nothing to press', async (format) => {
    const { page } = await openBench('?grade=2&min=45&place=barn&start=10:00');
    const steps = await titles(page);
    const pdf = await page.pdf({ format, tagged: true, preferCSSPageSize: true });
    const folder = mkdtempSync(join(tmpdir(), 'plan-'));
    try {
      if (spawnSync('pdftotext', ['-v']).status !== 0) return;
      writeFileSync(join(folder, 'plan.pdf'), pdf);
      const text = execFileSync('pdftotext', ['-layout', join(folder, 'plan.pdf'), '-'], { encoding: 'utf8' });
      const flat = text.replace(/\s+/g, ' ');
      for (const title of steps) expect(flat).toContain(title);
      for (const part of ['10:00', '10:45', 'Cautions', 'Materials for 24 children', 'For the teacher:']) expect(flat).toContain(part);
      for (const button of ['Take out', 'Put in', 'Print the plan', 'Left out']) expect(flat).not.toContain(button);
      const size = execFileSync('pdfinfo', [join(folder, 'plan.pdf')], { encoding: 'utf8' });
      expect(size).toMatch(format === 'a4' ? /Page size: +59\d(\.\d+)? x 84\d/ : /Page size: +612 x 792/);
    } finally {
      rmSync(folder, { recursive: true, force: true });
      await page.close();
    }
  }); // prettier-ignore
});

describe('the budget', () => {
  it(`of script before anybody asks for a Word document is at most ${MOST_SCRIPT_bytes} bytes gzipped`, async () => {
    const page = await context.newPage();
    const scripts = new Map<string, Promise<Buffer>>();
    page.on('response', (response) => {
      if (!response.url().endsWith('.js')) return;
      scripts.set(response.url(), response.body());
    });
    await page.goto(new URL('bench/', visit.desk.url).href, { waitUntil: 'networkidle' });
    // A body that is still on its way counts as well.
    const bodies = await Promise.all(scripts.values());
    const sum = bodies.reduce((so, body) => so + gzipSync(body).length, 0);
    expect(sum).toBeGreaterThan(10_000);
    expect(sum).toBeLessThanOrEqual(MOST_SCRIPT_bytes);
    await page.close();
  });
});
