// How much paper a copy takes: one leaf, both sides, for the top grade of a band, whichever seed, paper, language and season.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../../shared/herd/figures.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { lactationWeeks } from '../../../shared/lactation/lactationWeeks.ts';
import { BANDS, type Band } from '../../../shared/quantity/grade.ts';
import { UNIT_ML } from '../../../shared/quantity/units.ts';
import { earlierWeeks } from '../../../shared/sheet/earlierWeeks.ts';
import { headHeight_mm, headOf } from '../../../shared/sheet/head.ts';
import { pageLayout } from '../../../shared/sheet/layOut.ts';
import { liveHeight_mm, PAPERS, type Paper } from '../../../shared/sheet/pageMeasures.ts';
import type { SheetFront } from '../../../shared/sheet/plan.ts';
import { makeSheet, type Sheet } from '../../../shared/sheet/sheet.ts';
import { betweenHeight_mm, earlierHeight_mm, taskHeight_mm } from '../../../shared/sheet/taskHeights.ts';
import { textsAfter, textsByTask } from '../../../shared/sheet/texts.ts';
import type { SheetSource } from '../../../shared/tasks/context.ts';
import { TASK_KINDS } from '../../../shared/tasks/kinds.ts';
import { GRADES_OF, topGrade, type Grade } from '../../../shared/tasks/standards.ts';
import { FIGURE_SLOT } from '../../../src/content/sheetFile.ts';
import { readSheetFiles, type SheetEntry } from '../../../src/content/sheetFiles.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { wordsOf } from '../../../src/site/words.ts';

const LANGUAGES = ['en', 'es'] as const;
const SEEDS = ['thursday', 'fern', 'hay', '17', '2026-06-03'];
// One leaf, both sides. In K and grade 1 rows and type are larger, and elsewhere a taller task may stand in for one above
// the grade: there it is a page more at most.
const MOST_PAGES = 2;
const MOST_PAGES_YOUNGER = 3;
const LEAST_FILL = 0.25;
// As long as a herd's number comes out in any band.
const FIGURE = { en: '1,234 quarts', es: '1,234 cuartos de galón' } as const;

const words = { en: wordsOf('en'), es: wordsOf('es') } as const;

/** What each band's sheets are made from on a date (without one: the date that the demo farm names). */
function sourcesOn(asOfDate: string | undefined) {
  const reading = readFarm(join('content', 'farm'), { asOf: asOfDate, now_ms: 0 });
  if (!reading.ok) throw new Error('the demo farm has faults');
  const { farm, book, asOf } = reading;
  const ledger = openLedger(book, asOf);
  const jar_mL = UNIT_ML[farm.jar.unit].mul(farm.jar.size).valueOf();
  const plain: SheetSource = { week: weekView(book, ledger), units: farm.units, jar_mL, milkings: farm.milkings }; // prettier-ignore
  const curves = lactationWeeks(book, ledger);
  const ofBand = (band: Band): SheetSource => {
    const source = band === '6-8' || band === '9-12' ? { ...plain, curves } : plain;
    return { ...source, earlier: earlierWeeks(book, ledger, source, band) };
  };
  return {
    sources: Object.fromEntries(BANDS.map((band) => [band, ofBand(band)])) as Record<Band, SheetSource>,
    ids: Object.keys(figuresOf(book, ledger).figures),
  };
}

const june = sourcesOn(undefined);
const december = sourcesOn('2026-12-08');
const { sheets } = readSheetFiles(join('content', 'sheets'), [...LANGUAGES], june.ids);

interface Copy {
  readonly name: string;
  readonly pages: number;
  /** How much of the last page is used, 0 to 1. */
  readonly lastFill: number;
}

/** A sheet in a language on a paper: its pages, and how full the last of them is. */
function copyOf(sheet: Sheet, entry: SheetEntry, lang: 'en' | 'es', paper: Paper): Copy {
  const file = entry.inLanguage[lang] as SheetFront;
  const texts = file.texts.map(({ before, text }) => ({
    before,
    text: text.replace(FIGURE_SLOT, FIGURE[lang]),
  }));
  const front = { ...file, texts };
  const { pages, m } = pageLayout(sheet, front, words[lang], paper);
  const before = textsByTask(sheet, texts);
  const heightOf = (index: number): number => {
    const task = sheet.tasks[index];
    if (!task) throw new Error(`no task ${index}`);
    const ends = index === sheet.tasks.length - 1 ? textsAfter(sheet, texts) : [];
    return [...before(index), ...ends].reduce(
      (sum, text) => sum + betweenHeight_mm(text, m),
      taskHeight_mm(task, words[lang], m) + (task.earlier ? earlierHeight_mm(m) : 0),
    );
  };
  const head = pages.length === 1 ? headHeight_mm(headOf(sheet, front, words[lang]), m) : 0;
  const used = (pages.at(-1) ?? []).reduce((sum, { task }) => sum + heightOf(task), head);
  return {
    name: `${sheet.name} ${lang} ${paper} grade ${sheet.grade} seed ${sheet.seed}`,
    pages: pages.length,
    lastFill: used / liveHeight_mm(paper),
  };
}

/** All copies of all sheets of some bands for a grade of each, on a date. */
function copies(
  { sources }: typeof june,
  gradeOf: (band: Band) => Grade | null,
  seeds = SEEDS,
): readonly Copy[] {
  return sheets.flatMap((entry) => {
    const { name, band, tasks } = entry.plan;
    const grade = gradeOf(band);
    if (grade === null) return [];
    return seeds.flatMap((seed) => {
      const sheet = makeSheet({ ...sources[band], name, band, grade, tasks, seed });
      return LANGUAGES.flatMap((lang) => PAPERS.map((paper) => copyOf(sheet, entry, lang, paper)));
    });
  });
}

const told = (list: readonly Copy[]) =>
  list.map(
    ({ name, pages, lastFill }) => `${name}: ${pages} pages, the last ${Math.round(lastFill * 100)} %`,
  );

describe('a copy of every sheet', () => {
  it.each([
    ['the demo week', june],
    ['December, while the does rest', december],
  ])('takes one leaf, both sides, from %s', (_, week) => {
    const all = copies(week, topGrade);
    expect(all.length).toBe(sheets.length * SEEDS.length * LANGUAGES.length * PAPERS.length);
    expect(told(all.filter(({ pages }) => pages > MOST_PAGES))).toEqual([]);
    expect(told(all.filter(({ lastFill }) => lastFill < LEAST_FILL))).toEqual([]);
  });

  it.each([
    ['the demo week', june],
    ['December, while the does rest', december],
  ])('takes a page more at most for a younger grade, from %s', (_, week) => {
    for (const place of [0, 1] as const) {
      const all = copies(week, (band) => GRADES_OF[band][place] ?? null, SEEDS.slice(0, 2));
      expect(told(all.filter(({ pages }) => pages > MOST_PAGES_YOUNGER))).toEqual([]);
    }
  });
});

describe('the sheets together', () => {
  it('ask every kind of task', () => {
    const asked = new Set(sheets.flatMap(({ plan }) => plan.tasks));
    expect(TASK_KINDS.map(({ name }) => name).filter((name) => !asked.has(name))).toEqual([]);
  });
});
