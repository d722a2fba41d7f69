// Milks side by side from one table.
import { cupContents, contentsOf, type Content } from './contents.ts';
import { NUTRIENTS, type MilkName, type MilkTable, type NutrientName } from './milkTable.ts';

/** One nutrient across the milks; cells stand in the order of the milks asked for. */
export interface ComparedNutrient {
  readonly nutrient: NutrientName;
  /** The table's unit; null where none of the milks has a value. */
  readonly unit: string | null;
  readonly cells: readonly Content[];
}

/** A comparison, with the one table that it stands on. */
export interface SideBySide {
  readonly table: { readonly id: string; readonly name: string; readonly licence: string };
  readonly per: '100 g' | 'cup';
  readonly milks: readonly MilkName[];
  /** Nutrients that at least one of the milks has. */
  readonly rows: readonly ComparedNutrient[];
}

/** Lays milks side by side, per 100 g or per US cup; a gap stays a gap and says why. */
export function sideBySide(
  table: MilkTable,
  milks: readonly MilkName[],
  per: SideBySide['per'] = '100 g',
): SideBySide {
  const columns = milks.map((milk) =>
    per === 'cup' ? cupContents(table, milk) : contentsOf(table, milk, 100),
  );
  const rows = NUTRIENTS.flatMap((nutrient, index) => {
    const cells = columns.flatMap((column) => column[index] ?? []);
    const first = cells.find((cell) => cell.amount !== null);
    return first && first.amount !== null ? [{ nutrient, unit: first.unit, cells }] : [];
  });
  return { table: { id: table.id, name: table.name, licence: table.licence }, per, milks, rows };
}

/** How much more (or, below 0, less) of a nutrient one milk has than another, in parts of the other; null where the table lacks either. */
export function moreThan(
  table: MilkTable,
  one: MilkName,
  other: MilkName,
  nutrient: NutrientName,
): number | null {
  const [a, b] = [table.milks[one]?.values[nutrient], table.milks[other]?.values[nutrient]];
  return a && b && b.per_100g !== 0 && a.unit === b.unit ? a.per_100g / b.per_100g - 1 : null;
}
