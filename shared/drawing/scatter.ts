// A scatter plot over days, with a line or about a zero line.
import { axisOf, roundAxis, type Axis } from './axis.ts';

/** A scatter plot in millimetres; y grows downwards, the plot's bottom is at `height_mm`. */
export interface ScatterPlot {
  readonly x: Axis;
  readonly y: Axis;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** Ends of the line, cut to the plot; null without a line. */
  readonly line: {
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  } | null;
}

/** What a plot is made of, as doubles. */
export interface ScatterValues {
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly line: { readonly slope: number; readonly intercept: number } | null;
  /** Residuals lie about zero: the axis is then as long above it as below. */
  readonly zeroLine: boolean;
}

/** Lays out at least one point on axes of round numbers; days are whole, from 0 to one past the last. */
export function scatterPlot(values: ScatterValues, width_mm: number, height_mm: number): ScatterPlot {
  const { points, line, zeroLine } = values;
  const days = Math.max(...points.map(({ x }) => x)) + 1;
  const x = axisOf(0, days, 1, width_mm);
  const onLine = line ? [1, days].map((day) => line.intercept + line.slope * day) : [];
  const heights = [...points.map((point) => point.y), ...onLine];
  const reach = Math.max(...heights.map(Math.abs));
  // A little room below and above, so that no point lies on the frame.
  const room = (Math.max(...heights) - Math.min(...heights)) * 0.04;
  const ends = zeroLine
    ? [-reach * 1.04, reach * 1.04]
    : [Math.min(...heights) - room, Math.max(...heights) + room];
  const y = roundAxis(ends, 6, height_mm);
  const down = (value: number) => height_mm - y.at(value);
  return {
    x,
    y,
    width_mm,
    height_mm,
    points: points.map((point) => ({ x: x.at(point.x), y: down(point.y) })),
    line: line && {
      x1: x.at(0.5),
      y1: down(line.intercept + line.slope * 0.5),
      x2: x.at(days),
      y2: down(line.intercept + line.slope * days),
    },
  };
}
