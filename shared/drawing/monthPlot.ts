// A month of days as a graph: whole days joined to a line, days with a gap as dots of their own.
import { axisOf, roundAxis, type Axis } from './axis.ts';

/** A day's milk; `y` null where nothing was entered. */
export interface PlotDay {
  readonly y: number | null;
  /** Everything that was expected is entered. */
  readonly whole: boolean;
}

/** The graph; y grows downwards and the bottom is at `height`. */
export interface MonthPlot {
  readonly width: number;
  readonly height: number;
  readonly x: Axis;
  readonly y: Axis;
  /** Path through each run of whole days. */
  readonly line: string;
  readonly dots: readonly {
    readonly day: number;
    readonly x: number;
    readonly y: number;
    readonly whole: boolean;
  }[];
}

/** Lays out the days of a month; `most` is the largest value of the axis, for graphs that are to be compared. */
export function monthPlot(days: readonly PlotDay[], width: number, height: number, most = 0): MonthPlot {
  const x = axisOf(1, Math.max(2, days.length), 1, width);
  const y = roundAxis([most, ...days.map((day) => day.y ?? 0), 1e-6], 5, height, true);
  const dots = days.flatMap((day, index) =>
    day.y === null
      ? []
      : [{ day: index + 1, x: tenth(x.at(index + 1)), y: tenth(height - y.at(day.y)), whole: day.whole }],
  );
  const line = dots
    .filter(({ whole }) => whole)
    .map((dot, index, whole) => `${whole[index - 1]?.day === dot.day - 1 ? 'L' : 'M'}${dot.x} ${dot.y}`)
    .join('');
  return { width, height, x, y, line, dots };
}

const tenth = (value: number) => Math.round(value * 10) / 10;
