// An amount of milk as a row of jars: full ones, then the one that is partly filled.

/** One jar of a row and its place. */
export interface JarPlace {
  /** Share of the jar that is filled, 0..1. */
  readonly fill: number;
  /** Row and place in the row, from 0. */
  readonly row: number;
  readonly column: number;
}

/** A share nearer to a whole jar than this is a whole jar: it is rounding of sums, not milk. */
const hair = 1e-9;

/**
 * The fills of the jars that hold an amount: 1 for each full jar, then the last jar's share.
 *
 * `amount_mL` is zero or more and `jar_mL`, the jar's full line, more than zero; both finite, else it throws.
 * An amount of 0 gives one empty jar, so that "none" is seen and not missing. The fills times `jar_mL` add up
 * to the amount.
 *
 * @example jarRow(2500, 1000) // [1, 1, 0.5]
 */
export function jarRow(amount_mL: number, jar_mL: number): number[] {
  if (!Number.isFinite(amount_mL) || amount_mL < 0 || !Number.isFinite(jar_mL) || jar_mL <= 0) {
    throw new Error(
      `A row of jars needs an amount of 0 mL or more and a jar above 0 mL, not ${amount_mL} and ${jar_mL}.`,
    );
  }
  if (amount_mL === 0) return [0];
  const jars = amount_mL / jar_mL;
  const nearest = Math.round(jars);
  if (nearest > 0 && Math.abs(jars - nearest) < hair * nearest)
    return Array.from({ length: nearest }, () => 1);
  const full = Math.floor(jars);
  return [...Array.from({ length: full }, () => 1), jars - full];
}

/** Sets a row of fills out in rows of at most `max` jars (1 or more), left to right, then down. */
export function jarPlaces(fills: readonly number[], max: number): JarPlace[] {
  const wide = Math.max(1, Math.floor(max));
  return fills.map((fill, i) => ({ fill, row: Math.floor(i / wide), column: i % wide }));
}
