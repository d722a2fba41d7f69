// Three equations in three unknowns with a symmetric matrix, by hand: the algebra of a three-parameter fit.

/** The upper half of a symmetric 3 × 3 matrix by rows: 11, 12, 13, 22, 23, 33. */
export type Symmetric3 = Float64Array;

// A pivot that has lost this much of its diagonal is nothing but rounding.
const LOST = 1e-13;

/**
 * Solves m·x = r into `x` by Cholesky's factors; false, with `x` untouched, where `m` is not
 * positive definite (or not of finite numbers).
 * @example solve3(new Float64Array([2, 0, 0, 4, 0, 5]), new Float64Array([2, 4, 5]), new Float64Array(3)) // => true
 */
export function solve3(m: Symmetric3, r: Float64Array, x: Float64Array): boolean {
  const [m11, m12, m13, m22, m23, m33] = [m[0]!, m[1]!, m[2]!, m[3]!, m[4]!, m[5]!];
  if (!(m11 > 0 && m11 < Infinity)) return false;
  const l21 = m12 / m11;
  const l31 = m13 / m11;
  const d2 = m22 - l21 * m12;
  if (!(d2 > LOST * m22)) return false;
  const e23 = m23 - l21 * m13;
  const l32 = e23 / d2;
  const d3 = m33 - l31 * m13 - l32 * e23;
  if (!(d3 > LOST * m33)) return false;
  const y2 = r[1]! - l21 * r[0]!;
  const y3 = r[2]! - l31 * r[0]! - l32 * y2;
  const x3 = y3 / d3;
  const x2 = y2 / d2 - l32 * x3;
  const x1 = r[0]! / m11 - l21 * x2 - l31 * x3;
  if (!Number.isFinite(x1) || !Number.isFinite(x2) || !Number.isFinite(x3)) return false;
  x[0] = x1;
  x[1] = x2;
  x[2] = x3;
  return true;
}

/** The inverse of a positive definite matrix, or null where it is not one. */
export function inverse3(m: Symmetric3): Symmetric3 | null {
  const columns = [0, 1, 2].map((unit) => {
    const x = new Float64Array(3);
    const r = new Float64Array(3);
    r[unit] = 1;
    return solve3(m, r, x) ? x : null;
  });
  const [first, second, third] = columns;
  if (!first || !second || !third) return null;
  return new Float64Array([first[0]!, first[1]!, first[2]!, second[1]!, second[2]!, third[2]!]);
}

/** vᵀ·m·v, the variance of a sum that weighs the parameters by `v`. */
export function spreadOf(m: Symmetric3, v1: number, v2: number, v3: number): number {
  const diagonal = m[0]! * v1 * v1 + m[3]! * v2 * v2 + m[5]! * v3 * v3;
  return diagonal + 2 * (m[1]! * v1 * v2 + m[2]! * v1 * v3 + m[4]! * v2 * v3);
}
