// Two bars to one scale: the longer one fills its place.

/**
 * Lengths of two bars as percentages of their place. Both amounts are zero or more, in one unit.
 * @example pairBars(3, 4) // => { first_pct: 75, second_pct: 100 }
 */
export function pairBars(first: number, second: number): { first_pct: number; second_pct: number } {
  const most = Math.max(first, second);
  if (most <= 0) return { first_pct: 0, second_pct: 0 };
  return { first_pct: (first / most) * 100, second_pct: (second / most) * 100 };
}
