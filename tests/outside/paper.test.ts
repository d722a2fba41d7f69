// Sheets on paper: whole pages and whole tasks, a ruler's millimetres, and what a bad copier leaves of them.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { measuresFor } from '../../shared/sheet/pageMeasures.ts';
import { topGrade } from '../../shared/tasks/standards.ts';
import { printPages } from '../../src/print/printPages.ts';
import { openVisit, type Visit } from '../support/openPages.ts';
import { hasPoppler, pdfFonts, pdfPages, pdfWords, type PlacedWord } from '../support/pdf.ts';
import { darkShare, hasRaster, hatchOf, levelLines, oneBitPage } from '../support/raster.ts';
import { writtenSheets, type WrittenSheet } from '../support/sheetPlans.ts';

const PT_MM = 25.4 / 72;
// A page with less than this on it looks like a mistake of the printer (common practice, no source).
const LEAST_FILL = 0.25;
// A ruler is read to half a millimetre; a drawing that is off by less than this is right (common practice, no source).
const RULER_mm = 0.3;

const PLANS = writtenSheets('en');
const planOf = (name: string) => PLANS.find((one) => one.name === name) as WrittenSheet;

// Every sheet in both languages, on both papers, in both sizes of print; not every one of the eight ways of each.
const WAYS = [
  { lang: 'en', paper: 'letter', print: 'ordinary' },
  { lang: 'es', paper: 'a4', print: 'ordinary' },
  { lang: 'en', paper: 'a4', print: 'large' },
  { lang: 'es', paper: 'letter', print: 'large' },
] as const;
const papers = PLANS.flatMap(({ name }, index) =>
  WAYS.filter((_, way) => way % 2 === index % 2 || way === 3).map((way) => ({
    ...way,
    name,
    file: `${name}-${way.lang}-${way.paper}-${way.print}.pdf`,
  })),
);
const KEY = { en: 'Answer key', es: 'Hoja de respuestas' } as const;
const FOOT = { en: /Page (\d+) of (\d+)/, es: /Página (\d+) de (\d+)/ } as const;

let visit: Visit;
let out: string;
const flat = (text: string) => text.replace(/\s+/g, ' ');

/** The pages of a printed sheet before its key, as text. */
function sheetPages({ file, lang }: { file: string; lang: 'en' | 'es' }): string[] {
  const pages = pdfPages(join(out, file)).map(flat);
  const key = pages.findIndex((text) => text.trimStart().startsWith(KEY[lang]));
  return key === -1 ? pages : pages.slice(0, key);
}

