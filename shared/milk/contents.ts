// What a cup, or a day's pail, of a milk holds by one table.
import { UNIT_ML } from '../quantity/units.ts';
import { CUP_OF_MILK_G } from './composition.ts';
import {
  NUTRIENTS,
  valueIn,
  type MilkName,
  type MilkTable,
  type NutrientName,
  type TableGap,
} from './milkTable.ts';

/** An amount of a nutrient, or why there is none. */
export type Content =
  | {
      readonly nutrient: NutrientName;
      readonly amount: number;
      readonly unit: string;
      readonly label: string;
    }
  | { readonly nutrient: NutrientName; readonly amount: null; readonly why: TableGap };

const CUP_ML = UNIT_ML.cup.valueOf();

/**
 * Mass of a volume of milk, g: its US cups times what a cup weighs (244 g unless told otherwise, the
 * table's household weight of goat's and cow's milk), so that pail and cups go together.
 * @example mass_g(473.176473) // => 488
 */
export function mass_g(amount_mL: number, cup_g: number = CUP_OF_MILK_G): number {
  return (amount_mL / CUP_ML) * cup_g;
}

/** What a mass of a milk holds of every nutrient that pages show, in their order. */
export function contentsOf(table: MilkTable, milk: MilkName, weight_g: number): Content[] {
  return NUTRIENTS.map((nutrient) => {
    const value = valueIn(table, milk, nutrient);
    if (!value.ok) return { nutrient, amount: null, why: value.why };
    return { nutrient, amount: (value.per_100g * weight_g) / 100, unit: value.unit, label: value.label };
  });
}

/** What one US cup holds; null amounts with the reason where the table gives no cup of this milk. */
export function cupContents(table: MilkTable, milk: MilkName): Content[] {
  const cup_g = table.milks[milk]?.cup_g ?? null;
  if (cup_g !== null) return contentsOf(table, milk, cup_g);
  const why: TableGap = table.milks[milk] ? 'the table has no cup' : 'the table has no such milk';
  return NUTRIENTS.map((nutrient) => ({ nutrient, amount: null, why }));
}

/** What a pail of goat's milk holds by the table. */
export function pailContents(table: MilkTable, pail_mL: number): Content[] {
  return contentsOf(table, 'goat', mass_g(pail_mL, table.milks.goat?.cup_g ?? undefined));
}
