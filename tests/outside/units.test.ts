// Unit factors against NIST Handbook 44 and, where it is installed, GNU units.
import { execFileSync, spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { AMOUNT_UNITS, UNIT_ML, type AmountUnit } from '../../shared/quantity/units.ts';
import { decimal, exact, over, times, type Exact } from '../support/fraction.ts';

// NIST Handbook 44, Appendix C, "General Tables of Units of Measurement": 1 gallon = 231 cubic inches,
// 4 quarts, 8 pints, 16 cups, 128 fluid ounces; 1 inch = 2.54 cm exactly; 1 avoirdupois pound =
// 453.592 37 g exactly, 16 ounces. From memory; the decimals below follow from these by multiplication,
// and are printed in NIST SP 811, Appendix B.8 (from memory).
const EXACT_ML: Readonly<Record<string, string>> = {
  gal: '3785.411784',
  qt: '946.352946',
  pt: '473.176473',
  cup: '236.5882365',
  'fl oz': '29.5735295625',
  L: '1000',
  mL: '1',
};
const EXACT_G: Readonly<Record<string, string>> = { lb: '453.59237', oz: '28.349523125', kg: '1000', g: '1' };

const sameAs = (unit: AmountUnit, expected: Exact) => {
  const factor = UNIT_ML[unit];
  expect(factor.s * factor.n * expected.den, unit).toBe(expected.num * factor.d);
};

describe('unit factors, NIST Handbook 44, Appendix C', () => {
  it('are these decimals, to the last digit', () => {
    for (const [unit, text] of Object.entries(EXACT_ML)) sameAs(unit as AmountUnit, decimal(text));
  });

  it('turn weights at 1.03 kg/L, by the contract, to the last digit', () => {
    for (const [unit, text] of Object.entries(EXACT_G))
      sameAs(unit as AmountUnit, over(decimal(text), decimal('1.03')));
  });

  it('leave no unit of the milk book unchecked', () => {
    expect([...Object.keys(EXACT_ML), ...Object.keys(EXACT_G)].sort()).toEqual([...AMOUNT_UNITS].sort());
  });

  it('give the gallon of 231 cubic inches of 2.54 cm', () => {
    const inch_cm = decimal('2.54');
    sameAs('gal', times(exact(231), times(inch_cm, times(inch_cm, inch_cm))));
  });
});

// Debian package `units` 2.22; run by the test itself.
const hasUnits = spawnSync('units', ['--version']).status === 0;

describe.skipIf(!hasUnits)(
  'unit factors, GNU units (skipped where the command `units` is not installed)',
  () => {
    const asked = (have: string, want: string) =>
      Number(
        execFileSync('units', ['--terse', '--output-format', '%.17g', have, want], { encoding: 'utf8' }),
      );
    const NAMES: Readonly<Record<AmountUnit, string>> = {
    'fl oz': 'usfloz', cup: 'uscup', pt: 'uspint', qt: 'usquart', gal: 'usgallon', mL: 'milliliter', L: 'liter',
    lb: 'pound/(1.03 kg/L)', oz: 'ounce/(1.03 kg/L)', kg: 'kg/(1.03 kg/L)', g: 'gram/(1.03 kg/L)',
  }; // prettier-ignore

    it.each(AMOUNT_UNITS)('agree on one %s', (unit) => {
      const ratio = UNIT_ML[unit].valueOf() / asked(NAMES[unit], 'milliliter');
      expect(Math.abs(ratio - 1)).toBeLessThan(1e-15 * 4);
    });

    it('agree that 8.6 lb a gallon is 1.0305 kg/L', () => {
      expect(asked('8.6 pound/usgallon', 'kg/L')).toBeCloseTo(1.0305, 4);
    });
  },
);
