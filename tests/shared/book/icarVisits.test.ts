// Visits and test days in the farm's own days, halves of days, does and units.
import { describe, expect, it } from 'vitest';
import { findTests, type TestLimits } from '../../../shared/book/icarTests.ts';
import type { IcarTest, IcarVisit } from '../../../shared/book/icarTypes.ts';
import { AnimalDoes, findVisits } from '../../../shared/book/icarVisits.ts';
import type { ImportFarm } from '../../../shared/book/importRows.ts';
import { NO_CHOICES } from '../../../shared/book/importTypes.ts';
import { isoDate } from '../../../shared/calendar/day.ts';
import type { MilkTest } from '../../../shared/herd/types.ts';
import { localTime } from '../../../src/farm/entered.ts';
import { MOST_CELLS_THOUSAND, PERCENT } from '../../../src/farm/milkTestsTable.ts';
import { day } from '../../support/bookOf.ts';

const FARM: ImportFarm = {
  does: [
    { id: 'clover', name: 'Clover' },
    { id: '840001', name: 'Fern' },
  ],
  recordUnit: 'cup',
  largestMilking: { amount: 10, unit: 'L' },
  milkings: { am: '06:30', pm: '17:30' },
  today: day('2026-05-21'),
};
const LIMITS: TestLimits = { percent: PERCENT, cells_thousand: MOST_CELLS_THOUSAND };
const CHOICES = { ...NO_CHOICES, does: { '7 (org.example)': 'clover', '9 (org.example)': '' } };
const visit = (at: string, weight_kg: number, more: Partial<IcarVisit> = {}): IcarVisit => ({
  ...{ place: 1, animal: { scheme: 'org.example', id: '7' }, at, weight_kg, parts_kg: [], complete: true },
  ...{ remarks: [], remark: '', deleted: false },
  ...more,
});
const find = (visits: IcarVisit[], timeZone = 'America/Chicago') =>
  findVisits(visits, FARM, new AnimalDoes(FARM, CHOICES), localTime(timeZone));
const told = (visits: IcarVisit[], timeZone?: string) =>
  find(visits, timeZone).milkings.map(
    ({ doe, day, milking, amount }) => `${isoDate(day)} ${milking} ${doe} ${amount}`,
  );

describe('visits', () => {
  it('belong to the day and the half of it by the farm clock, with noon between 6:30 and 17:30 as border', () => {
    // Chicago is 5 hours behind UTC in May and 6 in January.
    expect(told([visit('2026-05-19T23:30:00Z', 2)])).toEqual(['2026-05-19 pm clover 2']);
    expect(told([visit('2026-05-20T03:30:00Z', 2)])).toEqual(['2026-05-19 pm clover 2']);
    expect(told([visit('2026-05-20T11:30:00Z', 2)])).toEqual(['2026-05-20 am clover 2']);
    expect(told([visit('2026-05-20T16:59:59Z', 2)])).toEqual(['2026-05-20 am clover 2']);
    expect(told([visit('2026-05-20T17:00:00Z', 2)])).toEqual(['2026-05-20 pm clover 2']);
    expect(told([visit('2026-01-20T17:59:00Z', 2)])).toEqual(['2026-01-20 am clover 2']);
    expect(told([visit('2026-05-19T23:30:00Z', 2)], 'Europe/Copenhagen')).toEqual(['2026-05-20 am clover 2']);
  });

  it('of one half of a day are one milking, summed without a slip of binary fractions', () => {
    const found = find([
      visit('2026-05-20T11:30:00Z', 0.1),
      visit('2026-05-20T12:30:00Z', 0.2, { place: 2 }),
    ]);
    expect(found.milkings).toMatchObject([
      { amount: '0.3', unit: 'kg', read: { num: 3, den: 10, unit: 'kg' } },
    ]);
    expect(found.milkings[0]?.warnings).toEqual([{ key: 'warn.visits', slots: { n: 2 } }]);
  });

  it('whose parts do not sum to the whole are told of; the whole counts', () => {
    const [uneven] = find([visit('2026-05-20T11:30:00Z', 2, { parts_kg: [0.9, 0.9] })]).milkings;
    expect(uneven).toMatchObject({
      amount: '2',
      warnings: [{ key: 'warn.parts', slots: { parts: '1.8', whole: 2 } }],
    });
    expect(
      find([visit('2026-05-20T11:30:00Z', 1.8, { parts_kg: [0.9, 0.9] })]).milkings[0]?.warnings,
    ).toEqual([]);
  });

  it('of a sick animal, or one milked apart, are withheld; what the file says goes to the note', () => {
    const apart = find([visit('2026-05-20T11:30:00Z', 2, { remarks: ['AnimalSick'], remark: 'hot\nudder' })]);
    expect(apart.milkings[0]).toMatchObject({ use: 'withheld', note: 'hot udder; AnimalSick' });
    expect(apart.milkings[0]?.warnings.map(({ key }) => key)).toEqual(['warn.apart']);
    const torn = find([visit('2026-05-20T11:30:00Z', 2, { complete: false })]).milkings[0];
    expect([torn?.use, torn?.warnings[0]?.key]).toEqual([null, 'warn.incomplete']);
  });

  it('that cannot be milkings say why', () => {
    const key = (one: IcarVisit) => {
      const { faults, left, milkings } = find([one]);
      expect(milkings).toEqual([]);
      return [...faults, ...left].map((fault) => fault.told.key).join();
    };
    expect(key(visit('2026-05-20T11:30:00Z', -1))).toBe('fault.amount.negative');
    expect(key(visit('2026-05-20T11:30:00Z', 11))).toBe('fault.amount.tooMuch');
    expect(key(visit('2026-05-22T11:30:00Z', 1))).toBe('fault.ahead');
    expect(key(visit('2026-05-20T11:30:00Z', 1, { deleted: true }))).toBe('left.deleted');
    expect(key(visit('2026-05-20T11:30:00Z', 1, { animal: { scheme: 'x', id: '1' } }))).toBe('fault.animal');
    expect(key(visit('2026-05-20T11:30:00Z', 1, { animal: { scheme: 'org.example', id: '9' } }))).toBe(
      'left.doe',
    );
  });

  it('know a doe whose id is the number of the animal', () => {
    const animals = new AnimalDoes(FARM, NO_CHOICES);
    expect(animals.of({ scheme: 'x', id: '840001' })).toEqual({ doe: '840001' });
    expect(animals.of({ scheme: 'x', id: 'constructor' })).toBeNull();
    expect(animals.unknown()).toEqual([{ text: 'constructor (x)', rows: 1, chosen: null }]);
  });
});

