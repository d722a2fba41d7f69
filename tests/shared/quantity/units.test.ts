// The units that a milk book may name, however they are spelled.
import { describe, expect, it } from 'vitest';
import { AMOUNT_UNITS, unitNamed } from '../../../shared/quantity/units.ts';

describe('unitNamed', () => {
  it('knows every unit by the name that the contract gives it', () => {
    expect([...AMOUNT_UNITS].sort()).toEqual([
      'L',
      'cup',
      'fl oz',
      'g',
      'gal',
      'kg',
      'lb',
      'mL',
      'oz',
      'pt',
      'qt',
    ]);
    for (const unit of AMOUNT_UNITS) {
      expect(unitNamed(unit)).toBe(unit);
      expect(unitNamed(unit.toUpperCase())).toBe(unit);
      expect(unitNamed(unit.toLowerCase())).toBe(unit);
      expect(unitNamed(` ${unit}. `)).toBe(unit);
    }
  });

  it.each([
    ['cups', 'cup'], ['Cups', 'cup'], ['c.', 'cup'], ['pints', 'pt'], ['Quarts', 'qt'], ['gallon', 'gal'], ['gals.', 'gal'],
    ['fl. oz.', 'fl oz'], ['FL OZ', 'fl oz'], ['floz', 'fl oz'], ['fluid ounces', 'fl oz'], ['ml', 'mL'], ['ML', 'mL'],
    ['l', 'L'], ['liters', 'L'], ['litre', 'L'], ['lbs', 'lb'], ['pounds', 'lb'], ['ounces', 'oz'], ['KG', 'kg'], ['G', 'g'],
  ])('reads "%s" as %s', (text, unit) => {
    expect(unitNamed(text)).toBe(unit);
  }); // prettier-ignore

  it.each(['', ' ', 'bucket', 'cup s', 'constructor', 'toString', '__proto__', 'dl', 'f l oz'])(
    'knows no unit "%s"',
    (text) => {
      expect(unitNamed(text)).toBeNull();
    },
  );
});
