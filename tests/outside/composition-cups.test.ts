// What a cup of milk holds, and which milk has more, against printed cup tables and other editions.
import { describe, expect, it } from 'vitest';
import { CALCIUM_NEEDS, calciumOfPail } from '../../shared/milk/calcium.ts';
import { cupContents, mass_g } from '../../shared/milk/contents.ts';
import { valueIn, type MilkName, type NutrientName } from '../../shared/milk/milkTable.ts';
import { moreThan, sideBySide } from '../../shared/milk/sideBySide.ts';
import { factOf } from '../../src/site/facts.ts';
import { mainMilkTable, milkTables } from '../../src/site/milkTables.ts';
import { NOT_HERE, openData, plainCsv } from '../support/handouts.ts';

const usda = mainMilkTable();
const folder = openData('composition');
const cup = (milk: MilkName, nutrient: NutrientName) => {
  const found = cupContents(usda, milk).find((one) => one.nutrient === nutrient);
  if (!found || found.amount === null) throw new Error(`no ${nutrient} in a cup of ${milk}`);
  return found.amount;
};

describe('a cup of milk', () => {
  // Cup table of aboutgoatmilk.info, made from the USDA table (seen in a copy): 10.86 g of sugars,
  // 168 kcal, 8.69 g of protein, 327 mg of calcium. Its cow column is of another edition and not used.
  it.each([
    ['sugars', 2, '10.86'],
    ['energy', 0, '168'],
    ['protein', 2, '8.69'],
    ['calcium', 0, '327'],
  ] as const)("of goat's milk holds the printed %s, to %s places: %s", (nutrient, places, printed) => {
    expect(cup('goat', nutrient).toFixed(places)).toBe(printed);
  });

  it("of cow's milk holds 11.71 g of carbohydrate", () => {
    // 4.80 g in 100 g (USDA 01077) times 2.44, by hand.
    expect(cup('cow', 'carbohydrate').toFixed(2)).toBe('11.71');
  });

  it('of human milk weighs 246 g in the same table', () => {
    // USDA household weight of 01107 (seen): 6.89 × 2.46 = 16.949.
    expect(cup('human', 'carbohydrate')).toBeCloseTo(16.9494, 10);
  });

  it('is a sixteenth of a gallon, which the table weighs at four times 976 g a quart', () => {
    expect(mass_g(3785.411784)).toBeCloseTo(4 * 976, 9);
  });
});

describe("goat's milk beside cow's", () => {
  // Differences worked out with Python from the printed values per 100 g.
  it.each([
    ['calcium', 'cow', 18.6],
    ['potassium', 'cow', 54.5],
    ['carbohydrate', 'cow', -7.3],
    ['carbohydrate', 'farm cow', -4.3],
    ['vitaminB12', 'cow', -84.4],
    ['folate', 'cow', -80.0],
    ['vitaminA', 'cow', 23.9],
  ] as const)('has %s against %s milk by %s %%', (nutrient, other, percent) => {
    expect(((moreThan(usda, 'goat', other, nutrient) ?? NaN) * 100).toFixed(1)).toBe(percent.toFixed(1));
  });

  it('has no lactose in the table, and none is made up', () => {
    expect(valueIn(usda, 'goat', 'lactose')).toEqual({ ok: false, why: 'the table has no such value' });
    const lactose = sideBySide(usda, ['goat', 'cow']).rows.find((row) => row.nutrient === 'lactose');
    expect(lactose?.cells.map((cell) => cell.amount)).toEqual([null, 5.05]);
  });

  it('has the short fatty acids that the fact says, of all fatty acids in the table', () => {
    // Totals of USDA 01106: saturated 2.667, monounsaturated 1.109, polyunsaturated 0.149 g.
    const sum = (['caproic', 'caprylic', 'capric'] as const).reduce((all, nutrient) => {
      const value = valueIn(usda, 'goat', nutrient);
      return all + (value.ok ? value.per_100g : NaN);
    }, 0);
    const percent = (sum / (2.667 + 1.109 + 0.149)) * 100;
    const [low = NaN, high = NaN] = factOf('short-fat-goat').range ?? [];
    expect(percent).toBeGreaterThan(low);
    expect(percent).toBeLessThan(high);
  });
});

