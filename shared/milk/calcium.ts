// How many children's daily calcium a pail holds.
import { mass_g } from './contents.ts';
import { valueIn, type MilkTable, type TableGap } from './milkTable.ts';

/** A child's daily need of calcium, ages both included. */
export interface CalciumNeed {
  readonly from_y: number;
  readonly to_y: number;
  readonly need_mg: number;
}

/** Fact in content/facts that carries the needs and their source. */
export const CALCIUM_NEED_FACT = 'calcium-need';

/**
 * Recommended dietary allowances of calcium. Source: National Academies (Institute of Medicine),
 * Dietary Reference Intakes for Calcium and Vitamin D, 2011; from memory.
 */
export const CALCIUM_NEEDS: readonly CalciumNeed[] = Object.freeze([
  { from_y: 1, to_y: 3, need_mg: 700 },
  { from_y: 4, to_y: 8, need_mg: 1000 },
  { from_y: 9, to_y: 18, need_mg: 1300 },
]);

/** Children of an age whose calcium of a day a pail holds, if they had it from milk alone. */
export interface CalciumServed extends CalciumNeed {
  /** Full precision; a page says the whole number below it. */
  readonly children: number;
}

/** The calcium of a pail of goat's milk by the table, and whom it would do for a day. */
export function calciumOfPail(
  table: MilkTable,
  pail_mL: number,
): { ok: true; calcium_mg: number; served: CalciumServed[] } | { ok: false; why: TableGap } {
  const value = valueIn(table, 'goat', 'calcium');
  if (!value.ok) return value;
  const calcium_mg = (value.per_100g * mass_g(pail_mL, table.milks.goat?.cup_g ?? undefined)) / 100;
  const served = CALCIUM_NEEDS.map((need) => ({ ...need, children: calcium_mg / need.need_mg }));
  return { ok: true, calcium_mg, served };
}
