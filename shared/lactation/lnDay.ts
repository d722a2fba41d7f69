// Logarithms of whole days, taken once: most of a lactation's days are whole.

const DAYS = 1024;
const TABLE = Float64Array.from({ length: DAYS }, (_, day) => Math.log(day));

/**
 * The natural logarithm of a day number above 0.
 * @example lnDay(1) // => 0
 */
export function lnDay(t: number): number {
  return t < DAYS && t >= 1 && Math.floor(t) === t ? TABLE[t]! : Math.log(t);
}
