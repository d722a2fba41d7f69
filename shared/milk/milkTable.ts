// One published table of what milks hold, and what it says or leaves unsaid.

/** Milks that pages compare. `farm cow` is cow's milk as it leaves the farm, `cow` whole milk of the shop. */
export const MILKS = ['goat', 'cow', 'farm cow', 'sheep', 'human', 'buffalo'] as const;
/** One of those milks. */
export type MilkName = (typeof MILKS)[number];

/** Nutrients that pages may show, in their order; the last four are short fatty acids. */
export const NUTRIENTS = [
  'energy', 'water', 'protein', 'fat', 'saturatedFat', 'carbohydrate', 'sugars', 'lactose', 'ash',
  'calcium', 'phosphorus', 'magnesium', 'potassium', 'sodium', 'zinc',
  'vitaminA', 'riboflavin', 'folate', 'vitaminB12', 'cholesterol',
  'butyric', 'caproic', 'caprylic', 'capric',
] as const; // prettier-ignore
/** One of those nutrients. */
export type NutrientName = (typeof NUTRIENTS)[number];

/** A value as the table prints it. */
export interface TableValue {
  readonly per_100g: number;
  readonly unit: string;
  /** The table's own name of the nutrient: "by difference" and "available" are not the same thing. */
  readonly label: string;
}

/** A milk of the table. */
export interface TableMilk {
  readonly food: string;
  readonly food_id: string;
  /** Mass of a US cup by the same table, or null where it gives none. */
  readonly cup_g: number | null;
  readonly values: Readonly<Partial<Record<NutrientName, TableValue>>>;
}

/** A published table. */
export interface MilkTable {
  readonly id: string;
  readonly name: string;
  readonly licence: string;
  readonly milks: Readonly<Partial<Record<MilkName, TableMilk>>>;
}

/** Why a table has no answer. */
export type TableGap = 'the table has no such milk' | 'the table has no such value' | 'the table has no cup';

/** What the table says of a milk and a nutrient, or why it says nothing; nothing is ever filled in. */
export function valueIn(
  table: MilkTable,
  milk: MilkName,
  nutrient: NutrientName,
): ({ ok: true } & TableValue) | { ok: false; why: TableGap } {
  const found = table.milks[milk];
  if (!found) return { ok: false, why: 'the table has no such milk' };
  const value = found.values[nutrient];
  return value ? { ok: true, ...value } : { ok: false, why: 'the table has no such value' };
}
