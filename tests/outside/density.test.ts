// The density that turns weights to volumes, against values of the trade.
import { describe, expect, it } from 'vitest';
import { CUP_OF_MILK_G } from '../../shared/milk/composition.ts';
import { MILK_DENSITY_KG_PER_L, UNIT_ML } from '../../shared/quantity/units.ts';

const POUND_KG = 0.45359237;
const kgPerL = MILK_DENSITY_KG_PER_L.valueOf();
const litresIn = (unit: 'gal' | 'cup' | 'qt' | 'fl oz') => UNIT_ML[unit].valueOf() / 1000;

describe('the density of milk', () => {
  it('is within 0.1 % of the customary 8.6 lb a US gallon', () => {
    // Customary conversion of US dairy statistics, USDA Agricultural Handbook 697 (from memory).
    const customary = (8.6 * POUND_KG) / litresIn('gal');
    expect(customary).toBeCloseTo(1.0305, 4);
    expect(Math.abs(kgPerL / customary - 1)).toBeLessThan(0.001);
  });

  it('is within 0.1 % of 2.15 lb a quart', () => {
    // Cornell 4-H dairy goat pages: a quart of milk weighs about 2.15 lb (seen in a copy).
    expect(Math.abs(kgPerL / ((2.15 * POUND_KG) / litresIn('qt')) - 1)).toBeLessThan(0.001);
  });

  it.each([
    ['cup', 244],
    ['qt', 976],
    ['fl oz', 30.5],
  ] as const)(
    "is within 0.2 %% of the household weight of a %s of goat's or whole cow's milk, %s g",
    (unit, grams) => {
      // USDA National Nutrient Database for Standard Reference, household weights (seen in a copy).
      expect(Math.abs(kgPerL / (grams / 1000 / litresIn(unit)) - 1)).toBeLessThan(0.002);
    },
  );

  it('goes with the cup that the pages count with', () => {
    expect(CUP_OF_MILK_G).toBe(244);
  });
});
