// Rounding for a grade band, and how numbers are written on paper.
import Fraction from 'fraction.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BANDS,
  exactly,
  measureOf,
  rounded,
  shownIn,
  shownOf,
  whole,
  written,
  writtenParts,
} from '../../../shared/quantity/grade.ts';

// 1 US cup = 236.588 236 5 mL: NIST Handbook 44, Appendix C (1 gallon = 3.785 411 784 L, 16 cups).
const CUP_ML = 236.5882365;

describe('shownIn', () => {
  it('reads whole cups, quarters and decimals by band', () => {
    const amount = 9.75 * CUP_ML;
    expect(BANDS.map((band) => written(shownIn(amount, measureOf(band, 'us'))))).toEqual([
      '10',
      '9 3/4',
      '9.8',
      '9.8',
    ]);
    expect(BANDS.map((band) => written(shownIn(amount, measureOf(band, 'metric'))))).toEqual([
      '9',
      '2 1/4',
      '2.31',
      '2.31',
    ]);
  });

  it('rounds halves up, also where a double lies a hair below the half', () => {
    expect(written(shownIn(2.5 * CUP_ML - 1e-9, measureOf('k-2', 'us')))).toBe('3');
    expect(written(shownIn(0, measureOf('3-5', 'us')))).toBe('0');
  });

  it('is never farther off than half a step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20_000, noNaN: true }),
        fc.constantFrom(...BANDS),
        fc.constantFrom('us' as const, 'metric' as const),
        (amount_mL, band, units) => {
          const measure = measureOf(band, units);
          const off = Math.abs(
            exactly(shownIn(amount_mL, measure)).valueOf() - amount_mL / measure.unit_mL.valueOf(),
          );
          expect(off).toBeLessThanOrEqual(0.5 / measure.den + 1e-8);
        },
      ),
    );
  });
});

describe('rounded', () => {
  it('takes halves away from zero', () => {
    expect(
      [new Fraction(1, 8), new Fraction(-1, 8), new Fraction(2, 3)].map((one) => written(rounded(one, 2))),
    ).toEqual(['0.13', '−0.13', '0.67']);
  });
});

describe('written', () => {
  it('writes whole, mixed and decimal numbers', () => {
    expect([whole(1234), { num: 11, den: 4 }, { num: 3, den: 4 }, { num: -5, den: 2 }, { num: 10, den: 1, places: 1 }, { num: 12_345_678, den: 1000, places: 3 }].map(written)).toMatchInlineSnapshot(`
      [
        "1,234",
        "2 3/4",
        "3/4",
        "−2 1/2",
        "10.0",
        "12,345.678",
      ]
    `);
    expect(writtenParts({ num: 11, den: 4 })).toEqual({ whole: '2', num: '3', den: '4' });
  });

  it('throws where a number is too long to be exact', () => {
    expect(() => shownOf(new Fraction('1234567890123456789'))).toThrow('too long for a page');
  });
}); // prettier-ignore
