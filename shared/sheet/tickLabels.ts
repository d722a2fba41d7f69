// What stands at the ticks of a number line: each tick to the last part of its step.
import Fraction from 'fraction.js';
import { written, type Shown } from '../quantity/grade.ts';

/**
 * The numbers at `count` ticks from `from` on, `step` apart: decimals where one of the two is written so, all with the
 * same places; else whole numbers and fractions.
 * @example tickLabels({ num: 1, den: 1 }, { num: 1, den: 2 }, 3) // => ['1', '1 1/2', '2']
 */
export function tickLabels(from: Shown, step: Shown, count: number): string[] {
  const isDecimal = from.places !== undefined || step.places !== undefined;
  const places = Math.max(from.places ?? 0, step.places ?? 0);
  const stride = new Fraction(step.num, step.den);
  return Array.from({ length: count }, (_, index) => {
    const { s: sign, n, d } = new Fraction(from.num, from.den).add(stride.mul(index));
    const shown = { num: Number(sign * n), den: Number(d) };
    return written(isDecimal ? { ...shown, places } : shown);
  });
}