describe('test days', () => {
  const test = (values: Record<string, string>, more: Partial<IcarTest> = {}): IcarTest => ({
    ...{ place: 1, animal: { scheme: 'org.example', id: '7' }, at: '2026-05-20T12:00:00Z', code: null },
    ...{ weight24h_kg: null, deleted: false },
    characteristics: Object.entries(values).map(([name, value]) => ({ name, value, unit: null })),
    ...more,
  });
  const findIn = (tests: IcarTest[], before: MilkTest[] = []) =>
    findTests(tests, before, FARM, new AnimalDoes(FARM, CHOICES), localTime('America/Chicago'), LIMITS);

  it('become a row with the units of the schema: parts of a hundred, thousands of cells', () => {
    const { tests, faults } = findIn([
      test({ FAT: '3.9', PROTEIN: '3.25', LAC: '4.4', SCC: '410', BHB: '0.1' }),
    ]);
    expect(faults).toEqual([]);
    expect(tests).toMatchObject([
      {
        kind: 'new',
        doe: 'clover',
        date: '2026-05-20',
        fat_pct: '3.9',
        protein_pct: '3.25',
        lactose_pct: '4.4',
        scc: '410',
      },
    ]);
  });

  it('are known where the farm has the same, and left to a person where it has another', () => {
    const has = { doe: 'clover', day: day('2026-05-20'), fat_pct: 3.9, protein_pct: null, lactose_pct: null, cells_perML: 410_000, file: '', line: 2 }; // prettier-ignore
    expect(findIn([test({ FAT: '3.90', SCC: '410' })], [has]).tests[0]?.kind).toBe('known');
    expect(findIn([test({ FAT: '4' })], [has]).tests[0]?.kind).toBe('other');
  });

  it('without a result, day or sense say so', () => {
    const keys = (one: IcarTest) => {
      const { tests, faults, left } = findIn([one]);
      expect(tests).toEqual([]);
      return [...faults, ...left].map(({ told }) => told.key).join();
    };
    expect(keys(test({}, { code: 'Dry' }))).toBe('left.code.dry');
    expect(keys(test({}, { code: 'SamplingImpossible' }))).toBe('left.code.noSample');
    expect(keys(test({ FAT: '0' }))).toBe('left.noResult');
    expect(keys(test({ FAT: '3.9' }, { at: null }))).toBe('fault.noDate');
    expect(keys(test({ FAT: '39' }))).toBe('fault.testRange');
    expect(keys(test({ SCC: '410000' }))).toBe('fault.testRange');
    expect(keys(test({ FAT: 'high' }))).toBe('fault.testNumber');
    const grams = [{ name: 'FAT', value: '3.9', unit: 'GL' }];
    expect(keys(test({}, { characteristics: grams }))).toBe('fault.testUnit');
  });

  it('of one doe and day stand once; the second is told of', () => {
    const two = findIn([test({ FAT: '3.9' }), test({ FAT: '4' }, { place: 2 })]);
    expect(two.tests).toHaveLength(1);
    expect(two.faults).toMatchObject([{ line: 2, told: { key: 'fault.twin', slots: { line: 1 } } }]);
  });
});
