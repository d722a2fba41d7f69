// A row of jars adds up to the milk it stands for.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jarPlaces, jarRow } from '../../../shared/drawing/jarRow.ts';

describe('jarRow', () => {
  it('gives full jars and then the part of one', () => {
    expect(jarRow(2500, 1000)).toEqual([1, 1, 0.5]);
    expect(jarRow(300, 1000)).toEqual([0.3]);
    expect(jarRow(3000, 1000)).toEqual([1, 1, 1]);
  });

  it('shows nothing as one empty jar', () => {
    expect(jarRow(0, 1000)).toEqual([0]);
  });

  it('adds up to the amount, with every jar but the last one full', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.constant(0), fc.double({ min: 0.001, max: 200_000, noNaN: true })),
        fc.double({ min: 100, max: 5000, noNaN: true }),
        (amount_mL, jar_mL) => {
          const fills = jarRow(amount_mL, jar_mL);
          const sum_mL = fills.reduce((sum, fill) => sum + fill, 0) * jar_mL;
          expect(Math.abs(sum_mL - amount_mL)).toBeLessThan(1e-6 * (1 + amount_mL));
          expect(fills.slice(0, -1).every((fill) => fill === 1)).toBe(true);
          const last = fills.at(-1) ?? -1;
          expect(last > 0 || amount_mL === 0).toBe(true);
          expect(last).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  it('does not add a sliver of a jar for the rounding of a sum', () => {
    expect(jarRow(0.1 * 3 * 1000, 100)).toEqual([1, 1, 1]);
    expect(jarRow(3000.0000000001, 1000)).toEqual([1, 1, 1]);
  });

  it('refuses amounts that no jar can hold', () => {
    expect(() => jarRow(-1, 1000)).toThrowErrorMatchingInlineSnapshot(
      `[Error: A row of jars needs an amount of 0 mL or more and a jar above 0 mL, not -1 and 1000.]`,
    );
    expect(() => jarRow(5, 0)).toThrow();
    expect(() => jarRow(Number.NaN, 1000)).toThrow();
    expect(() => jarRow(Number.POSITIVE_INFINITY, 1000)).toThrow();
  });
});

describe('jarPlaces', () => {
  it('wraps after so many jars, left to right, then down', () => {
    const places = jarPlaces([1, 1, 1, 1, 0.5], 2);
    expect(places.map(({ row, column }) => [row, column])).toEqual([
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
      [2, 0],
    ]);
    expect(places.map(({ fill }) => fill)).toEqual([1, 1, 1, 1, 0.5]);
  });
});
