// Why does milk taste different some days? By the short fats, which taste strong once they are set free.
import { nutrientOf, type NutrientRow } from '../milk/composition.ts';
import { decimalText } from '../quantity/show.ts';
import { COW_FOOD, GOAT_FOOD } from './goatAndCow.ts';
import type { Answer, BoardInput, ProofStep } from './types.ts';

const FAT = '204';
/** Caproic, caprylic and capric acid (6:0, 8:0, 10:0), by their numbers in the US table. */
const SHORT: readonly string[] = Object.freeze(['608', '609', '610']);

/** What is short in a milk's fat, of 100 parts of the fat. */
interface ShortFat {
  readonly rows: readonly NutrientRow[];
  readonly fat: NutrientRow;
  readonly sum_g: number;
  readonly per100: number;
}

/** The short fats of a food of the table, or null where the table lacks a row. */
export function shortFat(composition: readonly NutrientRow[], food: string): ShortFat | null {
  const fat = nutrientOf(composition, food, FAT);
  const rows = SHORT.flatMap((no) => nutrientOf(composition, food, no) ?? []);
  if (!fat || !(fat.per_100g > 0) || rows.length < SHORT.length) return null;
  const sum_g = rows.reduce((sum, row) => sum + row.per_100g, 0);
  return { rows, fat, sum_g, per100: (sum_g / fat.per_100g) * 100 };
}

/** Short fats in 100 parts of goat's and of cow's milk fat, from one table; missing where it lacks a row. */
export function flavor(input: BoardInput): Answer {
  const { composition, week, lang } = input;
  const goat = shortFat(composition, GOAT_FOOD);
  const cow = shortFat(composition, COW_FOOD);
  const missing = !goat || !cow;
  const n = missing ? 0 : Math.round(goat.per100);
  const cowN = missing ? 0 : Math.round(cow.per100);
  const does = week.does.filter((doe) => doe.milkings.some((row) => row.use === 'kept')).length;
  return {
    name: 'flavor',
    missing,
    live: false,
    face: null,
    number: missing ? '' : String(n),
    slots: { n, cow: cowN, does },
    variants: { 'why.third': does > 1 ? 'mixed' : 'few' },
    concrete: cowN,
    picture: { kind: 'kitchen', kitchen: { of: 'short-fats', goat: n, cow: cowN } },
    proof: {
      figure: null,
      steps: missing ? [] : [...sums('goat', goat, lang), ...sums('cow', cow, lang)],
      columns: ['food', 'nutrient', 'per100g'],
      rows: missing
        ? []
        : [goat, cow].flatMap(({ rows, fat }) =>
            [...rows, fat].map((row) => ({
              cells: [`${row.food_id} ${row.food}`, row.nutrient, `${row.per_100g} ${row.unit}`],
              place: null,
            })),
          ),
      missing: 0,
      facts: ['short-fat-goat', 'goaty-acids', 'fresh-is-mild', 'flavor-of-the-doe'],
      table: goat?.fat.source ?? null,
    },
  };
}

function sums(key: 'goat' | 'cow', { rows, fat, sum_g, per100 }: ShortFat, lang: string): ProofStep[] {
  const shown = decimalText(sum_g, 3, lang);
  return [
    { label: '', key: `short.${key}`, sum: `${rows.map((row) => row.per_100g).join(' + ')} = ${shown}` },
    {
      label: '',
      key: `share.${key}`,
      sum: `${shown} ÷ ${fat.per_100g} × 100 = ${decimalText(per100, 1, lang)} ≈ ${Math.round(per100)}`,
    },
  ];
}
