// Frames of figures in millimetres: how far labels push a plot in, so that they keep clear of each other at any type size.
import { mmOfPt, type BandMeasures } from './pageMeasures.ts';

/** Where a plot lies in its drawing, and how tall the whole is, mm. */
export interface PlotFrame {
  /** Size of the labels. */
  readonly type_mm: number;
  readonly left_mm: number;
  readonly top_mm: number;
  readonly plot_mm: number;
  readonly height_mm: number;
}

/** Most lines of numbers that a plot's upright axis has. */
const MOST_TICKS = 7;

/** Width of a scatter plot within its drawing: the last number below the axis keeps inside of it, mm. */
export function scatterWidth_mm({ left_mm, type_mm }: PlotFrame): number {
  return 164 - left_mm - Math.max(4, type_mm);
}

/** Frame of a scatter plot: numbers left and below, the names of the axes above and at the lower right. */
export function scatterFrame(m: BandMeasures): PlotFrame {
  const type_mm = mmOfPt(m.body_pt) * 0.86;
  const top_mm = Math.max(7, type_mm * 1.7);
  const plot_mm = Math.max(38, type_mm * 1.25 * (MOST_TICKS - 1));
  return {
    type_mm,
    left_mm: Math.max(16, type_mm * 3),
    top_mm,
    plot_mm,
    height_mm: top_mm + plot_mm + Math.max(11, type_mm * 2.9),
  };
}

/** Frame of a bar graph that stands `plot_mm` tall: the unit above the numbers, the names below the bars. */
export function barsFrame(m: BandMeasures, plot_mm: number): PlotFrame {
  const type_mm = mmOfPt(m.body_pt) * 0.74;
  const top_mm = Math.max(6, type_mm * 1.8);
  return {
    type_mm,
    left_mm: Math.max(17, type_mm * 3),
    top_mm,
    plot_mm,
    height_mm: top_mm + plot_mm + type_mm * 1.9,
  };
}

/** Frame of a dot plot that stands `plot_mm` tall: numbers below the axis, the unit below them at the right. */
export function dotFrame(m: BandMeasures, plot_mm: number): PlotFrame {
  const type_mm = mmOfPt(m.body_pt) * 0.85;
  return { type_mm, left_mm: 7, top_mm: 3, plot_mm, height_mm: plot_mm + 7 + type_mm * 2.1 };
}
