// A lactation ready to be drawn: its days, its curve with the range of days, and why there is no curve.
import { pointsOf, type Lactation } from './doeDays.ts';
import type { FitFault } from './fitFault.ts';
import { fitWood, woodSeAt, type WoodFit } from './fitWood.ts';
import type { LactationPoint } from './woodSeries.ts';
import { woodAt } from './wood.ts';

/** A day of the curve, L a day: the curve, and the range in which 80 of 100 such days should lie. */
export interface CurveDay {
  readonly t: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
}

/** A lactation as a page draws it. */
export interface CurveView {
  readonly points: readonly LactationPoint[];
  /** From the first day observed to the last; empty without a fit. */
  readonly curve: readonly CurveDay[];
  readonly fit: WoodFit | null;
  /** Why there is no curve, or no peak on it; null where all may be told. */
  readonly why: FitFault | null;
}

// 80 of 100 values of a normal distribution lie within so many standard deviations of its mean.
const EIGHTY_SD = 1.2815515655446004;

/** Fits a lactation's days and lays out the curve between the first and the last of them. */
export function curveView(lactation: Lactation): CurveView {
  const points = pointsOf(lactation);
  const fit = fitWood(points);
  if (!fit.ok) return { points, curve: [], fit: null, why: fit.why };
  // A curve that sags tells of a few uneven days, not of how a lactation runs: the days alone are drawn.
  const sags = fit.why?.kind === 'noPeak' && fit.why.run === 'sagging';
  if (sags) return { points, curve: [], fit: null, why: fit.why };
  const curve: CurveDay[] = [];
  for (let t = Math.max(1, fit.first_day); t <= fit.last_day; t += 1) {
    const y = woodAt(fit.curve, t);
    const reach = EIGHTY_SD * Math.hypot(fit.residualSd, woodSeAt(fit, t));
    curve.push({ t, y, low: Math.max(0, y - reach), high: y + reach });
  }
  return { points, curve, fit, why: fit.why };
}
