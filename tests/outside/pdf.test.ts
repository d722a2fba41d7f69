// The printed sheets as poppler, and so a school's printer, finds them.
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BANDS } from '../../shared/quantity/grade.ts';
import { spanText } from '../../shared/quantity/show.ts';
import { say } from '../../shared/words/words.ts';
import { wordsOf } from '../../src/site/words.ts';
import { printPages, type Printed } from '../../src/print/printPages.ts';
import { openVisit, type Visit } from '../support/openPages.ts';
import { writtenSheets } from '../support/sheetPlans.ts';
import { hasPoppler, pdfFonts, pdfInfo, pdfPages, pdfWords } from '../support/pdf.ts';

// Sizes by ISO 216 (A4: 210 x 297 mm) and ANSI (letter: 8.5 x 11 in), in points of 1/72 in.
const SIZES = { letter: [612, 792], a4: [(210 / 25.4) * 72, (297 / 25.4) * 72] } as const;
// Office printers leave about a sixth of an inch unprinted (common practice, no source).
const LEAST_MARGIN_pt = 12;
const LEAST_TASKS = 2;

// One sheet of each band, by the order of their names; tests/outside/paper.test.ts looks at all of them.
const sheets = (['en', 'es'] as const).flatMap((lang) =>
  BANDS.flatMap((band) => {
    const sheet = writtenSheets(lang).find((one) => one.band === band);
    if (!sheet) throw new Error(`There is no sheet for ${band} in ${lang}.`);
    const { name: file, title, tasks } = sheet;
    return (['letter', 'a4'] as const).map((paper) => ({
      lang, band, paper, sheet: file, title, tasks, name: `${file} ${lang} ${paper}`,
    })); // prettier-ignore
  }),
);
type Sheet = (typeof sheets)[number];

const words = { en: wordsOf('en'), es: wordsOf('es') } as const;
const fileOf = ({ sheet, lang, paper }: Sheet, seed = '') => `${sheet}-${lang}-${paper}${seed}.pdf`;
const jobOf = (sheet: Sheet, seed = '') => ({
  address: `${sheet.lang === 'en' ? '' : `${sheet.lang}/`}sheets/${sheet.sheet}/?paper=${sheet.paper}${seed === '' ? '' : `&seed=${seed}`}`,
  file: fileOf(sheet, seed),
});

