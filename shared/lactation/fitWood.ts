// Wood's curve fitted to the days of a lactation by nonlinear least squares, with standard errors.
import type { FitFault, Run } from './fitFault.ts';
import { lnDay } from './lnDay.ts';
import { inverse3, spreadOf, type Symmetric3 } from './solve3.ts';
import { STANDARD_DAYS, woodAt, woodPeak, woodPersistency, type WoodCurve } from './wood.ts';
import { searchWood, type WoodOptimum } from './woodSearch.ts';
import { otherStarts, woodSeries, type LactationPoint, type WoodSeries } from './woodSeries.ts';

/** Variances and covariances of a, b and c. */
export interface WoodCovariance {
  readonly aa: number;
  readonly ab: number;
  readonly ac: number;
  readonly bb: number;
  readonly bc: number;
  readonly cc: number;
}

/** The curve's highest point, with standard errors by the delta method. */
export interface WoodPeak {
  readonly day: number;
  readonly day_se: number;
  readonly yield: number;
  readonly yield_se: number;
}

/** A curve that fits best. Units: t as given (days since kidding), y as given (litres a day). */
export interface WoodFit {
  readonly ok: true;
  readonly curve: WoodCurve;
  readonly se: WoodCurve;
  readonly covariance: WoodCovariance;
  /** √(rss / (n − 3)). */
  readonly residualSd: number;
  readonly rss: number;
  /** 1 − rss / (sum of squares about the mean); null where y never changes. */
  readonly r2: number | null;
  /** Points used. */
  readonly n: number;
  readonly first_day: number;
  readonly last_day: number;
  /** Null where the data show none that may be told; `why` says why. */
  readonly peak: WoodPeak | null;
  readonly why: FitFault | null;
  /** Null where c is not above 0. */
  readonly persistency: number | null;
  readonly persistency_se: number | null;
  /** The curve summed over whole t from 1 to 305, measured or not. */
  readonly total_305: number;
  readonly total_305_se: number;
}

/** A fit, or why there is none. */
export type WoodResult = WoodFit | { readonly ok: false; readonly why: FitFault };

/** What a fit must reach. */
export interface FitLimits {
  /** Different days at least. */
  readonly days: number;
  /** R² at least, for a peak. */
  readonly r2: number;
  /** The standard error of the peak's day at most, as a part of the observed days, for a peak. */
  readonly peakShare: number;
  /** How many standard errors the peak's day must lie before the last day, for a peak. */
  readonly passed: number;
}

/**
 * Common practice, no source: three parameters want several days each; a curve that explains less than
 * a tenth of the ups and downs, or whose peak may lie anywhere, tells no peak; and a peak is told once it is passed with some surety, since
 * the last days' ups and downs alone often make a curve turn down.
 */
export const FIT_LIMITS: FitLimits = Object.freeze({ days: 8, r2: 0.1, peakShare: 0.5, passed: 1.5 });

// Below this a rise or fall is rounding, not milk.
const NOTHING = 1e-9;

/**
 * Fits y = a·t^b·e^(−c·t) by least squares of y itself (not of its logarithm). Standard errors are
 * √diag(s²·(JᵀJ)⁻¹) with s² = rss / (n − 3), as in R's `nls` and scipy's `curve_fit`. Points with t or y
 * below 0, t = 0 and what is no number are left out. A curve without a peak that may be told has `peak`
 * null and says why; where there is no curve at all the answer is not ok. Source: Wood 1967.
 */
export function fitWood(points: readonly LactationPoint[], limits: FitLimits = FIT_LIMITS): WoodResult {
  const series = woodSeries(points);
  const need = Math.max(4, limits.days);
  if (series.days < need) return { ok: false, why: { kind: 'tooFew', days: series.days, need } };
  if (series.yScale === 0) return { ok: false, why: { kind: 'allZero', days: series.days } };
  return (
    fitFrom(series, bestOptimum(series), limits) ?? {
      ok: false,
      why: { kind: 'notConverged', days: series.days },
    }
  );
}

function bestOptimum(series: WoodSeries): WoodOptimum | null {
  const direct = series.start && searchWood(series, series.start);
  if (direct) return direct;
  const others = otherStarts(series).map((start) => searchWood(series, start));
  return others.reduce((best, one) => (one && (!best || one.rss < best.rss) ? one : best), null);
}

