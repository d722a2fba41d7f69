// Labels and posters as paper: edges where a ruler finds them, every word on its label, nothing else on the page.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COMMON_SHEETS, labelPlaces, type LabelSheet } from '../../shared/labels/labelSheet.ts';
import { printPages } from '../../src/print/printPages.ts';
import { openPage, openVisit, type Visit } from '../support/openPages.ts';
import { hasPoppler, pdfFonts, pdfInfo, pdfPages, pdfWords } from '../support/pdf.ts';
import { darkShare, hasRaster, oneBitPage, type OneBitPage } from '../support/raster.ts';

const PT_MM = 25.4 / 72;
// A ruler is read to half a millimetre; labels that are off by less than this are right (common practice, no source).
const RULER_mm = 0.3;
const DPI = 300;
// The measures of common sheets, as a ruler shows them on sheets that are sold: common practice, no source. They stand
// here a second time, so that no slip in the code passes unseen: paper, label, first label's corner, step to the next, mm.
const MEASURED: Readonly<Record<string, readonly [wide: number, high: number, left: number, top: number, across: number, down: number]>> = {
  'letter-3x10': [66.675, 25.4, 4.7625, 12.7, 69.85, 25.4],
  'letter-2x7': [101.6, 33.867, 3.969, 21.167, 106.363, 33.867],
  'letter-2x5': [101.6, 50.8, 3.969, 12.7, 106.363, 50.8],
  'letter-2x3': [101.6, 84.667, 3.969, 12.7, 106.363, 84.667],
  'a4-3x7': [63.5, 38.1, 7.2, 15.15, 66.05, 38.1],
  'a4-2x7': [99.1, 38.1, 4.65, 15.15, 101.6, 38.1],
  'a4-2x4': [99.1, 67.7, 4.65, 13.1, 101.6, 67.7],
}; // prettier-ignore
// The fourth free label on, so that rows and columns both count; Maribel's milk of this morning is withheld in the demo book.
const START = 2;
const MILKING = 'date=2026-05-14&milking=am';
const jobs = COMMON_SHEETS.map(({ id }, index) => ({
  id,
  address: `${index % 2 === 0 ? '' : 'es/'}labels/?${MILKING}&sheet=${id}&start=${START}&edges=1&kids=1`,
  file: `${id}.pdf`,
}));
const FACES = [
  { name: 'poster letter', address: 'routine/?face=poster&paper=letter', size: [215.9, 279.4], last: 'Hot water first' },
  { name: 'poster letter es', address: 'es/routine/?face=poster&paper=letter', size: [215.9, 279.4], last: 'si va primero, la pega' },
  { name: 'poster a4', address: 'es/routine/?face=poster&paper=a4', size: [210, 297], last: 'si va primero, la pega' },
  { name: 'card letter', address: 'routine/?face=card&paper=letter', size: [215.9, 279.4], last: 'clean for next time' },
  { name: 'card a4', address: 'es/routine/?face=card&paper=a4', size: [210, 297], last: 'queda lista' },
] as const; // prettier-ignore

let visit: Visit;
let out: string;
const sheetOf = (id: string) => COMMON_SHEETS.find((one) => one.id === id) as LabelSheet;
const pathOf = (file: string) => join(out, file);

/** Words that lie over another one: a step whose text is longer than its place runs into what stands below it. */
function wordsOverOthers(words: ReturnType<typeof pdfWords>): string[] {
  const shared = (from: number, to: number, otherFrom: number, otherTo: number) =>
    Math.min(to, otherTo) - Math.max(from, otherFrom);
  return words.flatMap(({ word, box }, index) =>
    words
      .slice(index + 1)
      .filter(({ box: other }) => shared(box[0], box[2], other[0], other[2]) > 1)
      .filter(({ box: other }) => shared(box[1], box[3], other[1], other[3]) > 0.4 * (box[3] - box[1]))
      .map((other) => `${word} over ${other.word}`),
  );
}

