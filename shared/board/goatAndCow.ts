// Goat's and cow's milk side by side, from one published table.
import { CUP_OF_MILK_G, nutrientOf, perCup, type NutrientRow } from '../milk/composition.ts';
import { decimalText } from '../quantity/show.ts';
import type { Answer, BoardInput, Pair, ProofRow, ProofStep } from './types.ts';

/** Foods of the USDA table: goat's milk, and whole cow's milk as shops sell it (3.25 % fat). */
export const GOAT_FOOD = '01106';
export const COW_FOOD = '01077';
const WATER = '255';
// Nutrient numbers of the same table. It has no lactose for goat's milk, so carbohydrate stands for sugar.
const COMPARED: readonly { key: string; no: string; places: number }[] = [
  { key: 'protein', no: '203', places: 1 },
  { key: 'fat', no: '204', places: 1 },
  { key: 'sugar', no: '205', places: 1 },
  { key: 'calcium', no: '301', places: 0 },
];

/** Water in a hundred parts, and what a cup of each milk holds. Missing where the table lacks a row. */
export function goatAndCow(input: BoardInput): Answer {
  const { composition, lang } = input;
  const goatWater = nutrientOf(composition, GOAT_FOOD, WATER);
  const cowWater = nutrientOf(composition, COW_FOOD, WATER);
  const pairs = COMPARED.flatMap(({ key, no, places }): { pair: Pair; rows: NutrientRow[] }[] => {
    const goat = nutrientOf(composition, GOAT_FOOD, no);
    const cow = nutrientOf(composition, COW_FOOD, no);
    if (!goat || !cow) return [];
    const text = (row: NutrientRow) => decimalText(perCup(row), places, lang);
    const pair = {
      key,
      unit: goat.unit,
      goat: perCup(goat),
      cow: perCup(cow),
      goatText: text(goat),
      cowText: text(cow),
    };
    return [{ pair, rows: [goat, cow] }];
  });
  const factor = decimalText(CUP_OF_MILK_G / 100, 2, lang);
  const missing = !goatWater || !cowWater;
  const n = missing ? 0 : Math.round(goatWater.per_100g);
  return {
    name: 'goat-and-cow',
    missing,
    live: false,
    face: null,
    number: missing ? '' : String(n),
    slots: {
      n,
      cow: missing ? 0 : Math.round(cowWater.per_100g),
      cup_g: CUP_OF_MILK_G,
      storeFat: nutrientOf(composition, COW_FOOD, '204')?.per_100g ?? '',
      factor,
    },
    variants: {},
    concrete: n,
    picture: { kind: 'two-milks', pairs: pairs.map(({ pair }) => pair) },
    proof: {
      figure: null,
      steps: [
        ...waterSteps(goatWater, cowWater),
        ...pairs.flatMap(({ rows: [goat, cow], pair }) => [
          { label: '', key: `goat.${pair.key}`, sum: cupSum(goat, factor, pair.goatText) },
          { label: '', key: `cow.${pair.key}`, sum: cupSum(cow, factor, pair.cowText) },
        ]),
      ],
      columns: ['food', 'nutrient', 'per100g'],
      rows: [goatWater, cowWater, ...pairs.flatMap(({ rows }) => rows)].flatMap((row) =>
        row ? [tableRow(row)] : [],
      ),
      missing: 0,
      facts: ['cup-of-milk', 'milk-allergy', 'no-goat-lactose'],
      table: goatWater?.source ?? null,
    },
  };
}

function waterSteps(goat: NutrientRow | null, cow: NutrientRow | null): ProofStep[] {
  const step = (key: string, row: NutrientRow): ProofStep => ({
    label: '',
    key: `${key}.water`,
    sum: `${row.per_100g} ≈ ${Math.round(row.per_100g)}`,
  });
  return goat && cow ? [step('goat', goat), step('cow', cow)] : [];
}

function cupSum(row: NutrientRow | undefined, factor: string, shown: string): string {
  return `${row?.per_100g} ${row?.unit} × ${factor} ≈ ${shown} ${row?.unit}`;
}

function tableRow(row: NutrientRow): ProofRow {
  return { cells: [`${row.food_id} ${row.food}`, row.nutrient, `${row.per_100g} ${row.unit}`], place: null };
}