describe.skipIf(!folder)(`other tables (${NOT_HERE})`, () => {
  const published = folder ? plainCsv(`${folder}/composition.csv`) : [];

  it('is, value by value, what an older edition of the same table has for its nutrients', () => {
    // USDA SR24 (2011) as packed by Debian: another copy, made by other people.
    const NAMES: Partial<Record<NutrientName, string>> = { energy: 'Energy', protein: 'Protein', carbohydrate: 'Carbs', sugars: 'Sugars', fat: 'Fat', water: 'Water', ash: 'Ash', calcium: 'Calcium', magnesium: 'Magnesium', phosphorus: 'Phosphorus', potassium: 'Potassium', sodium: 'Sodium', cholesterol: 'Cholesterol' }; // prettier-ignore
    let checked = 0;
    for (const milk of Object.values(usda.milks))
      for (const [nutrient, name] of Object.entries(NAMES) as [NutrientName, string][]) {
        const other = published.find((row) => row['source']?.startsWith('USDA SR24') && row['food_id'] === milk.food_id && row['nutrient'] === name); // prettier-ignore
        if (!other) continue;
        expect(milk.values[nutrient]?.per_100g, `${milk.food} ${name}`).toBe(Number(other['per_100g']));
        checked += 1;
      }
    expect(checked).toBeGreaterThan(70);
  });

  it('are carried as they are printed, each with its licence', () => {
    for (const table of milkTables().values()) {
      expect(table.licence, table.id).toMatch(/public domain|Etalab 2\.0|Open Government Licence|CC BY 4\.0/);
      for (const milk of Object.values(table.milks))
        for (const { label, per_100g, unit } of Object.values(milk.values)) {
          const same = published.filter((row) => row['food'] === milk.food && row['nutrient'] === label && row['unit'] === unit && Number(row['per_100g']) === per_100g); // prettier-ignore
          expect(same.length, `${table.id} ${milk.food} ${label}`).toBeGreaterThan(0);
        }
    }
  });

  it('differ from each other, so that no comparison may cross them', () => {
    const goatFat = [...milkTables().values()].flatMap((table) => {
      const value = valueIn(table, 'goat', 'fat');
      return value.ok ? [value.per_100g] : [];
    });
    expect(goatFat).toEqual([4.14, 3.2, 3.7, 3.92]);
    // Goat of one table beside cow of another would even turn the answer about.
    const ciqual = milkTables().get('ciqual');
    const cow = valueIn(usda, 'cow', 'fat');
    const goat = ciqual && valueIn(ciqual, 'goat', 'fat');
    expect(goat?.ok && cow.ok && goat.per_100g < cow.per_100g).toBe(true);
    expect(moreThan(usda, 'goat', 'cow', 'fat')).toBeGreaterThan(0);
  });

  it("leave gaps where they have no such milk: no human milk in CIQUAL, no cow's in the German table", () => {
    const [ciqual, bls] = [milkTables().get('ciqual'), milkTables().get('bls')];
    expect(ciqual && valueIn(ciqual, 'human', 'protein')).toEqual({ ok: false, why: 'the table has no such milk' });
    expect(bls && valueIn(bls, 'cow', 'protein')).toEqual({ ok: false, why: 'the table has no such milk' });
  }); // prettier-ignore
});

describe("children's calcium", () => {
  it('is the recommended allowance of each age', () => {
    // National Academies 2011, table of allowances, from memory: 700, 1,000 and 1,300 mg.
    expect(CALCIUM_NEEDS.map(({ need_mg }) => need_mg)).toEqual([700, 1000, 1300]);
  });

  it('of a day: a gallon does for 7, 5 and 4 children', () => {
    // 16 cups × 244 g × 1.34 mg/g = 5231.36 mg, by hand; ÷ 700 = 7.47, ÷ 1000 = 5.23, ÷ 1300 = 4.02.
    const pail = calciumOfPail(usda, 3785.411784);
    if (!pail.ok) throw new Error(pail.why);
    expect(pail.calcium_mg).toBeCloseTo(5231.36, 6);
    expect(pail.served.map(({ children }) => children.toFixed(2))).toEqual(['7.47', '5.23', '4.02']);
  });
});
