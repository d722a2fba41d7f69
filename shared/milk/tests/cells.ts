// Body cells in milk against what may be sold.

/** Animals with a limit of their own. */
export type CellLimitOf = 'goat' | 'cow';

/**
 * Most cells in a millilitre of raw milk for sale as Grade A. Source: US Pasteurized Milk Ordinance,
 * as the rules of Maryland (COMAR 10.15.09.08) and Vermont (6 V.S.A. 2728) repeat it. An older text
 * has 1,000,000 for goats.
 */
export const CELL_LIMITS_PERML: Readonly<Record<CellLimitOf, number>> = Object.freeze({
  goat: 1_500_000,
  cow: 750_000,
});

/** Facts in content/facts that carry the limits. */
export const CELL_LIMIT_FACTS: Readonly<Record<CellLimitOf, string>> = Object.freeze({
  goat: 'cell-limit-goat',
  cow: 'cell-limit-cow',
});

/** A count beside its limit. */
export interface CellVerdict {
  readonly cells_perML: number;
  readonly limit_perML: number;
  /** The count as a part of the limit. */
  readonly part: number;
  /** Exactly at the limit is still within it. */
  readonly within: boolean;
}

/**
 * A count beside the limit. A count above it calls for the veterinarian, and is no diagnosis: goats
 * have more cells than cows, late in milk above all.
 */
export function judgeCells(cells_perML: number, of: CellLimitOf = 'goat'): CellVerdict {
  const limit_perML = CELL_LIMITS_PERML[of];
  return { cells_perML, limit_perML, part: cells_perML / limit_perML, within: cells_perML <= limit_perML };
}
