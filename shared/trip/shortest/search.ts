// The search for the shortest day: which stations come before and after the meal and each pause, by branch and bound.
import type { Span } from '../types.ts';
import { leastRest, type ShopAnswer, type Steps, type Visit } from './shop.ts';
import type { Common, SmallDay } from './smallDay.ts';
import { Stretches, type Split } from './stretch.ts';
import { timeline, type Timeline } from './timeline.ts';

/** A day that the search has found. */
export interface Found {
  readonly commons: readonly Common[];
  readonly times: Timeline;
  readonly split: Split;
  /** By stretch between the common things. */
  readonly visits: readonly (readonly Visit[])[];
  readonly washesLast: boolean;
}

/** The best day found; the steps that are left are below zero where the search did not end. */
export function search(day: SmallDay, pauses: number, steps: Steps): Found | null {
  const spans: readonly (Span | null)[] = day.milking === null ? [null] : day.milking.spans;
  const known = new Map<string, ShopAnswer>();
  let best: Found | null = null;
  let enough: number | null = null;
  for (const commons of courses(day, pauses)) {
    for (const span of spans) {
      const stretches = new Stretches(day, commons, span, steps, known);
      best = new CourseSearch(day, commons, stretches, steps, enough ?? 0).run(best);
    }
    if (steps.left < 0) return best;
    if (best === null) continue;
    enough ??= withoutToilets(day, steps);
    if (best.times.load <= enough) return best;
  }
  return best;
}

/** When loading could begin if nobody needed a toilet: no day is shorter. Zero where the steps do not suffice to tell. */
function withoutToilets(day: SmallDay, steps: Steps): number {
  const detour = day.toTaps_min + (day.pause.leaves[0] ?? 0) + day.fromTaps_min;
  const easy: SmallDay = {
    ...day,
    within_min: Number.POSITIVE_INFINITY,
    // Over the taps, with a pause there, may be a shorter way than round the loop.
    between_min: day.between_min.map((row) => row.map((minutes) => Math.min(minutes, detour))),
  };
  const own: Steps = { left: Math.floor(steps.left / 4) };
  const spans: readonly (Span | null)[] = day.milking === null ? [null] : day.milking.spans;
  const commons = day.meal === null || day.meal === 'no seats' ? [] : [day.meal];
  let best: Found | null = null;
  for (const span of spans)
    best = new CourseSearch(easy, commons, new Stretches(easy, commons, span, own, new Map()), own, 0).run(
      best,
    );
  return best === null || own.left < 0 ? 0 : best.times.load;
}

/** Every order of up to `most` pauses before and as many after the meal, or twice as many without it; the fewest first. */
function courses(day: SmallDay, most: number): Common[][] {
  const { meal, pause } = day;
  if (meal === 'no seats') return [];
  const pauses = (count: number) => Array.from({ length: count }, () => pause);
  const upTo = (count: number) => Array.from({ length: count + 1 }, (_, one) => one);
  const all =
    meal === null
      ? upTo(2 * most).map(pauses)
      : upTo(most).flatMap((before) =>
          upTo(most).map((after) => [...pauses(before), meal, ...pauses(after)]),
        );
  return all.sort((a, b) => a.length - b.length);
}

interface Pattern {
  readonly masks: readonly number[];
  readonly bound: number;
}

class CourseSearch {
  private readonly day: SmallDay;
  private readonly commons: readonly Common[];
  private readonly stretches: Stretches;
  private readonly steps: Steps;
  /** By party, whether it makes no difference which is which of it and the one before. */
  private readonly isTwin: readonly boolean[];
  private readonly enough: number;
  private best: Found | null = null;
  private least = 0;

  constructor(day: SmallDay, commons: readonly Common[], stretches: Stretches, steps: Steps, enough: number) {
    this.day = day;
    this.commons = commons;
    this.stretches = stretches;
    this.steps = steps;
    this.enough = enough;
    const same = (numbers: readonly number[], party: number) => numbers[party] === numbers[party - 1];
    this.isTwin = day.lastWash.minutes.map(
      (_, party) =>
        party > 0 &&
        same(day.lastWash.minutes, party) &&
        commons.every((one) => same(one.comes, party) && same(one.leaves, party)),
    );
  }

  run(best: Found | null): Found | null {
    this.best = best;
    this.least = Math.max(this.enough, this.plainBound(), this.bound([]));
    if (!Number.isFinite(this.least)) return best;
    if (this.isDone()) return best;
    this.least = Math.max(this.least, this.stationBound());
    if (this.isDone()) return best;
    const parties: Pattern[][] = [];
    for (let party = 0; party < this.day.parties; party += 1) {
      const patterns = (this.isTwin[party] ? parties[party - 1] : undefined) ?? this.patterns(party);
      if (patterns.length === 0) return best;
      parties.push(patterns);
    }
    this.least = Math.max(this.least, ...parties.map((patterns) => patterns[0]?.bound ?? 0));
    this.choose([], parties, 0);
    return this.best;
  }