/** Places of the dark lines that cross a strip, mm from the page's edge; upright lines, or level ones. */
function linesAcross(image: OneBitPage, way: 'upright' | 'level', at_mm: number): number[] {
  const dots = (mm: number) => Math.round(mm * image.perMm);
  const length = way === 'upright' ? image.width : image.height;
  const [from, to] = [dots(at_mm - 0.6), dots(at_mm + 0.6)];
  const isDark = (place: number) =>
    darkShare(image, way === 'upright' ? { left: place, right: place + 1, top: from, bottom: to } : { left: from, right: to, top: place, bottom: place + 1 }) > 0.9; // prettier-ignore
  const found: number[] = [];
  for (let place = 0; place < length; place += 1)
    if (isDark(place)) {
      const first = place;
      while (place + 1 < length && isDark(place + 1)) place += 1;
      found.push((first + place + 1) / 2 / image.perMm);
    }
  return found;
}

describe.skipIf(!hasPoppler || !hasRaster)(
  'labels on paper (skipped where poppler-utils is not installed)',
  () => {
    beforeAll(async () => {
      visit = await openVisit('demo');
      out = join(visit.site.dist, '..', 'test-labels');
      rmSync(out, { recursive: true, force: true });
      mkdirSync(out, { recursive: true });
      const single = { address: `labels/?${MILKING}&sheet=one-62x29`, file: 'single.pdf' };
      const faces = FACES.map(({ name, address }) => ({ address, file: `${name}.pdf` }));
      await printPages(visit.browser, visit.desk.url, [...jobs, single, ...faces], out);
    });
    afterAll(async () => {
      await visit?.close();
    });

    it.each(jobs)('$id: the edges lie where its measures say, within 0.3 mm', ({ id, file }) => {
      const [wide, high, left, top, across, down] = MEASURED[id] ?? [0, 0, 0, 0, 0, 0];
      const sheet = sheetOf(id);
      const image = oneBitPage(pathOf(file), 1, DPI, 0.75);
      // A strip just inside the second label's upper edge meets no letter, and the upright edges of its row.
      const uprights = linesAcross(image, 'upright', top + 1);
      for (let column = 1; column < sheet.columns; column += 1)
        for (const edge of [left + column * across, left + column * across + wide])
          expect(Math.min(...uprights.map((line) => Math.abs(line - edge)))).toBeLessThan(RULER_mm);
      const levels = linesAcross(image, 'level', left + across + 0.8);
      for (const edge of [top, top + high, top + down, top + down + high].filter((_, index) => index < 2 || sheet.rows > 1))
        expect(Math.min(...levels.map((line) => Math.abs(line - edge)))).toBeLessThan(RULER_mm); // prettier-ignore
    });

    it.each(jobs)('$id: every word lies on its label, and the page is of its paper', ({ id, file }) => {
      const sheet = sheetOf(id);
      const words = pdfWords(pathOf(file));
      expect(words.length).toBeGreaterThan(30);
      const places = labelPlaces(sheet, START, 30);
      const astray = words.filter(({ page, box }) => {
        const [left = 0, , right = 0] = box.map((point) => point * PT_MM);
        const middle = ((box[1] + box[3]) / 2) * PT_MM;
        return !places.some(
          (one) =>
            one.page === page - 1 && left >= one.x_mm && right <= one.x_mm + sheet.width_mm && middle > one.y_mm && middle < one.y_mm + sheet.height_mm, // prettier-ignore
        );
      });
      expect(astray).toEqual([]);
      // ISO 216 and ANSI sizes; Chromium makes pages of whole 1/96 in.
      const [width, height] = sheet.paper === 'letter' ? [215.9, 279.4] : [210, 297];
      for (const size of pdfInfo(pathOf(file)).sizes) {
        expect(Math.abs(size[0] * PT_MM - width)).toBeLessThan(RULER_mm);
        expect(Math.abs(size[1] * PT_MM - height)).toBeLessThan(RULER_mm);
      }
    });

    it.each(jobs)(
      '$id: has one label for each jar, and says in large letters what is withheld',
      ({ file, address }) => {
        const text = pdfPages(pathOf(file), 'read').join('\n').replace(/\s+/g, ' ');
        const isEnglish = !address.startsWith('es/');
        const withheld = isEnglish ? 'WITHHELD' : 'RETIRADA';
        expect(text.split(withheld)).toHaveLength(2);
        // That morning's book has one row withheld (5 cups, Maribel); one jar of 8 cups holds it.
        expect(text.split(isEnglish ? 'Do not drink, now or later' : 'No se bebe, ni hoy ni después')).toHaveLength(2); // prettier-ignore
        const heights = pdfWords(pathOf(file)).map(({ word, box }) => ({ word, high: box[3] - box[1] }));
        const large = heights.find(({ word }) => word === withheld)?.high ?? 0;
        const usual = heights.find(({ word }) => word === (isEnglish ? 'cups' : 'tazas'))?.high ?? Infinity;
        expect(large).toBeGreaterThan(1.2 * usual);
        // Nothing of the screen is printed.
        expect(text).not.toMatch(isEnglish ? /Print the labels|Barn board/ : /Imprimir|Tablero/);
        expect(pdfFonts(pathOf(file)).filter(({ embedded }) => !embedded)).toEqual([]);
      },
    );

    it('one by one: each label is a page of its own measures', () => {
      const { sizes, facts } = pdfInfo(pathOf('single.pdf'));
      expect(sizes.length).toBe(Number(facts['Pages']));
      expect(pdfPages(pathOf('single.pdf')).every((text) => text.trim() !== '')).toBe(true);
      for (const [width, height] of sizes) {
        expect(Math.abs(width * PT_MM - 62)).toBeLessThan(RULER_mm);
        expect(Math.abs(height * PT_MM - 29)).toBeLessThan(RULER_mm);
      }
    });

    it('takes a name of any length whole, written by hand', async () => {
      const context = await visit.browser.newContext({ serviceWorkers: 'block' });
      const { page, complaints } = await openPage(visit, context, `labels/?${MILKING}&sheet=letter-3x10&way=mix`);
      await page.locator('.typed summary').click();
      const name = 'Maximiliana-Guadalupe de la Sierra Ñandú, Quertaro Wintergreen the Younger of Elm';
      await page.getByLabel('Whose milk').fill(name.slice(0, 80));
      await page.getByLabel('Amount').fill('3 1/2');
      await page.getByRole('button', { name: 'Add the label' }).click();
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      await context.close();
      writeFileSync(pathOf('typed.pdf'), pdf);
      const flat = (text: string) => text.replace(/\s+/g, '');
      expect(flat(pdfPages(pathOf('typed.pdf'), 'read').join(''))).toContain(flat(name.slice(0, 80)));
      const sheet = sheetOf('letter-3x10');
      const rightmost = Math.max(...pdfWords(pathOf('typed.pdf')).map(({ box }) => box[2] * PT_MM));
      expect(rightmost).toBeLessThan(sheet.left_mm + 3 * sheet.width_mm + 2 * sheet.across_mm);
      expect(complaints).toEqual([]);
    }); // prettier-ignore

    it.each(FACES)('$name: one page with every step, and nothing of the screen', ({ name, size, last }) => {
      const file = pathOf(`${name}.pdf`);
      const { sizes } = pdfInfo(file);
      expect(sizes).toHaveLength(1);
      expect(Math.abs((sizes[0]?.[0] ?? 0) * PT_MM - size[0])).toBeLessThan(RULER_mm);
      const text = (pdfPages(file, 'read')[0] ?? '').replace(/\s+/g, ' ');
      expect(text).toContain(last);
      expect(text).not.toMatch(/List to tick|Lista para marcar/);
      expect(wordsOverOthers(pdfWords(file))).toEqual([]);
      // Office printers leave about a quarter of an inch unprinted (common practice, no source).
      for (const { box } of pdfWords(file)) {
        expect(Math.min(box[0], box[1]) * PT_MM).toBeGreaterThan(6.35);
        expect(box[2] * PT_MM).toBeLessThan(size[0] - 6.35);
        expect(box[3] * PT_MM).toBeLessThan(size[1] - 6.35);
      }
    });
  },
);
