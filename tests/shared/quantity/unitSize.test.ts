// The plain sizes of units against the exact ones.
import { expect, it } from 'vitest';
import { UNIT_SIZE_mL } from '../../../shared/quantity/unitSize.ts';
import { AMOUNT_UNITS, UNIT_ML } from '../../../shared/quantity/units.ts';

it.each([...AMOUNT_UNITS])('%s is the nearest double to the exact size', (unit) => {
  expect(UNIT_SIZE_mL[unit]).toBe(UNIT_ML[unit].valueOf());
});
it('knows no other unit', () => {
  expect(Object.keys(UNIT_SIZE_mL).sort()).toEqual([...AMOUNT_UNITS].sort());
});
