// Points from zero on with a lactation curve or a line, in millimetres.
import { axisOf, roundAxis, type Axis } from './axis.ts';

/** What a curve plot is made of, as doubles. */
export interface CurveValues {
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly wood: { readonly a: number; readonly b: number; readonly c: number } | null;
  readonly line: { readonly slope: number; readonly intercept: number } | null;
  readonly last: number;
}

/** A curve plot; y grows downwards, the plot's bottom is at `height_mm`. */
export interface CurvePlot {
  readonly x: Axis;
  readonly y: Axis;
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** The curve as a path, or null. */
  readonly curve: string | null;
  readonly line: {
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  } | null;
}

const CURVE_STEPS = 120;

/** Round steps of an axis of days or weeks: some six to eleven to `last`. */
function stepOf(last: number): number {
  return [1, 2, 5, 10, 20, 25, 50, 100].find((step) => last / step <= 11) ?? 100;
}

/** Lays out the plot; both axes begin at zero, and a line is cut where it falls below it. */
export function curvePlot(values: CurveValues, width_mm: number, height_mm: number): CurvePlot {
  const { points, wood, line } = values;
  const step = stepOf(values.last);
  const last = Math.ceil(values.last / step - 1e-9) * step;
  const x = axisOf(0, last, step, width_mm);
  const woodAt = ({ a, b, c }: NonNullable<CurveValues['wood']>, t: number) =>
    t <= 0 ? 0 : a * t ** b * Math.exp(-c * t);
  const places = Array.from({ length: CURVE_STEPS + 1 }, (_, index) => (values.last * index) / CURVE_STEPS);
  const onCurve = wood ? places.map((t) => ({ t, y: woodAt(wood, t) })) : [];
  const lineAt = (t: number) => (line ? line.intercept + line.slope * t : 0);
  const ends = line ? cutAtZero(lineAt, line, values.last) : null;
  const heights = [
    ...points.map((one) => one.y),
    ...onCurve.map((one) => one.y),
    ...(ends ?? []).map(lineAt),
  ];
  const y = roundAxis([Math.max(...heights, 0.001)], 6, height_mm, true);
  const down = (value: number) => height_mm - y.at(Math.max(0, value));
  return {
    x,
    y,
    points: points.map((one) => ({ x: x.at(one.x), y: down(one.y) })),
    curve: wood
      ? onCurve
          .map(
            ({ t, y: value }, index) => `${index === 0 ? 'M' : 'L'}${short(x.at(t))} ${short(down(value))}`,
          )
          .join('')
      : null,
    line: ends && {
      x1: x.at(ends[0]),
      y1: down(lineAt(ends[0])),
      x2: x.at(ends[1]),
      y2: down(lineAt(ends[1])),
    },
  };
}

const short = (mm: number): number => Math.round(mm * 100) / 100;

/** From where to where a line stands above zero, within the plot. */
function cutAtZero(
  at: (t: number) => number,
  line: { slope: number; intercept: number },
  last: number,
): [number, number] {
  const zero = line.slope === 0 ? last : -line.intercept / line.slope;
  const from = at(0) < 0 ? Math.min(Math.max(0, zero), last) : 0;
  const to = at(last) < 0 ? Math.max(0, Math.min(zero, last)) : last;
  return [from, to];
}
