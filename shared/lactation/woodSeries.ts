// Points made ready for a fit: logarithms taken once, centred and scaled, and where to start from.
import { lnDay } from './lnDay.ts';

/** A point of a lactation: days since kidding, and what was milked on that day. */
export interface LactationPoint {
  readonly t: number;
  readonly y: number;
}

/**
 * Points that a curve can be fitted to. ln t and t are counted from their means and y in parts of the
 * largest, which keeps the equations well apart and no number out of reach.
 */
export interface WoodSeries {
  readonly n: number;
  readonly lnT: Float64Array;
  readonly t: Float64Array;
  readonly y: Float64Array;
  readonly lnTMean: number;
  readonly tMean: number;
  readonly yScale: number;
  readonly first: number;
  readonly last: number;
  /** How many different values of t there are. */
  readonly days: number;
  /** The sum of y², of scaled y. */
  readonly ySquares: number;
  /** ln of the height at the means, b, and −c: where the search starts; null where logarithms give no start. */
  readonly start: Float64Array | null;
}

/**
 * Makes points ready. Points on the day of kidding or before, and points that are not numbers or
 * below 0, are left out: the curve says nothing of them.
 */
export function woodSeries(points: readonly LactationPoint[]): WoodSeries {
  const lnT = new Float64Array(points.length);
  const t = new Float64Array(points.length);
  const y = new Float64Array(points.length);
  let [n, yScale, first, last, inOrder] = [0, 0, Infinity, -Infinity, true];
  for (const point of points) {
    if (!(point.t > 0 && point.t < Infinity && point.y >= 0 && point.y < Infinity)) continue;
    t[n] = point.t;
    y[n] = point.y;
    if (point.y > yScale) yScale = point.y;
    if (!(point.t > last)) inOrder = false;
    if (point.t > last) last = point.t;
    if (point.t < first) first = point.t;
    n += 1;
  }
  let ySquares = 0;
  for (let i = 0; i < n; i += 1) {
    lnT[i] = lnDay(t[i]!);
    if (yScale > 0) y[i] = y[i]! / yScale;
    ySquares += y[i]! * y[i]!;
  }
  const days = inOrder ? n : new Set(t.subarray(0, n)).size;
  const { lnTMean, tMean } = centre(n, lnT, t, y, ySquares);
  const start = yScale > 0 ? logLinearStart(n, lnT, t, y, ySquares) : null;
  return { n, lnT, t, y, lnTMean, tMean, yScale, first, last, days, ySquares, start };
}

/** Counts ln t and t from their means, in which large yields weigh more. */
function centre(
  n: number,
  lnT: Float64Array,
  t: Float64Array,
  y: Float64Array,
  ySquares: number,
): { lnTMean: number; tMean: number } {
  let [lnTMean, tMean] = [0, 0];
  if (!(ySquares > 0)) return { lnTMean, tMean };
  for (let i = 0; i < n; i += 1) {
    const weight = y[i]! * y[i]!;
    lnTMean += weight * lnT[i]!;
    tMean += weight * t[i]!;
  }
  lnTMean /= ySquares;
  tMean /= ySquares;
  for (let i = 0; i < n; i += 1) {
    lnT[i] = lnT[i]! - lnTMean;
    t[i] = t[i]! - tMean;
  }
  return { lnTMean, tMean };
}

/**
 * A straight least-squares fit of ln y on ln t and t. Each point weighs y², since an error of y moves
 * ln y by that error over y: the start then lies close to the direct fit, and days without milk drop out.
 */
function logLinearStart(
  n: number,
  lnT: Float64Array,
  t: Float64Array,
  y: Float64Array,
  ySquares: number,
): Float64Array | null {
  let [sz, sll, slt, stt, slz, stz] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const yi = y[i]!;
    if (!(yi > 0)) continue;
    const weight = yi * yi;
    const z = weight * Math.log(yi);
    const l = lnT[i]!;
    const ti = t[i]!;
    const wl = weight * l;
    const wt = weight * ti;
    sz += z;
    sll += wl * l;
    slt += wl * ti;
    stt += wt * ti;
    slz += z * l;
    stz += z * ti;
  }
  const determinant = sll * stt - slt * slt;
  // Centred with the same weights, so that the height stands apart from the two slopes.
  if (!(determinant > 1e-12 * sll * stt)) return null;
  const start = new Float64Array([
    sz / ySquares,
    (slz * stt - stz * slt) / determinant,
    (stz * sll - slz * slt) / determinant,
  ]);
  return start.every(Number.isFinite) ? start : null;
}

/** The starts to try when logarithms gave none or one that led nowhere: a rise to the best day, a fall, a hump. */
export function otherStarts(series: WoodSeries): Float64Array[] {
  let best = 0;
  for (let i = 1; i < series.n; i += 1) if (series.y[i]! > series.y[best]!) best = i;
  const bestDay = series.t[best]! + series.tMean;
  const shapes: [b: number, perDay: number][] = [
    [0.2, -0.2 / bestDay],
    [0, -1 / series.last],
    [1, -1 / bestDay],
    [4, -4 / bestDay],
  ];
  return shapes.map(([b, perDay]) => {
    let [along, own] = [0, 0];
    for (let i = 0; i < series.n; i += 1) {
      const shape = Math.exp(b * series.lnT[i]! + perDay * series.t[i]!);
      along += shape * series.y[i]!;
      own += shape * shape;
    }
    return new Float64Array([Math.log(along / own), b, perDay]);
  });
}
