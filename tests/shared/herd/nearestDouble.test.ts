// Exact fractions turned to the double that lies nearest.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { nearestDouble } from '../../../shared/herd/nearestDouble.ts';

describe('nearestDouble', () => {
  it('gives back every double that a fraction holds exactly', () => {
    const doubles = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 });
    const held = (value: number) => {
      // Times 2^900 every double of some size is a whole number, and none below 1e12 overflows.
      fc.pre(value === 0 || Math.abs(value) > 1e-200);
      const fraction = new Fraction(BigInt(value * 2 ** 900), 1n << 900n);
      expect(nearestDouble(fraction)).toBe(value === 0 ? 0 : value);
    };
    fc.assert(fc.property(doubles, held), { numRuns: 500 });
  });

  it('rounds as division does wherever both numbers are doubles', () => {
    const whole = fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER });
    const divided = (n: number, d: number) => {
      expect(nearestDouble(new Fraction(n, d))).toBe(n / d);
    };
    fc.assert(fc.property(whole, whole, divided), { numRuns: 2000 });
  });

  it('breaks a tie to the even neighbour, and no tie that has a leftover', () => {
    const half = 2n ** 53n + 1n;
    expect(nearestDouble(new Fraction(half))).toBe(2 ** 53);
    expect(nearestDouble(new Fraction(half * 10n ** 40n + 1n, 10n ** 40n))).toBe(2 ** 53 + 2);
  });

  it('stays a number where both parts are longer than a double', () => {
    expect(nearestDouble(new Fraction(10n ** 400n + 1n, 2n * 10n ** 400n))).toBe(0.5);
  });
});
