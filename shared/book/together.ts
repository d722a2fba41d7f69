// The milk of several rows together, exact, whatever their units.
import Fraction from 'fraction.js';
import { amount_mL, type Amount } from '../quantity/amount.ts';
import { UNIT_ML, type AmountUnit } from '../quantity/units.ts';
import { amountOf } from './taps.ts';

/** All amounts together, mL, exact. */
export function together_mL(amounts: readonly Amount[]): Fraction {
  return amounts.reduce((sum, one) => sum.add(amount_mL(one)), new Fraction(0));
}

/** A volume as an amount of a unit, exact. */
export function volumeIn(volume_mL: Fraction, unit: AmountUnit): Amount {
  return amountOf(volume_mL.div(UNIT_ML[unit]), unit);
}
