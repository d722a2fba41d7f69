// The composition table that pages compute from, against the published table and its own arithmetic.
import { describe, expect, it } from 'vitest';
import { COW_FOOD, GOAT_FOOD } from '../../shared/board/goatAndCow.ts';
import { NOT_HERE, openData, plainCsv } from '../support/handouts.ts';

// USDA National Nutrient Database for Standard Reference, release 28 (2015), foods 01106, 01077,
// 01078, 01107, 01108 and 01109; public domain. The copy beside the project was taken from that release by others.
const ours = plainCsv('content/facts/milk-composition.csv');
const folder = openData('composition');
const FOODS = [GOAT_FOOD, COW_FOOD, '01078', '01107', '01108', '01109'];

const per100g = (food: string, nutrient_no: string) => {
  const rows = ours.filter((row) => row['food_id'] === food && row['nutrient_no'] === nutrient_no);
  expect(rows, `rows of ${food} ${nutrient_no}`).toHaveLength(1);
  return Number(rows[0]?.['per_100g']);
};

describe('content/facts/milk-composition.csv', () => {
  it('names its table, its foods and its units in every row', () => {
    expect(ours.length).toBeGreaterThanOrEqual(130);
    for (const row of ours) {
      expect(row['source']).toBe('USDA SR28 (2015)');
      expect(FOODS).toContain(row['food_id']);
      expect(['g', 'mg', 'µg', 'kcal']).toContain(row['unit']);
      expect(row['per_100g']).toMatch(/^\d+(\.\d+)?$/);
    }
  });

  it.skipIf(!folder)(`is the published table, row by row (${NOT_HERE})`, () => {
    const published = plainCsv(`${folder}/composition.csv`);
    for (const row of ours) {
      const same = published.filter((one) =>
        ['source', 'food_id', 'nutrient_no'].every((key) => one[key] === row[key]),
      );
      expect(same, `${row['food_id']} ${row['nutrient']}`).toHaveLength(1);
      for (const key of Object.keys(row))
        expect(row[key], `${row['food_id']} ${row['nutrient']}`).toBe(same[0]?.[key]);
    }
  });

  it.each(FOODS)('has parts of food %s that make up 100 g', (food) => {
    // Water, protein, fat, carbohydrate by difference, ash: their sum is how carbohydrate was found.
    const parts = ['255', '203', '204', '205', '207'].map((no) => per100g(food, no));
    expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(100, 9);
  });

  it.each(FOODS)('has the energy of food %s that its parts give', (food) => {
    // Factors for milk, USDA Agriculture Handbook 74 (from memory): 4.27, 8.79 and 3.87 kcal/g.
    const kcal = 4.27 * per100g(food, '203') + 8.79 * per100g(food, '204') + 3.87 * per100g(food, '205');
    expect(Math.round(kcal)).toBe(per100g(food, '208'));
  });

  it('gives no lactose for goat milk, as the published table gives none', () => {
    expect(ours.filter((row) => row['food_id'] === GOAT_FOOD && row['nutrient_no'] === '213')).toEqual([]);
    if (!folder) return;
    const published = plainCsv(`${folder}/composition.csv`);
    const lactose = published.filter((row) => row['source']?.startsWith('USDA') && row['food_id'] === GOAT_FOOD && row['nutrient_no'] === '213'); // prettier-ignore
    expect(lactose).toEqual([]);
  });
});
