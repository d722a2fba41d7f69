// The numbers under a number line: every tick is the one before it and a step.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { expect, it } from 'vitest';
import { tickLabels } from '../../../shared/sheet/tickLabels.ts';

it('names halves as fractions or as decimals, as the step is written, and never rounds them', () => {
  expect(tickLabels({ num: 4, den: 1 }, { num: 1, den: 2 }, 3)).toEqual(['4', '4 1/2', '5']);
  expect(tickLabels({ num: 1, den: 1, places: 0 }, { num: 1, den: 2, places: 1 }, 5)).toEqual(['1.0', '1.5', '2.0', '2.5', '3.0']);
  expect(tickLabels({ num: 0, den: 1 }, { num: 1, den: 4 }, 5)).toEqual(['0', '1/4', '1/2', '3/4', '1']);
  expect(tickLabels({ num: 7, den: 1 }, { num: 2, den: 1 }, 3)).toEqual(['7', '9', '11']);
}); // prettier-ignore

it('reads back as the number at the tick', () => {
  fc.assert(
    fc.property(fc.nat(40), fc.constantFrom(1, 2, 4, 8), fc.constantFrom(1, 2, 4, 8), (num, den, step) => {
      tickLabels({ num, den }, { num: 1, den: step }, 9).forEach((label, index) =>
        expect(new Fraction(label).equals(new Fraction(num, den).add(new Fraction(index, step)))).toBe(true),
      );
    }),
  );
});
