// How wide a range must be: the model's own spread, corrected by how far off it was before.
// A range that is only computed is only as good as its model; one that is checked against her own past
// errors holds for a steady doe and a moody one alike. Her errors are ranked, not squared, so that the
// one day on which a pail was kicked over does not widen every range after it.

/** Distances, days ahead, at which past errors are kept. */
export const DISTANCES = [7, 14, 28] as const;
/** Standard normal quantile that leaves 10 of 100 above: 80 of 100 lie between it and its negative. */
export const Z80 = 1.2815515655446004;

// Errors that stand for "as the model says" until she has as many of her own.
const PRIOR_ERRORS = 10;
// Absolute standard normal deviates at which 10, 30, 50, 70 and 90 of 100 lie below.
const PRIOR_DEVIATES = [0.1257, 0.3853, 0.6745, 1.0364, 1.6449];
// Errors of neighbouring days at one distance tell nearly the same: three a distance count as one each.
const ONES_A_DISTANCE = 3;

/** Past errors of one doe at one distance, each divided by the spread that was told for it. */
export type PastErrors = Readonly<Record<(typeof DISTANCES)[number], readonly number[]>>;

/** By how much to widen (above 1) or narrow (below 1) a range, and the number of errors it stands on. */
export interface Widening {
  readonly factor: number;
  readonly errors: number;
}

/** Weight of one error at a distance. */
export function weightAt(distance_days: number): number {
  return Math.min(1, ONES_A_DISTANCE / distance_days);
}

/** The size below which 80 of 100 errors lie, against that of a normal deviate; the prior's counted in. */
export function widening(errors: readonly number[], distance_days: number): Widening {
  const own = Float64Array.from(errors, Math.abs).sort();
  const [ownWeight, priorWeight] = [weightAt(distance_days), PRIOR_ERRORS / PRIOR_DEVIATES.length];
  const target = 0.8 * (own.length * ownWeight + PRIOR_ERRORS);
  let [i, j, below, at, size] = [0, 0, 0, 0, 0];
  while (i < own.length || j < PRIOR_DEVIATES.length) {
    const [mine = Infinity, priors = Infinity] = [own[i], PRIOR_DEVIATES[j]];
    const isMine = mine <= priors;
    const [next, weight] = isMine ? [mine, ownWeight] : [priors, priorWeight];
    const middle = below + weight / 2;
    if (middle >= target) {
      const reached = size + ((next - size) * (target - at)) / (middle - at);
      return { factor: reached / Z80, errors: errors.length };
    }
    [at, size] = [middle, next];
    below += weight;
    if (isMine) i += 1;
    else j += 1;
  }
  return { factor: size / Z80, errors: errors.length };
}

/** The widening at each distance that is kept. */
export type Widenings = Readonly<Record<(typeof DISTANCES)[number], Widening>>;

/** The widenings that past errors give. */
export function wideningsOf(past: PastErrors): Widenings {
  return { 7: widening(past[7], 7), 14: widening(past[14], 14), 28: widening(past[28], 28) };
}

/** The widening for any distance: between those kept by the logarithm of the distance, outside them the nearest. */
export function wideningFor(kept: Widenings, distance_days: number): Widening {
  const above = DISTANCES.find((one) => one >= distance_days) ?? 28;
  const below = DISTANCES.findLast((one) => one <= distance_days) ?? 7;
  const [low, high] = [kept[below], kept[above]];
  if (below >= above) return distance_days > above ? low : high;
  const part = Math.log(distance_days / below) / Math.log(above / below);
  return {
    factor: low.factor + (high.factor - low.factor) * part,
    errors: Math.min(low.errors, high.errors),
  };
}