describe.skipIf(!hasPoppler || !hasRaster)(
  'sheets on paper (skipped where poppler-utils is not installed)',
  () => {
    beforeAll(async () => {
      visit = await openVisit('demo');
      out = join(visit.site.dist, '..', 'test-paper');
      rmSync(out, { recursive: true, force: true });
      const jobs = papers.map(({ name, lang, paper, print, file }) => ({
        address: `${lang === 'en' ? '' : `${lang}/`}sheets/${name}/?paper=${paper}&print=${print}&seed=fern`,
        file,
      }));
      await printPages(visit.browser, visit.desk.url, jobs, out);
    }, 600_000);
    afterAll(async () => {
      await visit?.close();
    });

    it.each(papers)('$file: every page is a whole page with its own number, and no task runs on', (one) => {
      const pages = sheetPages(one);
      expect(pages.length).toBeGreaterThan(0);
      // A page that ran over would push its foot onto a page more, which has no number of its own.
      const numbers = pages.map((text) => FOOT[one.lang].exec(text)?.slice(1).map(Number));
      expect(numbers).toEqual(pages.map((_, index) => [index + 1, pages.length]));
    });

    it.each(papers)('$file: no page is near empty', (one) => {
      const pages = sheetPages(one);
      pages.forEach((_, index) => {
        const image = oneBitPage(join(out, one.file), index + 1, 40);
        const foot = image.height - Math.round(25 * image.perMm);
        const inked = Array.from({ length: foot }, (__, y) => y).filter(
          (y) => darkShare(image, { left: 0, right: image.width, top: y, bottom: y + 1 }) > 0,
        );
        expect((inked.at(-1) ?? 0) / foot, `page ${index + 1}`).toBeGreaterThan(LEAST_FILL);
      });
    });

    it.each(papers)('$file: has no letter from another face', ({ file }) => {
      const strange = pdfFonts(join(out, file)).filter(
        ({ name }) => !/(^|\+)(Andika|AlfaSlabOne)/.test(name),
      );
      expect(strange).toEqual([]);
    });

    describe('on a copier that knows black and white alone', () => {
      const copied = papers.filter(({ name }) => planOf(name).tasks.includes('scaled-bars'));

      it('has a bar graph to look at', () => {
        expect(copied.length).toBeGreaterThan(0);
      });

      it.each(copied)('$file: a ruler finds the lines of the graph, all of them', (one) => {
        const { axis, page, image } = graphOf(one);
        const { cell_mm } = measuresFor(topGrade(planOf(one.name).band), one.print);
        const dots = (mm: number) => Math.round(mm * image.perMm);
        // Beside the axis, before the first bar: nothing but the lines of the scale.
        const left = dots((axis.zero.box[2] * PT_MM + 2) + 1.2); // prettier-ignore
        const strip = {
          left,
          right: left + dots(3.4),
          top: dots(axis.top.box[1] * PT_MM),
          bottom: dots(axis.zero.box[3] * PT_MM),
        };
        const lines = levelLines(image, strip, 0.25);
        expect(lines.length, `lines on page ${page}`).toBe(axis.count);
        const gaps_mm = lines.slice(1).map((y, index) => (y - (lines[index] ?? 0)) / image.perMm);
        for (const gap of gaps_mm) expect(Math.abs(gap - cell_mm)).toBeLessThan(RULER_mm);
      });

      it.each(copied)('$file: no two bars look alike', (one) => {
        const { bars, image } = graphOf(one);
        expect(bars.length).toBeGreaterThanOrEqual(2);
        const looks = bars.map((box) => hatchOf(image, box));
        looks.forEach((look, index) =>
        looks.slice(index + 1).forEach((other, after) => {
          const apart = Math.max(...look.map((value, part) => Math.abs(value - (other[part] ?? 0)) * (part === 0 ? 4 : 1)));
          expect(apart, `bars ${index + 1} and ${index + after + 2}`).toBeGreaterThan(0.25);
        }),
      ); // prettier-ignore
      });

      it.each(papers.filter((_, index) => index % 8 === 0))('$file: every word keeps its ink', ({ file }) => {
        // The stroke of a stacked fraction is drawn; its "/" is there to be read aloud and copied.
        const words = pdfWords(join(out, file)).filter(({ page, word }) => page === 1 && word !== '/');
        const image = oneBitPage(join(out, file), 1);
        const scale = PT_MM * image.perMm;
        const faint = words.filter(({ box: [left, top, right, bottom] }) => {
          const [x1, y1, x2, y2] = [left, top, right, bottom].map((pt) => Math.round(pt * scale)) as [number, number, number, number]; // prettier-ignore
          return darkShare(image, { left: x1, top: y1, right: x2, bottom: y2 }) < 0.01;
        });
        expect(words.length).toBeGreaterThan(20);
        expect(faint.map(({ word }) => word)).toEqual([]);
      });
    });

    /** The bar graph of a printed sheet: its upright axis by the numbers beside it, and the insides of its bars. */
    function graphOf({ file, lang, name, print }: (typeof papers)[number]) {
      const path = join(out, file);
      const place = sheetPages({ file, lang }).findIndex(
        (text) => /\b0\b/.test(text) && text.includes(GRAPH[lang]),
      );
      const page = place + 1;
      const words = pdfWords(path).filter((word) => word.page === page);
      const axis = axisAmong(words);
      const image = oneBitPage(path, page);
      const { body_pt } = measuresFor(topGrade(planOf(name).band), print);
      const base_mm = ((axis.zero.box[1] + axis.zero.box[3]) / 2) * PT_MM;
      // The names stand below the axis on one line, each under the middle of its bar.
      const below_mm = ({ box }: PlacedWord) => ((box[1] + box[3]) / 2) * PT_MM - base_mm;
      const names = words.filter(
        (word) =>
          /^\p{L}+$/u.test(word.word) &&
          word.box[0] > axis.zero.box[2] &&
          below_mm(word) > 1 &&
          below_mm(word) < body_pt * PT_MM * 1.1,
      );
      const dots = (mm: number) => Math.round(mm * image.perMm);
      const bars = names.map(({ box }) => {
        const middle_mm = ((box[0] + box[2]) / 2) * PT_MM;
        return {
          left: dots(middle_mm - 5),
          right: dots(middle_mm + 5),
          // The foot of the bar, which even a low one has.
          top: dots(base_mm - 8.5),
          bottom: dots(base_mm - 1.5),
        };
      });
      return { axis, page, image, bars };
    }
  },
);

const GRAPH = { en: 'Milk on', es: 'Leche, el' } as const;

/** The numbers of an upright axis: a column of words that end at one place, from 0 up in even steps. */
function axisAmong(words: readonly PlacedWord[]) {
  const numbers = words.filter(({ word }) => /^\d+$/.test(word));
  for (const zero of numbers.filter(({ word }) => word === '0')) {
    const column = numbers
      .filter(({ box }) => Math.abs(box[2] - zero.box[2]) < 0.8 && box[1] <= zero.box[1])
      .sort((a, b) => b.box[1] - a.box[1]);
    const top = column.at(-1);
    if (column.length >= 3 && top) return { zero, top, count: column.length };
  }
  throw new Error('There is no axis on this page.');
}
