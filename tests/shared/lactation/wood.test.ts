// Wood's curve: its closed forms against plain search and sums.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { woodAt, woodPeak, woodPersistency, woodTotal } from '../../../shared/lactation/wood.ts';

const curveArb = fc.record({
  a: fc.double({ min: 0.05, max: 40, noNaN: true }),
  b: fc.double({ min: 0.02, max: 1.2, noNaN: true }),
  c: fc.double({ min: 0.001, max: 0.02, noNaN: true }),
});

describe('the curve', () => {
  it('is what its formula says', () => {
    fc.assert(
      fc.property(curveArb, fc.integer({ min: 1, max: 700 }), ({ a, b, c }, t) => {
        const plain = a * t ** b * Math.exp(-c * t);
        expect(Math.abs(woodAt({ a, b, c }, t) - plain)).toBeLessThan(1e-11 * plain);
      }),
    );
  });

  it('is highest at its peak, and as high as that says', () => {
    fc.assert(
      fc.property(curveArb, (curve) => {
        const peak = woodPeak(curve);
        if (!peak) throw new Error('no peak');
        const search = (low: number, high: number): number => {
          const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
          if (high - low < 1e-6) return (low + high) / 2;
          return woodAt(curve, left) < woodAt(curve, right) ? search(left, high) : search(low, right);
        };
        const found = search(1e-3, 2000);
        // Near its top a curve is flat, so a search finds the day to about half of a double's digits.
        expect(Math.abs(found - peak.day)).toBeLessThan(1e-4 * peak.day + 1e-4);
        expect(Math.abs(woodAt(curve, found) - peak.yield)).toBeLessThan(1e-9 * peak.yield);
      }),
    );
  });

  it('sums day by day', () => {
    const curve = { a: 2, b: 0.2, c: 0.004 };
    expect(woodTotal(curve, 1, 3)).toBeCloseTo(woodAt(curve, 1) + woodAt(curve, 2) + woodAt(curve, 3), 12);
    expect(woodTotal(curve, 3, 2)).toBe(0);
  });
});

describe('where the curve says nothing', () => {
  it('is no number out of reach', () => {
    const odd = [0, -1, 1e-300, 1e300, Infinity, -Infinity, NaN, 305];
    const values = odd.flatMap((t) =>
      [0, 2, 1e300].flatMap((a) => [-3, 0, 0.2, 900].map((b) => woodAt({ a, b, c: 0.004 }, t))),
    );
    expect(values.filter((value) => Number.isNaN(value))).toEqual([]);
    expect(woodAt({ a: 2, b: -1, c: 0.004 }, 0)).toBe(0);
  });

  it.each([
    { a: 2, b: 0, c: 0.004 },
    { a: 2, b: -0.1, c: 0.004 },
    { a: 2, b: 0.2, c: 0 },
    { a: 2, b: 0.2, c: -0.001 },
    { a: 0, b: 0.2, c: 0.004 },
    { a: NaN, b: 0.2, c: 0.004 },
  ])('%j has no peak', (curve) => {
    expect(woodPeak(curve)).toBeNull();
  });

  it('has no persistency without a fall', () => {
    expect(woodPersistency({ a: 2, b: 0.2, c: 0 })).toBeNull();
    expect(woodPersistency({ a: 2, b: 0.2, c: -0.1 })).toBeNull();
  });
});
