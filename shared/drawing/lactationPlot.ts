// A doe's days in milk as dots, and the curve through them with its range: geometry only.
import { axisOf, type Axis } from './axis.ts';

/** A day of milk: days since kidding, and her milk that day in the unit shown. */
export interface PlotPoint {
  readonly t: number;
  readonly y: number;
}

/** The curve on a day, with the range that most days keep to. */
export interface PlotCurve extends PlotPoint {
  readonly low: number;
  readonly high: number;
}

/** The plot; y grows downwards and the plot's bottom is at `height`. */
export interface LactationPlot {
  readonly width: number;
  readonly height: number;
  readonly x: Axis;
  readonly y: Axis;
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  /** Path data of the curve and of its range; null without a curve. */
  readonly line: string | null;
  readonly band: string | null;
}

const X_STEP_DAYS = 50;

/** Lays out the days and the curve of a lactation; both axes start at zero, so that heights may be compared. */
export function lactationPlot(
  points: readonly PlotPoint[],
  curve: readonly PlotCurve[],
  width: number,
  height: number,
): LactationPlot {
  const lastDay = Math.max(1, ...points.map(({ t }) => t), ...curve.map(({ t }) => t));
  const most = Math.max(1e-9, ...points.map(({ y }) => y), ...curve.map(({ high }) => high));
  const x = axisOf(0, Math.ceil(lastDay / X_STEP_DAYS) * X_STEP_DAYS, X_STEP_DAYS, width);
  const step = roundStep(most / 4);
  const y = axisOf(0, Math.ceil(most / step) * step, step, height);
  const place = (t: number, value: number) => ({
    x: x.at(t),
    y: height - y.at(Math.min(Math.max(value, 0), y.to)),
  });
  const path = (places: readonly { x: number; y: number }[]) =>
    places.map((one, index) => `${index === 0 ? 'M' : 'L'}${tenth(one.x)} ${tenth(one.y)}`).join('');
  const upper = curve.map(({ t, high }) => place(t, high));
  const lower = curve.map(({ t, low }) => place(t, low)).reverse();
  return {
    width,
    height,
    x,
    y,
    dots: points.map(({ t, y: value }) => place(t, value)),
    line: curve.length > 1 ? path(curve.map(({ t, y: value }) => place(t, value))) : null,
    band: curve.length > 1 ? `${path([...upper, ...lower])}Z` : null,
  };
}

/** The smallest of 1, 2, 5 times a power of ten that is not below `rough`. */
function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((one) => one * power >= rough * (1 - 1e-9)) ?? 10) * power;
}

const tenth = (value: number) => Math.round(value * 10) / 10;
