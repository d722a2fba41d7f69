// The day as a chain: stations, a common thing at the taps, stations again, … and the buses; each as early as the toilets allow.
import type { Common, SmallDay } from './smallDay.ts';

/** When the common things of a day start, and when loading begins. */
export interface Timeline {
  readonly starts: readonly number[];
  /** When the opening is over: as early as it can, unless its toilets must come later. */
  readonly ready: number;
  /** By stretch between common things: when each party is free. */
  readonly heads: readonly (readonly number[])[];
  readonly load: number;
}

/** How soon a stretch of stations is through: a start of the common thing after it or, for the last one, of loading. */
export type Through = (stretch: number, heads: readonly number[]) => number;

/**
 * The earliest start of every common thing, or null where the times for toilets or food cannot be kept. A chance for
 * toilets that would come too early for the next one is put later; as all rules are differences of two times, the
 * earliest of each is possible together with the earliest of all others.
 */
export function timeline(day: SmallDay, commons: readonly Common[], through: Through): Timeline | null {
  // The opening's chance, and the common things after it; the first entry of `notBefore` is the opening's end.
  const notBefore = [day.ready, ...commons.map((one) => one.earliest)];
  const starts: number[] = [];
  const heads: number[][] = [];
  let ready = Number.NEGATIVE_INFINITY;
  for (let at = -1; ;) {
    if (at < 0) {
      ready = notBefore[0] ?? 0;
      if (day.firstChance + ready - day.ready - day.arrive > day.within_min) return null;
      heads[0] = Array.from({ length: day.parties }, () => ready);
      at = 0;
    }
    const common = commons[at];
    const soonest = through(at, heads[at] ?? []);
    const start = common === undefined ? soonest : Math.max(soonest, notBefore[at + 1] ?? 0);
    const end = common === undefined ? start + day.load_min + day.busSpare_min : start + common.chanceFrom;
    if (start > (common?.latest ?? Number.POSITIVE_INFINITY) || !(end <= day.leave)) return null;
    const before = commons[at - 1];
    const since = before === undefined ? ready : (starts[at - 1] ?? 0) + before.chanceTo;
    if (end - since > day.within_min) {
      // The chance before this one must end later.
      notBefore[at] = end - day.within_min - (before?.chanceTo ?? 0);
      at -= 1;
      continue;
    }
    if (common === undefined) return { starts, heads, ready, load: start };
    starts[at] = start;
    heads[at + 1] = common.leaves.map((minutes) => start + minutes);
    at += 1;
  }
}
