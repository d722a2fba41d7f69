// A dot plot: every number a dot, equal numbers stacked.

/** One dot: how many steps from the start of the axis, and its place in the stack, from 0. */
export interface Dot {
  readonly step: number;
  readonly above: number;
}

/** The dots of some numbers on an axis from `from` in steps of `step`; a number off the steps throws. */
export function dotStacks(values: readonly number[], from: number, step: number): Dot[] {
  const stacks = new Map<number, number>();
  return values.map((value) => {
    const place = Math.round((value - from) / step);
    if (place < 0 || Math.abs(from + place * step - value) > 1e-6)
      throw new Error(`${value} does not stand on an axis from ${from} in steps of ${step}.`);
    const above = stacks.get(place) ?? 0;
    stacks.set(place, above + 1);
    return { step: place, above };
  });
}
