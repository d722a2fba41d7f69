// Centre and spread of printed numbers, exact until they are rounded for the page.
import Fraction from 'fraction.js';
import { exactly, rounded, valueOf, type Shown } from '../quantity/grade.ts';
import { total } from './context.ts';

/** Exact mean of printed numbers; there is at least one. */
export function meanOf(shown: readonly Shown[]): Fraction {
  return total(shown.map(exactly)).div(shown.length);
}

/** Printed numbers from least to most. */
export function sortedShown(shown: readonly Shown[]): Shown[] {
  return [...shown].sort((a, b) => valueOf(a) - valueOf(b));
}

/** Exact median: the middle one, or the mean of the two in the middle. */
export function medianOf(shown: readonly Shown[]): Fraction {
  const sorted = sortedShown(shown).map(exactly);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] as Fraction;
  return sorted.length % 2 === 1 ? upper : upper.add(sorted[half - 1] as Fraction).div(2);
}

/**
 * Sample standard deviation (divisor n - 1) of two or more printed numbers, rounded to decimal places.
 * The root is taken in doubles, which is far finer than any page.
 */
export function sampleSd(shown: readonly Shown[], places: number): Shown {
  const mean = meanOf(shown);
  return rootOf(squaresAbout(shown, mean).div(shown.length - 1), places);
}

/** Exact sum of the squared distances from a value. */
export function squaresAbout(shown: readonly Shown[], centre: Fraction): Fraction {
  return total(shown.map((one) => squareOf(exactly(one).sub(centre))));
}

/** A fraction times itself. */
export function squareOf(value: Fraction): Fraction {
  return value.mul(value);
}

/** Square root of a fraction of zero or more, rounded to decimal places. */
export function rootOf(value: Fraction, places: number): Shown {
  const steps = Math.floor(Math.sqrt(value.valueOf()) * 10 ** places + 0.5);
  return rounded(new Fraction(steps, 10 ** places), places);
}
