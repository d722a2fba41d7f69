// Every sheet for every grade of its band, from full and thin books: two tasks or more, on any date, and honest about its week.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { figuresOf } from '../../../shared/herd/figures.ts';
import { UNIT_ML } from '../../../shared/quantity/units.ts';
import { earlierWeeks } from '../../../shared/sheet/earlierWeeks.ts';
import { makeSheet, type Sheet } from '../../../shared/sheet/sheet.ts';
import { BANDS, type Band } from '../../../shared/quantity/grade.ts';
import type { SheetSource } from '../../../shared/tasks/context.ts';
import { firstGrade, GRADES_OF } from '../../../shared/tasks/standards.ts';
import { readSheetFiles } from '../../../src/content/sheetFiles.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { ownFolder, SMALL_FARM, writeFiles } from '../build/smallFarm.ts';
import { NOT_HERE, openData } from '../../support/handouts.ts';

const LEAST_TASKS = 2;
const { 'milkings/2026-05.csv': SMALL_BOOK = '', ...SMALL_HERD } = SMALL_FARM;
const [HEADING = '', FIRST_ROW = ''] = SMALL_BOOK.split('\n');

function farmOf(files: Readonly<Record<string, string>>): string {
  const folder = ownFolder();
  writeFiles(folder, files);
  return folder;
}

/** What the sheets of each band are made from, and the figure ids of the book. */
function readBook(dir: string, asOfDate: string | undefined) {
  const reading = readFarm(dir, { asOf: asOfDate, now_ms: 0 });
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const { farm, book, asOf } = reading;
  const ledger = openLedger(book, asOf);
  const week = weekView(book, ledger);
  const jar_mL = UNIT_ML[farm.jar.unit].mul(farm.jar.size).valueOf();
  const source: SheetSource = { week, units: farm.units, jar_mL, milkings: farm.milkings };
  const sources = Object.fromEntries(
    BANDS.map((band) => [band, { ...source, earlier: earlierWeeks(book, ledger, source, band) }]),
  ) as Record<Band, SheetSource>;
  return { sources, ids: Object.keys(figuresOf(book, ledger).figures) };
}

/** Every sheet of content/sheets for every grade of its band. */
function sheetsFrom(dir: string, asOf: string | undefined): Sheet[] {
  const { sources, ids } = readBook(dir, asOf);
  const { sheets, faults } = readSheetFiles(join('content', 'sheets'), ['en', 'es'], ids);
  expect(faults).toEqual([]);
  return sheets.flatMap(({ plan: { name, band, tasks } }) =>
    GRADES_OF[band].map((grade) =>
      makeSheet({ ...sources[band], name, band, grade, tasks, seed: 'thursday' }),
    ),
  );
}

/** What is wrong with a sheet, whichever book it is from. */
function faultsOf(sheet: Sheet): string[] {
  const told = (text: string) => `${sheet.name}, grade ${sheet.grade}: ${text}`;
  const kinds = sheet.tasks.map(({ kind }) => kind);
  return [
    ...(sheet.tasks.length < LEAST_TASKS ? [told(`${sheet.tasks.length} tasks (${kinds.join()})`)] : []),
    ...(new Set(kinds).size < kinds.length ? [told('a task stands on it twice')] : []),
    ...sheet.tasks.flatMap(({ kind, standards }) =>
      standards
        .filter((code) => firstGrade(code) > sheet.grade)
        .map((code) => told(`${kind} is for ${code}`)),
    ),
    ...sheet.tasks.flatMap(({ kind, earlier }) =>
      earlier && sheet.week && earlier.to >= sheet.week.to ? [told(`${kind} is from no earlier week`)] : [],
    ),
  ];
}

const wanting = (sheets: readonly Sheet[]) => sheets.flatMap(faultsOf);

describe('every sheet, for every grade of its band,', () => {
  it('is made whole from the demo week, of its own tasks where the grade allows them', () => {
    const sheets = sheetsFrom(join('content', 'farm'), undefined);
    expect(wanting(sheets)).toEqual([]);
    expect(sheets.flatMap(({ lacks }) => lacks)).toEqual([]);
    expect(sheets.every(({ state }) => state === 'milking')).toBe(true);
  });

  it.each(['2026-12-08', '2026-12-20', '2027-02-01'])('is made on %s, while the does rest', (date) => {
    const sheets = sheetsFrom(join('content', 'farm'), date);
    expect(wanting(sheets)).toEqual([]);
    expect(sheets.every(({ state }) => state === 'resting')).toBe(true);
  });

  it('is made from one doe with one milking', () => {
    const farm = farmOf({ ...SMALL_HERD, 'milkings/2026-05.csv': `${HEADING}\n${FIRST_ROW}\n` });
    expect(wanting(sheetsFrom(farm, undefined))).toEqual([]);
  });

  it('is made from an empty book, with does and without any', () => {
    const quiet = { ...SMALL_HERD, 'milkings/2026-05.csv': `${HEADING}\n` };
    expect(wanting(sheetsFrom(farmOf(quiet), undefined))).toEqual([]);
    const bare = Object.fromEntries(Object.entries(quiet).map(([file, text]) => [file, file.endsWith('.csv') ? `${text.split('\n')[0] ?? ''}\n` : text])); // prettier-ignore
    expect(wanting(sheetsFrom(farmOf(bare), undefined))).toEqual([]);
  });

  it('is made from a metric farm', () => {
    const metric = SMALL_FARM['farm.yaml']?.replace('units: us', 'units: metric').replace('recordUnit: cup', 'recordUnit: L').replace('size: 64, unit: fl oz', 'size: 1, unit: L') ?? ''; // prettier-ignore
    const farm = farmOf({
      ...SMALL_FARM,
      'farm.yaml': metric,
      'milkings/2026-05.csv': `${HEADING}\n2026-05-20,am,clover,1.5\n2026-05-20,pm,clover,1.25\n`,
    });
    expect(wanting(sheetsFrom(farm, undefined))).toEqual([]);
  });

  const real = openData('herd-ampm');
  it.skipIf(!real)(`is made from a real herd (${NOT_HERE})`, () => {
    const sheets = sheetsFrom(real as string, '2025-08-20');
    expect(wanting(sheets)).toEqual([]);
  });
});