function fitFrom(series: WoodSeries, found: WoodOptimum | null, limits: FitLimits): WoodFit | null {
  const inverse = found && inverse3(found.normal);
  if (!found || !inverse) return null;
  const variance = found.rss / (series.n - 3);
  const spread = inverse.map((value) => value * variance);
  const [height, b, perDay] = [found.at[0]!, found.at[1]!, found.at[2]!];
  const a = series.yScale * Math.exp(height - b * series.lnTMean - perDay * series.tMean);
  const curve = { a, b, c: -perDay };
  const covariance = covarianceOf(series, spread, a);
  const se = { a: Math.sqrt(covariance.aa), b: Math.sqrt(covariance.bb), c: Math.sqrt(covariance.cc) };
  const squares = squaresAboutMean(series);
  const r2 = squares > NOTHING * NOTHING * series.ySquares ? 1 - found.rss / squares : null;
  const { peak, why } = judgePeak(series, curve, spread, r2, limits);
  const persistency = woodPersistency(curve);
  const fit = {
    ok: true as const,
    curve,
    se,
    covariance,
    residualSd: series.yScale * Math.sqrt(variance),
    rss: series.yScale * series.yScale * found.rss,
    r2,
    n: series.n,
    first_day: series.first,
    last_day: series.last,
    peak,
    why,
    persistency,
    persistency_se:
      persistency === null
        ? null
        : Math.sqrt(spreadOf(spread, 0, -Math.log(curve.c), (curve.b + 1) / curve.c)),
    ...total305(series, curve, spread),
  };
  const told = [a, se.a, se.b, se.c, fit.rss, fit.total_305, fit.total_305_se];
  // An a of 0 is one too small for a double: the points are a spike, not a curve.
  return a > 0 && told.every(Number.isFinite) ? fit : null;
}

/** From the spread of (height at the means, b, −c) to that of (a, b, c). */
function covarianceOf(series: WoodSeries, spread: Symmetric3, a: number): WoodCovariance {
  const [l, t] = [-series.lnTMean, -series.tMean];
  const [s12, s13, s22, s23, s33] = [spread[1]!, spread[2]!, spread[3]!, spread[4]!, spread[5]!];
  return {
    aa: a * a * spreadOf(spread, 1, l, t),
    ab: a * (s12 + l * s22 + t * s23),
    ac: -a * (s13 + l * s23 + t * s33),
    bb: s22,
    bc: -s23,
    cc: s33,
  };
}

function squaresAboutMean({ n, y }: WoodSeries): number {
  let mean = 0;
  for (let i = 0; i < n; i += 1) mean += y[i]! / n;
  let squares = 0;
  for (let i = 0; i < n; i += 1) squares += (y[i]! - mean) ** 2;
  return squares;
}

function judgePeak(
  series: WoodSeries,
  curve: WoodCurve,
  spread: Symmetric3,
  r2: number | null,
  limits: FitLimits,
): { peak: WoodPeak | null; why: FitFault | null } {
  const none = (why: FitFault) => ({ peak: null, why });
  const top = woodPeak(curve);
  const run = runOf(curve, series.last, r2);
  if (run !== null || !top || r2 === null) return none({ kind: 'noPeak', run: run ?? 'level' });
  const [first_day, last_day] = [series.first, series.last];
  if (top.day < first_day || top.day > last_day)
    return none({ kind: 'peakOutside', side: top.day < first_day ? 'before' : 'after', peak_day: top.day, first_day, last_day }); // prettier-ignore
  if (r2 < limits.r2) return none({ kind: 'poorFit', r2, need: limits.r2 });
  const { c } = curve;
  const day_se = Math.sqrt(spreadOf(spread, 0, 1 / c, top.day / c));
  // The slope there is nil, so only what moves the curve itself moves the height of its top.
  const height = spreadOf(spread, 1, Math.log(top.day) - series.lnTMean, top.day - series.tMean);
  const isSure =
    day_se <= limits.peakShare * (last_day - first_day) && top.day + limits.passed * day_se <= last_day;
  if (!isSure)
    return none({ kind: 'peakUnsure', peak_day: top.day, peak_day_se: day_se, first_day, last_day });
  return {
    peak: { day: top.day, day_se, yield: top.yield, yield_se: top.yield * Math.sqrt(height) },
    why: null,
  };
}

function runOf({ b, c }: WoodCurve, last: number, r2: number | null): Run | null {
  const rises = b > NOTHING;
  const falls = c * last > NOTHING;
  if (r2 === null || (Math.abs(b) <= NOTHING && Math.abs(c * last) <= NOTHING)) return 'level';
  if (rises) return falls ? null : 'rising';
  return falls || c * last > -NOTHING ? 'falling' : b < -NOTHING ? 'sagging' : 'rising';
}

function total305(
  series: WoodSeries,
  curve: WoodCurve,
  spread: Symmetric3,
): { total_305: number; total_305_se: number } {
  const [scale, l, t] = [Math.log(curve.a), series.lnTMean, series.tMean];
  let [total, byB, byC] = [0, 0, 0];
  for (let day = 1; day <= STANDARD_DAYS; day += 1) {
    const lnT = lnDay(day);
    const f = Math.exp(scale + curve.b * lnT - curve.c * day);
    total += f;
    byB += f * (lnT - l);
    byC += f * (day - t);
  }
  return { total_305: total, total_305_se: Math.sqrt(spreadOf(spread, total, byB, byC)) };
}

/** The standard error of the fitted curve itself on day `t`, not of a single day's milk; 0 where the curve is 0. */
export function woodSeAt(fit: WoodFit, t: number): number {
  const f = woodAt(fit.curve, t);
  if (!(f > 0)) return 0;
  const { aa, ab, ac, bb, bc, cc } = fit.covariance;
  const [byA, byB, byC] = [f / fit.curve.a, f * Math.log(t), -f * t];
  const squares = aa * byA * byA + bb * byB * byB + cc * byC * byC;
  return Math.sqrt(Math.max(0, squares + 2 * (ab * byA * byB + ac * byA * byC + bc * byB * byC)));
}
