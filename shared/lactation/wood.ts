// Wood's lactation curve and what follows from it in closed form.

/**
 * Wood's curve, y(t) = a · t^b · e^(−c·t): `t` counts days since kidding (or weeks, then c is per week),
 * y is in the unit of `a` (litres a day where the points were). Source: P. D. P. Wood, Nature 216 (1967) 164.
 */
export interface WoodCurve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** The days that a standard lactation is counted for: 305. Source: USDA and ICAR practice. */
export const STANDARD_DAYS = 305;

/**
 * The curve's yield on day `t`; 0 on the day of kidding and before, where the curve has no meaning.
 * @example woodAt({ a: 2, b: 0, c: 0 }, 7) // => 2
 * @example woodAt({ a: 2, b: 0.2, c: 0.004 }, 0) // => 0
 */
export function woodAt(curve: WoodCurve, t: number): number {
  if (!(t > 0 && t < Infinity) || !(curve.a > 0)) return 0;
  // One exponent, since t^b alone may be too large a number where the whole is not.
  return Math.exp(Math.log(curve.a) + curve.b * Math.log(t) - curve.c * t);
}

/**
 * Where the curve is highest, day b/c, and how high, a·(b/c)^b·e^(−b); null where it has no highest
 * point (b or c is not above 0: it only falls, only rises, or sags).
 * @example woodPeak({ a: 2, b: -0.1, c: 0.004 }) // => null
 */
export function woodPeak(curve: WoodCurve): { day: number; yield: number } | null {
  if (!(curve.a > 0) || !(curve.b > 0) || !(curve.c > 0)) return null;
  const day = curve.b / curve.c;
  const height = woodAt(curve, day);
  return Number.isFinite(day) && Number.isFinite(height) ? { day, yield: height } : null;
}

/**
 * Wood's persistency, −(b + 1) · ln c: the higher, the longer the milk keeps up after the peak. A plain
 * number that only compares curves counted in the same unit of time; null where c is not above 0.
 * @example woodPersistency({ a: 2, b: 0.2, c: 1 }) // => -0
 */
export function woodPersistency(curve: WoodCurve): number | null {
  return curve.c > 0 ? -(curve.b + 1) * Math.log(curve.c) : null;
}

/**
 * The sum of the curve over whole days, `from` and `to` included, in the unit of `a` times days.
 * @example woodTotal({ a: 2, b: 0, c: 0 }, 1, 10) // => 20
 * @example woodTotal({ a: 2, b: 0, c: 0 }, 5, 4) // => 0
 */
export function woodTotal(curve: WoodCurve, from: number, to: number): number {
  let total = 0;
  for (let t = from; t <= to; t += 1) total += woodAt(curve, t);
  return total;
}
