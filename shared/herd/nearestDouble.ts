// From an exact fraction to the one double that lies nearest, whatever the length of its numbers.
import type Fraction from 'fraction.js';

// One bit more than a double's 53 would do for rounding; the rest is room for the leftover bit.
const KEPT_BITS = 64;

/**
 * The nearest double to an exact fraction. A plain division of both numbers would round three times,
 * and give NaN where both are longer than a double can hold: a book of many odd fractions has such
 * sums. Sizes from 1e-280 to 1e280, or zero.
 */
export function nearestDouble(value: Fraction): number {
  const { s, n, d } = value;
  if (n === 0n) return 0;
  const shift = KEPT_BITS - (bitsOf(n) - bitsOf(d));
  const top = shift > 0 ? n << BigInt(shift) : n;
  const bottom = shift < 0 ? d << BigInt(-shift) : d;
  const quotient = top / bottom;
  // A leftover keeps a value that is more than half a step from being rounded as if it were half.
  const kept = quotient * bottom === top ? quotient : quotient | 1n;
  return Number(s) * Number(kept) * 2 ** -shift;
}

function bitsOf(value: bigint): number {
  return value.toString(2).length;
}
