// What a back-test found at one distance, and how often its range held.

/** Days asked about, the mean absolute errors, L a day, and the days that lay in the range. */
export interface Tally {
  readonly days: number;
  readonly outlook_L: number;
  /** Of the plain rule: as on the mean day of the last week. */
  readonly plain_L: number;
  readonly held: number;
}

/** The finds at one distance, for single does and for the herd. */
export interface DistanceTally {
  readonly distance_days: number;
  readonly doe: Tally;
  readonly herd: Tally;
}

/**
 * Parts of a hundred: `held` of `days`, which is at least 1.
 * @example partOf100(4, 5) // => 80
 */
export function partOf100(held: number, days: number): number {
  return (held / days) * 100;
}