let visit: Visit;
let out: string;
let printed: Printed[];
let week: string[];
const pathOf = (sheet: Sheet, seed = '') => join(out, fileOf(sheet, seed));
const flat = (text: string) => text.replace(/\s+/g, ' ');
describe.skipIf(!hasPoppler)('printed sheets (skipped where poppler-utils is not installed)', () => {
  beforeAll(async () => {
    visit = await openVisit('demo');
    out = join(visit.site.dist, '..', 'test-prints');
    rmSync(out, { recursive: true, force: true });
    const { window } = JSON.parse(readFileSync(join(visit.site.dist, 'figures.json'), 'utf8')) as {
      window: { from: string; to: string };
    };
    week = [window.from, window.to];
    const [k2] = sheets;
    const seeded = k2
      ? [jobOf(k2, 'clover'), jobOf(k2, 'hay'), { ...jobOf(k2, 'clover'), file: 'again.pdf' }]
      : [];
    printed = await printPages(
      visit.browser,
      visit.desk.url,
      [...sheets.map((sheet) => jobOf(sheet)), ...seeded],
      out,
    );
  });
  afterAll(async () => {
    await visit?.close();
  });

  it('ask no other machine for anything', () => {
    expect(printed.flatMap(({ stopped }) => stopped)).toEqual([]);
  });

  it.each(sheets)('$name is tagged, has a title, and every page is of its paper', (sheet) => {
    const { facts, sizes } = pdfInfo(pathOf(sheet));
    expect(facts['Tagged']).toBe('yes');
    expect(facts['Title']).toContain(sheet.title);
    expect(sizes).toHaveLength(Number(facts['Pages']));
    expect(sizes.length).toBeGreaterThanOrEqual(2);
    expect(sizes.length).toBeLessThanOrEqual(12);
    for (const [width, height] of sizes) {
      expect(Math.abs(width - SIZES[sheet.paper][0])).toBeLessThan(1);
      expect(Math.abs(height - SIZES[sheet.paper][1])).toBeLessThan(1);
    }
  });

  it.each(sheets)('$name carries all its fonts', (sheet) => {
    const fonts = pdfFonts(pathOf(sheet));
    expect(fonts.map((font) => font.name).join()).toMatch(/Andika/);
    expect(fonts.filter((font) => !font.embedded)).toEqual([]);
  });

  it.each(sheets)('$name keeps every word inside of the paper', (sheet) => {
    const [width, height] = SIZES[sheet.paper];
    const placed = pdfWords(pathOf(sheet));
    expect(placed.length).toBeGreaterThan(100);
    const outside = placed.filter(({ box: [left, top, right, bottom] }) =>
      left < LEAST_MARGIN_pt || top < LEAST_MARGIN_pt || right > width - LEAST_MARGIN_pt || bottom > height - LEAST_MARGIN_pt); // prettier-ignore
    expect(outside).toEqual([]);
  });

  it.each(sheets)('$name has lines for name and date, the farm and its week', ({ lang, ...sheet }) => {
    const first = flat(pdfPages(pathOf({ lang, ...sheet }))[0] ?? '');
    for (const key of ['sheet.name', 'sheet.date-line']) expect(first).toContain(say(words[lang], key));
    const [from = '', to = ''] = week;
    expect(first).toContain('Hobnail Hill Teaching Dairy');
    // One span or two dates, as the language puts it; the day that ends the week stands in it either way.
    const lastDay = String(Number(to.slice(8)));
    expect(first.includes(spanText(from, to, lang)) || first.includes(lastDay)).toBe(true);
  });

  it.each(sheets)(
    '$name begins its tasks on the first page, and prints nothing that is for a screen',
    (sheet) => {
      const pages = pdfPages(pathOf(sheet));
      expect(pages[0]).toMatch(/^ *1( |$)/m);
      const controls = ['sheet.desk.make', 'sheet.desk.seed-help', 'sheet.desk.another', 'sheet.desk.key'];
      const text = flat(pages.join(' '));
      expect(
        controls.map((key) => say(words[sheet.lang], key)).filter((label) => text.includes(label)),
      ).toEqual([]);
    },
  );

  it.each(sheets)(
    '$name has its answer key on pages of its own, after the sheet, with every task',
    (sheet) => {
      const pages = pdfPages(pathOf(sheet), 'read').map(flat);
      const title = say(words[sheet.lang], 'sheet.key.title');
      const firstKey = pages.findIndex((text) => text.includes(title));
      expect(firstKey).toBeGreaterThanOrEqual(1);
      const [before, key] = [pages.slice(0, firstKey).join(' '), pages.slice(firstKey).join(' ')];
      const kinds = sheet.tasks.map((kind) => say(words[sheet.lang], `sheet.kind.${kind}`));
      expect(kinds.length).toBeGreaterThanOrEqual(LEAST_TASKS);
      expect(kinds.filter((kind) => !key.includes(kind))).toEqual([]);
      expect(pages.slice(firstKey).every((text) => text.includes(title))).toBe(true);
      // What often goes wrong is for the teacher's eyes alone.
      expect(before).not.toContain(say(words[sheet.lang], 'sheet.key.mistake'));
    },
  );

  it('are the same for the same seed, and others for another', () => {
    const [k2] = sheets;
    if (!k2) throw new Error('no sheet');
    const [clover, hay, again] = [pathOf(k2, 'clover'), pathOf(k2, 'hay'), join(out, 'again.pdf')].map(
      (file) => pdfPages(file).join('\n'),
    );
    expect(again).toBe(clover);
    expect(hay).not.toBe(clover);
    const numbers = (text = '') => text.match(/\d+/g)?.join(' ');
    expect(numbers(hay)).not.toBe(numbers(clover));
  });
});
