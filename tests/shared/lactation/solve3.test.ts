// Three equations in three unknowns, against Cramer's rule and the definition of an inverse.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inverse3, solve3, spreadOf } from '../../../shared/lactation/solve3.ts';

const number = fc.double({ min: -5, max: 5, noNaN: true });
/** m = r·rᵀ + 0.1, which is positive definite, as a full matrix. */
const matrixArb = fc.array(number, { minLength: 9, maxLength: 9 }).map((r) => {
  const at = (row: number, column: number) =>
    [0, 1, 2].reduce((sum, k) => sum + r[3 * row + k]! * r[3 * column + k]!, row === column ? 0.1 : 0);
  return [0, 1, 2].map((row) => [0, 1, 2].map((column) => at(row, column)));
});
const upper = (m: number[][]) =>
  new Float64Array([m[0]![0]!, m[0]![1]!, m[0]![2]!, m[1]![1]!, m[1]![2]!, m[2]![2]!]);
const full = (u: Float64Array) => [
  [u[0]!, u[1]!, u[2]!],
  [u[1]!, u[3]!, u[4]!],
  [u[2]!, u[4]!, u[5]!],
];
const times = (m: number[][], x: ArrayLike<number>) =>
  m.map((row) => row[0]! * x[0]! + row[1]! * x[1]! + row[2]! * x[2]!);

describe('solve3 and inverse3', () => {
  it('solve what they are given', () => {
    fc.assert(
      fc.property(matrixArb, fc.array(number, { minLength: 3, maxLength: 3 }), (m, r) => {
        const x = new Float64Array(3);
        expect(solve3(upper(m), Float64Array.from(r), x)).toBe(true);
        times(m, x).forEach((value, row) => expect(value).toBeCloseTo(r[row]!, 6));
        const inverse = inverse3(upper(m));
        if (!inverse) throw new Error('no inverse');
        const unit = times(m, full(inverse)[1]!);
        unit.forEach((value, row) => expect(value).toBeCloseTo(row === 1 ? 1 : 0, 6));
        expect(spreadOf(upper(m), 1, 2, -1)).toBeCloseTo(times([[1, 2, -1]], times(m, [1, 2, -1]))[0]!, 8);
      }),
    );
  });

  it.each([
    ['nothing', [0, 0, 0, 0, 0, 0]],
    ['two equal rows', [1, 1, 0, 1, 0, 1]],
    ['a bend downward', [1, 0, 0, -1, 0, 1]],
    ['a last row that is the sum of the others', [1, 0, 1, 1, 1, 2]],
    ['no number', [NaN, 0, 0, 1, 0, 1]],
    ['numbers out of reach', [Infinity, 0, 0, 1, 0, 1]],
  ])('refuse %s', (_, m) => {
    const x = new Float64Array([7, 7, 7]);
    expect(solve3(Float64Array.from(m), new Float64Array([1, 1, 1]), x)).toBe(false);
    expect([...x]).toEqual([7, 7, 7]);
    expect(inverse3(Float64Array.from(m))).toBeNull();
  });
});