  /** Every minute that a party has something to do, and the walk to the gate. */
  private plainBound(): number {
    const { ready, parties, minutes, between_min, first_min, toTaps_min } = this.day;
    const all = (1 << minutes.length) - 1;
    const least_min = Math.min(first_min, ...between_min.flat());
    const row = minutes.map(() => least_min);
    const work = leastRest({ minutes, between_min: row.map(() => row), first_min: least_min });
    const washes = this.day.meal === null && this.day.dirty.includes(true);
    const ends = Array.from({ length: parties }, (_, party) => {
      const common_min = this.commons.reduce(
        (sum, one) => sum + (one.leaves[party] ?? 0) - (one.comes[party] ?? 0),
        this.commons.length > 0 ? toTaps_min : 0,
      );
      return ready + (work[minutes.length]?.[all] ?? 0) + common_min;
    });
    const stretch = this.commons.length;
    return this.stretches.through(
      stretch,
      row.map(() => 0),
      washes,
      ends,
    );
  }

  private isWorse(load: number): boolean {
    return this.best !== null && load >= this.best.times.load;
  }

  private isDone(): boolean {
    return this.steps.left < 0 || this.isWorse(this.least);
  }

  /** When loading can begin at the soonest for a split, of which some parties may be missing. */
  private bound(split: Split): number {
    this.steps.left -= 1;
    const washes = this.stretches.washesLast(split);
    const through = (stretch: number, heads: readonly number[]) =>
      this.stretches.bound(split, stretch, heads, washes);
    return timeline(this.day, this.commons, through)?.load ?? Number.POSITIVE_INFINITY;
  }

  /** Every way in which a party can split its stations over the stretches that is possible at all, the quickest first. */
  private patterns(party: number): Pattern[] {
    const stretches = this.commons.length + 1;
    const count = stretches ** this.day.minutes.length;
    const found: Pattern[] = [];
    for (let number = 0; number < count; number += 1) {
      const masks = new Array<number>(stretches).fill(0);
      for (let station = 0, rest = number; station < this.day.minutes.length; station += 1) {
        const stretch = rest % stretches;
        masks[stretch] = (masks[stretch] ?? 0) | (1 << station);
        rest = Math.floor(rest / stretches);
      }
      const bound = this.bound([...Array.from({ length: party }, () => []), masks]);
      if (Number.isFinite(bound) && !this.isWorse(bound)) found.push({ masks, bound });
    }
    return found.sort((a, b) => a.bound - b.bound);
  }

  /** A bound from each station alone: all parties meet it, in some split over the stretches. */
  private stationBound(): number {
    const stretches = this.commons.length + 1;
    let bound = 0;
    for (let station = 0; station < this.day.minutes.length; station += 1) {
      let least = Number.POSITIVE_INFINITY;
      const share = (split: readonly number[]) => {
        if (split.length < this.day.parties) {
          const from = this.isTwin[split.length] ? (split.at(-1) ?? 0) : 0;
          for (let next = from; next < stretches; next += 1) share([...split, next]);
          return;
        }
        const masks = split.map((at) => Array.from({ length: stretches }, (_, one) => (one === at ? 1 << station : 0)));
        least = Math.min(least, this.bound(masks));
      };
      share([]);
      bound = Math.max(bound, least);
    }
    return bound;
  } // prettier-ignore

  private choose(split: Split, parties: readonly (readonly Pattern[])[], from: number): void {
    if (this.isDone()) return;
    if (split.length === this.day.parties) return this.finish(split);
    const patterns = parties[split.length] ?? [];
    const next: { split: Split; at: number; bound: number }[] = [];
    for (let at = this.isTwin[split.length] ? from : 0; at < patterns.length; at += 1) {
      const pattern = patterns[at];
      if (pattern === undefined || this.isWorse(pattern.bound)) continue;
      const longer = [...split, pattern.masks];
      const bound = this.bound(longer);
      if (Number.isFinite(bound) && !this.isWorse(bound)) next.push({ split: longer, at, bound });
    }
    next.sort((a, b) => a.bound - b.bound);
    for (const one of next) {
      if (this.isDone()) return;
      if (!this.isWorse(one.bound)) this.choose(one.split, parties, one.at);
    }
  }

  private finish(split: Split): void {
    const washesLast = this.stretches.washesLast(split);
    const visits: (readonly Visit[])[] = [];
    const times = timeline(this.day, this.commons, (stretch, heads) => {
      const answer = this.stretches.exactly(split, stretch, heads, washesLast);
      visits[stretch] = answer.visits;
      return answer.through;
    });
    if (times === null || this.isWorse(times.load)) return;
    this.best = { commons: this.commons, times, split, visits, washesLast };
  }
}
