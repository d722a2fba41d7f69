// The search for the Wood curve with the least squares, by Newton's method with exact derivatives.
import { solve3 } from './solve3.ts';
import type { WoodSeries } from './woodSeries.ts';

/** Where a search ended. */
export interface WoodOptimum {
  /** ln of the height at the means of the series, b, and −c. */
  readonly at: Float64Array;
  /** The sum of squared residuals, of scaled y. */
  readonly rss: number;
  /** The sums of squares and products of the derivatives of the curve by these three (JᵀJ). */
  readonly normal: Float64Array;
  readonly steps: number;
}

const MOST_STEPS = 80;
// The search ends when a step can better the sum of squares by no more than this part of it; Newton's
// steps double their digits, so the last one leaves an error far below what a double shows of it.
const ENOUGH = 1e-15;
// Where a curve fits without a rest, this part of the sum of y² is nothing but rounding.
const ROUNDING = 1e-28;
// Sums over the same points may differ in their last digits alone.
const SAME = 1 + 1e-12;
const FIRST_DAMPING = 1e-3;
const MOST_DAMPING = 1e12;

/**
 * Sums over the series at a point: [0] squared residuals; [1..6] f² times 1, l, t, l², l·t, t²;
 * [7..12] f·y times the same. With f = exp(p1 + p2·l + p3·t), all derivatives of the sum of squares,
 * the second ones as well, are made of these.
 */
function sumAt(series: WoodSeries, p: Float64Array, sums: Float64Array): void {
  const { n, lnT, t, y } = series;
  const [p1, p2, p3] = [p[0]!, p[1]!, p[2]!];
  let [rss, a1, al, at, all, alt, att, b1, bl, bt, bll, blt, btt] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const l = lnT[i]!;
    const ti = t[i]!;
    const yi = y[i]!;
    const f = Math.exp(p1 + p2 * l + p3 * ti);
    const residual = yi - f;
    rss += residual * residual;
    const a = f * f;
    const b = f * yi;
    const la = l * a;
    const ta = ti * a;
    const lb = l * b;
    const tb = ti * b;
    a1 += a;
    al += la;
    at += ta;
    all += l * la;
    alt += l * ta;
    att += ti * ta;
    b1 += b;
    bl += lb;
    bt += tb;
    bll += l * lb;
    blt += l * tb;
    btt += ti * tb;
  }
  sums[0] = rss;
  sums[1] = a1;
  sums[2] = al;
  sums[3] = at;
  sums[4] = all;
  sums[5] = alt;
  sums[6] = att;
  sums[7] = b1;
  sums[8] = bl;
  sums[9] = bt;
  sums[10] = bll;
  sums[11] = blt;
  sums[12] = btt;
}

/** The second derivatives (Newton) or their part without residuals (Gauss-Newton), damped on the diagonal. */
function fillMatrix(sums: Float64Array, newton: boolean, damping: number, matrix: Float64Array): void {
  for (let i = 0; i < 6; i += 1) matrix[i] = newton ? 2 * sums[i + 1]! - sums[i + 7]! : sums[i + 1]!;
  if (damping === 0) return;
  matrix[0] = matrix[0]! + damping * sums[1]!;
  matrix[3] = matrix[3]! + damping * sums[4]!;
  matrix[5] = matrix[5]! + damping * sums[6]!;
}

/**
 * Walks from `start` to the least sum of squares. A step that would climb is damped (Levenberg and
 * Marquardt); where the second derivatives do not bend upward, Gauss-Newton's do. Null where it does
 * not settle: the data have no finite curve that fits best.
 */
export function searchWood(series: WoodSeries, start: Float64Array): WoodOptimum | null {
  let at = Float64Array.from(start);
  let next = new Float64Array(3);
  let sums = new Float64Array(13);
  let nextSums = new Float64Array(13);
  const step = new Float64Array(3);
  const slope = new Float64Array(3);
  const matrix = new Float64Array(6);
  let damping = 0;
  sumAt(series, at, sums);
  if (!Number.isFinite(sums[0]!)) return null;
  for (let steps = 1; steps <= MOST_STEPS && damping < MOST_DAMPING; steps += 1) {
    for (let i = 0; i < 3; i += 1) slope[i] = sums[i + 7]! - sums[i + 1]!;
    fillMatrix(sums, true, damping, matrix);
    let solved = solve3(matrix, slope, step);
    if (!solved) {
      fillMatrix(sums, false, damping, matrix);
      solved = solve3(matrix, slope, step);
    }
    const gain = slope[0]! * step[0]! + slope[1]! * step[1]! + slope[2]! * step[2]!;
    for (let i = 0; i < 3; i += 1) next[i] = at[i]! + step[i]!;
    if (solved && damping === 0 && gain <= ENOUGH * sums[0]! + ROUNDING * series.ySquares)
      return { at: next, rss: sums[0]!, normal: sums.slice(1, 7), steps };
    if (solved) sumAt(series, next, nextSums);
    if (!solved || !(nextSums[0]! <= sums[0]! * SAME + ROUNDING * series.ySquares)) {
      damping = Math.max(FIRST_DAMPING, damping * 10);
      continue;
    }
    [at, next] = [next, at];
    [sums, nextSums] = [nextSums, sums];
    damping = damping > FIRST_DAMPING ? damping / 10 : 0;
  }
  return null;
}
