// The page of the herd beside a desk: a turn by one tap, a treatment whose end is shown before it is saved, a file changed meanwhile.
import { appendFileSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../scripts/findBrowser.mjs';
import { CHROMIUM_FLAGS } from '../../src/print/chromium.ts';
import { builtSite } from '../support/builtSite.ts';
import { sidewaysScroll } from '../support/inPage.ts';
import { openBookDesk, type BookDesk } from '../support/openBookDesk.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let desk: BookDesk;
let browser: Browser;
beforeAll(async () => {
  const found = findBrowser(process.env);
  if (!found.ok) throw new Error(found.why ?? 'There is no browser.');
  const site = await builtSite('demo');
  [desk, browser] = await Promise.all([
    openBookDesk({ dist: site.dist }),
    chromium.launch({ executablePath: found.path, args: [...CHROMIUM_FLAGS] }),
  ]);
});
afterAll(async () => {
  await browser?.close();
  await desk?.close();
});

const leaf = (page: Page, name: string) => page.locator('.doe-leaf', { has: page.locator(`h2:text-is("${name}")`) }); // prettier-ignore
const text = (file: string) => readFileSync(join(desk.farm, file), 'utf8');

async function open(path: string): Promise<Page> {
  const phone = await browser.newContext({ viewport: { width: 360, height: 740 }, serviceWorkers: 'block' });
  const page = await phone.newPage();
  await page.goto(`${desk.url}${path}`);
  await page.locator('.new-doe .slab').waitFor();
  return page;
}

async function faults(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() =>
    (window as unknown as { axe: { run(at: Document): Promise<AxeResults> } }).axe.run(document),
  );
  const sideways = await page.evaluate(sidewaysScroll);
  return [...violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`), ...sideways]; // prettier-ignore
}

describe('the page of the herd', () => {
  it('writes a turn of a doe’s year with one tap on its day', async () => {
    const page = await open('book/herd/');
    await leaf(page, 'Wren').locator('.turn').click();
    await leaf(page, 'Wren').getByRole('button', { name: 'Weaned: Today' }).click();
    await page.getByText('Written down.').waitFor();
    expect(text('kiddings.csv')).toContain('\nwren,2026-04-11,1,2026-05-02,2026-05-21,2026-11-07\n');
    expect(await leaf(page, 'Wren').locator('.expected-marks').getAttribute('aria-label')).toBe('Morning and evening milking'); // prettier-ignore
    // The file is changed by somebody else, and the page hears of it before anything is written over.
    appendFileSync(join(desk.farm, 'kiddings.csv'), 'pepita,2024-04-10,3,,,\n');
    await leaf(page, 'Wren').getByRole('button', { name: 'Dry: Today' }).click();
    await page.locator('.herd-told', { hasText: 'pepita,2024-04-10,3,,,' }).waitFor();
    expect(text('kiddings.csv')).toContain('2026-05-21,2026-11-07\n');
    expect(await faults(page)).toEqual([]);
    await page.context().close();
  }, 30_000);

  it('shows the first day of milk to keep before a treatment is saved, in Spanish too', async () => {
    const page = await open('es/book/herd/');
    const hester = leaf(page, 'Hester');
    await hester.locator('.turn').click();
    await hester.getByRole('button', { name: 'Tratamiento nuevo' }).click();
    await hester.getByLabel('Qué se le dio').fill('desparasitante');
    await hester.getByLabel('Horas que se retira la leche después').fill('96');
    // Four days after a morning's dose, and the day after that: that morning's milking may come too early.
    expect(await hester.getByLabel('Primer día en que se puede guardar su leche').inputValue()).toBe('2026-05-26'); // prettier-ignore
    expect(await faults(page)).toEqual([]);
    await hester.getByRole('button', { name: 'Anotar', exact: true }).click();
    await hester.locator('.kept-apart').waitFor();
    expect(text('treatments.csv')).toContain('\nhester,2026-05-21,2026-05-26,desparasitante,"última dosis 2026-05-21 a.m., 96 h"\n'); // prettier-ignore
    await page.context().close();
  }, 30_000);
});
