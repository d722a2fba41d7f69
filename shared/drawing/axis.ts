// A straight axis: values to millimetres, and round numbers to stand along it.

/** An axis of a graph: `at` gives the place of a value, in millimetres from the start of the axis. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly length_mm: number;
  /** Round values from `from` to `to`, each to be marked. */
  readonly ticks: readonly number[];
  at(value: number): number;
}

/** An axis from one value to a larger one with a tick at every `step`, all of them above zero length. */
export function axisOf(from: number, to: number, step: number, length_mm: number): Axis {
  if (!(to > from) || !(step > 0) || !(length_mm > 0))
    throw new Error(`An axis cannot run from ${from} to ${to} in steps of ${step} over ${length_mm} mm.`);
  const count = Math.round((to - from) / step);
  const ticks = Array.from({ length: count + 1 }, (_, index) => tidy(from + index * step));
  return { from, to, length_mm, ticks, at: (value) => ((value - from) / (to - from)) * length_mm };
}

/**
 * An axis that holds all values with some 3 to `most` round steps of 1, 2 or 5 times a power of ten.
 * With `zero` it also holds zero.
 * @example roundAxis([70.2, 78.9], 6, 60).ticks // => [70, 72, 74, 76, 78, 80]
 */
export function roundAxis(values: readonly number[], most: number, length_mm: number, zero = false): Axis {
  const all = zero ? [...values, 0] : values;
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const span = high > low ? high - low : Math.max(1, Math.abs(high));
  const rough = span / (most - 1);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((one) => one * power >= rough - 1e-12) ?? 10) * power;
  const from = tidy(Math.floor(low / step + 1e-9) * step);
  const to = tidy(Math.ceil(high / step - 1e-9) * step);
  return axisOf(from, to > from ? to : tidy(from + step), step, length_mm);
}

// Sums of tenths miss by a few units in the last place; a tick is a round number.
function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
