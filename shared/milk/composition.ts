// What milk holds: one named table of nutrients, per 100 g, and what that makes in a cup.

/** A nutrient of one food in a published table. */
export interface NutrientRow {
  /** The table, with its edition. */
  readonly source: string;
  readonly food_id: string;
  readonly food: string;
  /** The nutrient's number in that table. */
  readonly nutrient_no: string;
  readonly nutrient: string;
  readonly unit: string;
  readonly per_100g: number;
}

/**
 * Mass of one US cup of whole milk, g. The table's own household weight for goat and cow alike
 * (USDA SR, 244 g a cup).
 */
export const CUP_OF_MILK_G = 244;

/** The row of a food and nutrient, or null where the table lacks it: nothing is filled in. */
export function nutrientOf(
  rows: readonly NutrientRow[],
  food_id: string,
  nutrient_no: string,
): NutrientRow | null {
  return rows.find((row) => row.food_id === food_id && row.nutrient_no === nutrient_no) ?? null;
}

/** What a cup holds of a nutrient, in the row's own unit. */
export function perCup(row: NutrientRow): number {
  return (row.per_100g * CUP_OF_MILK_G) / 100;
}
