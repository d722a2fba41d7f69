// The milks of the published table on a scale each: computed at build time.
import { doeLook } from '../../drawing/doeLook.ts';
import { nutrientOf, perCup, type NutrientRow } from '../../milk/composition.ts';
import { decimalText, sizedText } from '../../quantity/show.ts';
import { COW_FOOD, GOAT_FOOD } from '../goatAndCow.ts';
import type { BoardInput } from '../types.ts';
import type { MilkBar, MilkName, MilkPart, MilkScale, TwoMilksPlan } from './twoMilks.ts';

// Foods of USDA SR28: 01109 sheep's milk, 01107 mature human milk.
const FOODS: readonly { readonly milk: MilkName; readonly food: string }[] = [
  { milk: 'goat', food: GOAT_FOOD },
  { milk: 'cow', food: COW_FOOD },
  { milk: 'sheep', food: '01109' },
  { milk: 'human', food: '01107' },
];
// Nutrient numbers of the same table; it has no lactose for goat's milk, so carbohydrate stands for sugar.
const PARTS: readonly { readonly part: MilkPart; readonly no: string }[] = [
  { part: 'protein', no: '203' },
  { part: 'fat', no: '204' },
  { part: 'sugar', no: '205' },
  { part: 'calcium', no: '301' },
  { part: 'vitaminA', no: '320' },
  { part: 'folate', no: '417' },
];

/** What the table holds of both goat's and cow's milk, told apart by whole numbers; null where it holds none of it. */
export function twoMilksPlan(input: BoardInput): TwoMilksPlan | null {
  const scales = PARTS.flatMap(({ part, no }): MilkScale[] => {
    const rows = FOODS.flatMap(({ milk, food }) => {
      const row = nutrientOf(input.composition, food, no);
      return row ? [{ milk, row }] : [];
    });
    const [goat, cow] = rows;
    if (goat?.milk !== 'goat' || cow?.milk !== 'cow') return [];
    const bars = rows.map(({ milk, row }) => barOf(milk, row, input.lang));
    if (bars[0]?.whole === bars[1]?.whole) return [];
    const largest = Math.max(...bars.map(({ value }) => value));
    return [{ part, unit: goat.row.unit, marks: marksTo(largest), bars }];
  });
  return scales.length === 0 ? null : { goat: doeLook('Saanen', 'snow'), scales };
}

function barOf(milk: MilkName, row: NutrientRow, lang: string): MilkBar {
  const value = perCup(row);
  return { milk, value, whole: decimalText(value, 0, lang), exact: sizedText(value, lang) };
}

/** Round marks from 0 that reach a number: steps of 1, 2 or 5 times a power of ten, five of them at most. */
export function marksTo(largest: number): number[] {
  for (let power = 10 ** Math.floor(Math.log10(largest) - 1); ; power *= 10) {
    for (const digit of [1, 2, 5]) {
      const step = digit * power;
      const steps = Math.ceil(largest / step - 1e-9);
      if (steps <= 5) return Array.from({ length: steps + 1 }, (_, place) => place * step);
    }
  }
}
