// Milk tests joined to the book and weighed by milk.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../../shared/herd/ledger.ts';
import type { Book, MilkTest } from '../../../../shared/herd/types.ts';
import { judgeCells } from '../../../../shared/milk/tests/cells.ts';
import { ecm_kg, fcm_kg } from '../../../../shared/milk/tests/correctedMilk.ts';
import { doeTests, herdTestDays, summaryOf } from '../../../../shared/milk/tests/summary.ts';
import { testedDays } from '../../../../shared/milk/tests/testedDays.ts';
import { weightedMean } from '../../../../shared/milk/tests/weightedMean.ts';
import { bookOf, day, twice } from '../../../support/bookOf.ts';

const milkTest = (doe: string, date: string, values: Partial<MilkTest> = {}): MilkTest => ({
  doe, day: day(date), fat_pct: null, protein_pct: null, lactose_pct: null, cells_perML: null, file: 'milk-tests.csv', line: 2, ...values,
}); // prettier-ignore
const withTests = (book: Book, ...milkTests: MilkTest[]): Book => ({ ...book, milkTests });
const DATE = '2026-05-20';
const KIDDED = ['clover 2026-03-01', 'bell 2026-03-01'];
// Clover gives 4 L, Bell 12 L.
const ROWS = [...twice('clover', [DATE], '2 L'), ...twice('bell', [DATE], '6 L')];

describe('weightedMean()', () => {
  it('is not the mean of the percents', () => {
    const mean = weightedMean([{ milk_kg: 4, value: 6 }, { milk_kg: 12, value: 4 }]); // prettier-ignore
    expect(mean).toMatchObject({ ok: true, mean: 4.5, milk_kg: 16, tests: 2, left: 0 });
    expect(mean.ok && mean.mean).not.toBe(5);
  });

  it('leaves out what was not tested, from both sums, and what gave no milk', () => {
    expect(weightedMean([{ milk_kg: 5, value: null }, { milk_kg: 2, value: 3 }, { milk_kg: 0, value: 99 }])).toEqual({ ok: true, mean: 3, milk_kg: 2, tests: 1, left: 2 }); // prettier-ignore
    expect(weightedMean([{ milk_kg: 5, value: null }])).toEqual({ ok: false, why: 'nothing was tested' });
    expect(weightedMean([])).toEqual({ ok: false, why: 'nothing was tested' });
  });

  it('lies between the least and the most tested, whatever the milk', () => {
    const one = fc.record({ milk_kg: fc.double({ min: 0.1, max: 60, noNaN: true }), value: fc.double({ min: 1, max: 15, noNaN: true }) }); // prettier-ignore
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 40 }), (values) => {
        const mean = weightedMean(values);
        const tested = values.map(({ value }) => value);
        expect(mean.ok && mean.mean).toBeGreaterThanOrEqual(Math.min(...tested) - 1e-9);
        expect(mean.ok && mean.mean).toBeLessThanOrEqual(Math.max(...tested) + 1e-9);
      }),
    );
  });
});

describe('testedDays()', () => {
  const join = (book: Book, asOf = '2026-05-21') => testedDays(book, openLedger(book, day(asOf)));

  it("weighs a test by that day's milk of the doe, in kilograms", () => {
    const { days, left } = join(withTests(bookOf(KIDDED, ROWS), milkTest('clover', DATE)));
    expect(days.map(({ milk_kg }) => milk_kg)).toEqual([4.12]);
    expect(left).toEqual([]);
  });

  it('leaves out, and names, a day with a milking missing and a day without milk', () => {
    const book = withTests(bookOf(KIDDED, [`${DATE} am clover 2 L`]), milkTest('clover', DATE), milkTest('bell', DATE));
    expect(join(book).left.map(({ test, why }) => [test.doe, why])).toEqual([
      ['clover', 'a milking of hers is missing that day'],
      ['bell', 'no milk of hers is in the book that day'],
    ]);
  }); // prettier-ignore

  it('takes a morning alone for a whole day where only the morning is expected', () => {
    const book = bookOf(['clover 2026-03-01 apart 2026-03-20 weaned 2026-06-01'], [`${DATE} am clover 2 L`]);
    expect(join(withTests(book, milkTest('clover', DATE))).days).toHaveLength(1);
  });

  it('knows no test of a day still to come, and a book without tests', () => {
    const book = bookOf(KIDDED, ROWS);
    expect(join(withTests(book, milkTest('clover', DATE)), '2026-05-19').days).toEqual([]);
    expect(join(book)).toEqual({ days: [], left: [] });
  });
});

describe('summaryOf(), herdTestDays(), doeTests()', () => {
  const book = withTests(
    bookOf(KIDDED, ROWS),
    milkTest('clover', DATE, { fat_pct: 6, protein_pct: 4, cells_perML: 400_000 }),
    milkTest('bell', DATE, { fat_pct: 4, cells_perML: 2_000_000 }),
  );
  const { days } = testedDays(book, openLedger(book, day('2026-05-21')));

  it('weigh fat and cells by milk, and correct milk test by test', () => {
    const summary = summaryOf(days);
    expect(summary.fat_pct.ok && summary.fat_pct.mean).toBeCloseTo(4.5, 12);
    expect(summary.cells_perML.ok && summary.cells_perML.mean).toBeCloseTo(1_600_000, 6);
    expect(summary.cells).toMatchObject({ within: false, limit_perML: 1_500_000 });
    expect(summary.fcm4_kg).toBeCloseTo(fcm_kg(4.12, 6) + fcm_kg(12.36, 4), 12);
    // Bell has no protein, so her milk is in no energy-corrected sum.
    expect(summary.ecm_kg).toBeCloseTo(ecm_kg({ milk_kg: 4.12, fat_pct: 6, protein_pct: 4 }), 12);
    expect(summary.lactose_pct).toEqual({ ok: false, why: 'nothing was tested' });
  });

  it('put the does of one day together, and tell one doe alone', () => {
    expect(herdTestDays(days)).toMatchObject([{ date: DATE, does: ['clover', 'bell'], tests: 2 }]);
    expect(doeTests(days, 'bell', day('2026-05-01'), day(DATE)).fat_pct).toMatchObject({ mean: 4 });
    expect(doeTests(days, 'bell', day('2026-05-21'), day('2026-06-01'))).toMatchObject({ tests: 0, milk_kg: 0, fcm4_kg: null, cells: null }); // prettier-ignore
  });
});

describe('judgeCells()', () => {
  it('lets the limit itself be, and not one cell more', () => {
    expect(judgeCells(1_500_000).within).toBe(true);
    expect(judgeCells(1_500_001).within).toBe(false);
    expect(judgeCells(800_000).part).toBeCloseTo(8 / 15, 12);
    expect([judgeCells(750_000, 'cow').within, judgeCells(750_001, 'cow').within]).toEqual([true, false]);
  });
});
