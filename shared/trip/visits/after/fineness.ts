// How fine a grade reads what was measured, and numbers at that fineness.
import Fraction from 'fraction.js';
import { rounded, shownOf, type Shown } from '../../../quantity/grade.ts';
import type { Grade } from '../../../tasks/grades.ts';

/** A number as whole steps of 1 / `den`. */
export interface Fine {
  readonly den: number;
  readonly steps: number;
}

// Whole numbers up to grade 2, halves and quarters from 3 on (3.MD.B.4), eighths from 4 on (4.MD.B.4), then decimals.
const FINENESS = [
  { to: 2, dens: [1] },
  { to: 3, dens: [1, 2, 4] },
  { to: 5, dens: [1, 2, 4, 8] },
  { to: 12, dens: [1, 2, 10, 4, 100] },
] as const;
const FIRST_DECIMALS = 6;

/** The coarsest step that a grade reads in which all numbers are whole, else its finest; `isRounded` where some had to be rounded. */
export function fineness(values: readonly Fraction[], grade: Grade): { den: number; isRounded: boolean } {
  const dens: readonly number[] = FINENESS.find(({ to }) => grade <= to)?.dens ?? [1];
  const fits = dens.find((den) => values.every((value) => value.mul(den).d === 1n));
  return fits === undefined ? { den: Math.max(...dens), isRounded: true } : { den: fits, isRounded: false };
}

/** A number in whole steps of 1 / `den`, halves up. */
export function stepsOf(value: Fraction, den: number): number {
  return value.mul(den).add('1/2').floor().valueOf();
}

/** Steps as a grade writes them: fractions up to grade 5, then decimals. */
export function stepsShown(steps: number, den: number, grade: Grade): Shown {
  const value = new Fraction(steps, den);
  if (grade < FIRST_DECIMALS) return shownOf(value);
  return rounded(value, den === 1 ? 0 : den === 2 || den === 10 ? 1 : 2);
}
