// How often a range held, in parts of a hundred.

/**
 * Parts of a hundred: `held` of `days`, which is at least 1.
 * @example partOf100(4, 5) // => 80
 */
export function partOf100(held: number, days: number): number {
  return (held / days) * 100;
}
