// The herd's range from the does' ranges.
// Adding the does' lowest days together would tell of a day on which all have their worst one; taking them
// as strangers to each other would forget that heat, feed and the milker are the same for all. How alike
// their misses are is learned from the days on which they were off together, and the range that follows
// is checked against the herd's own past errors, as a doe's is.
import type { FollowedHerd, Miss } from './follow.ts';
import { weightAt, wideningsOf, Z80, type Widenings } from './spread.ts';

// Until the herd has shown its own: a fifth in common, counting as ten days. From memory, no source.
const PRIOR_ALIKE = 0.1;
const PRIOR_DAYS = 5;
const MOST_ALIKE = 0.9;
// A miss counts as at most this many spreads, so that one kicked pail is no weather.
const FAR = 2.5;

/** What a herd has shown of itself as one. */
export interface Together {
  /** Correlation of any two does' misses of one day, 0 to 0.9. */
  readonly alike: number;
  /** What the herd's past errors, each in spreads of the range that the does' ranges gave, do to its range. */
  readonly widenings: Widenings;
}

/** A doe's middle, L, with the spread of its natural logarithm. */
export interface Member {
  readonly middle_L: number;
  readonly sd_ln: number;
}

/** The spread of the natural logarithm of the does' sum, their misses being `alike`. */
export function herdSpread(members: readonly Member[], alike: number): number {
  const sds = members.map(({ middle_L, sd_ln }) => middle_L * sd_ln);
  const sum = sds.reduce((total, sd) => total + sd, 0);
  const squares = sds.reduce((total, sd) => total + sd * sd, 0);
  const middle_L = members.reduce((total, one) => total + one.middle_L, 0);
  return middle_L > 0 ? Math.sqrt(squares + alike * (sum * sum - squares)) / middle_L : 0;
}

/** The sum of the does' middles with its 80 % range, L. */
export function herdRange(members: readonly Member[], alike: number, factor: number) {
  const middle_L = members.reduce((sum, one) => sum + one.middle_L, 0);
  const wide = Math.exp(Z80 * herdSpread(members, alike) * factor);
  return { middle_L, low_L: middle_L / wide, high_L: middle_L * wide };
}

/** What the days on which two does or more can be compared tell of the herd. */
export function togetherOf(herd: FollowedHerd): Together {
  // Distances are below 64, so that day and distance make one whole number.
  const byDay = new Map<number, Miss[]>();
  for (const doe of herd.does) {
    for (const raw of doe.misses) {
      // As wide as her own range is now told: the herd's range is made of those.
      const { factor } = doe.widenings[raw.distance_days];
      const one = { ...raw, miss: raw.miss / factor, sd_ln: raw.sd_ln * factor };
      const key = one.day * 64 + one.distance_days;
      const list = byDay.get(key);
      if (list) list.push(one);
      else byDay.set(key, [one]);
    }
  }
  const days = [...byDay.values()].filter((misses) => misses.length > 1);
  const alike = alikeness(days);
  const at = (distance_days: Miss['distance_days']) =>
    days.filter(([one]) => one?.distance_days === distance_days).map((misses) => herdMiss(misses, alike));
  return { alike, widenings: wideningsOf({ 7: at(7), 14: at(14), 28: at(28) }) };
}

/** Correlation of the does' misses of a day, leant on the prior. */
function alikeness(days: readonly (readonly Miss[])[]): number {
  let [together, squares, weights] = [0, 0, 0];
  for (const misses of days) {
    const weight = weightAt(misses[0]?.distance_days ?? 1);
    let [sum, square] = [0, 0];
    for (const { miss } of misses) {
      const size = Math.min(Math.max(miss, -FAR), FAR);
      sum += size;
      square += size * size;
    }
    together += (weight * (sum * sum - square)) / (misses.length * (misses.length - 1));
    squares += (weight * square) / misses.length;
    weights += weight;
  }
  const own = squares > 0 ? together / squares : PRIOR_ALIKE;
  const alike = (PRIOR_DAYS * PRIOR_ALIKE + weights * own) / (PRIOR_DAYS + weights);
  return Math.min(Math.max(alike, 0), MOST_ALIKE);
}

function herdMiss(misses: readonly Miss[], alike: number): number {
  const milk_L = misses.reduce((sum, one) => sum + one.milk_L, 0);
  const middle_L = misses.reduce((sum, one) => sum + one.middle_L, 0);
  return Math.log(milk_L / middle_L) / herdSpread(misses, alike);
}
