// Bars of one nutrient across milks: each as long as its share of the largest.
import type { ComparedNutrient, SideBySide } from '../milk/sideBySide.ts';
import type { MilkName, NutrientName } from '../milk/milkTable.ts';

/** One bar; null where the table has no value. */
export interface MilkBar {
  readonly milk: MilkName;
  readonly amount: number | null;
  readonly length_pct: number;
}

/** The bars of a nutrient. */
export interface MilkBarGroup {
  readonly nutrient: NutrientName;
  readonly unit: string;
  readonly bars: readonly MilkBar[];
}

/** Bars of some nutrients of a comparison, those that the table has, in the order asked for. */
export function milkBars(side: SideBySide, nutrients: readonly NutrientName[]): MilkBarGroup[] {
  return nutrients.flatMap((nutrient) => {
    const row = side.rows.find((one) => one.nutrient === nutrient);
    return row && row.unit !== null ? [{ nutrient, unit: row.unit, bars: barsOf(side.milks, row) }] : [];
  });
}

function barsOf(milks: readonly MilkName[], row: ComparedNutrient): MilkBar[] {
  const most = Math.max(...row.cells.map(({ amount }) => amount ?? 0));
  return milks.flatMap((milk, index) => {
    const cell = row.cells[index];
    if (!cell) return [];
    const length_pct = most > 0 ? ((cell.amount ?? 0) / most) * 100 : 0;
    return [{ milk, amount: cell.amount, length_pct }];
  });
}
