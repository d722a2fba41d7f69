// A bar graph on a grid: every line of the scale the same height, so that a ruler confirms it.
import { axisOf, type Axis } from './axis.ts';
import { HATCHES, type Box, type Hatch } from './hatch.ts';

/** A bar graph in millimetres; y grows downwards, and the base line is at `height_mm`. */
export interface BarGraph {
  readonly axis: Axis;
  readonly height_mm: number;
  readonly width_mm: number;
  readonly bars: readonly (Box & { readonly hatch: Hatch; readonly middle_mm: number })[];
}

/**
 * Lays out bars of zero or more on a scale from 0 to `top` with a line at every `scale`, `cell_mm` apart.
 * Each bar has `place_mm` of width to itself and fills a bit more than half of it.
 */
export function barGraph(
  values: readonly number[],
  scale: { readonly scale: number; readonly top: number },
  cell_mm: number,
  place_mm: number,
): BarGraph {
  const height_mm = (scale.top / scale.scale) * cell_mm;
  const axis = axisOf(0, scale.top, scale.scale, height_mm);
  const width = place_mm * 0.56;
  const bars = values.map((value, index) => {
    const middle_mm = place_mm * (index + 0.5);
    const tall = axis.at(value);
    return {
      x: middle_mm - width / 2,
      y: height_mm - tall,
      width,
      height: tall,
      middle_mm,
      hatch: HATCHES[index % HATCHES.length] as Hatch,
    };
  });
  return { axis, height_mm, width_mm: place_mm * values.length, bars };
}
