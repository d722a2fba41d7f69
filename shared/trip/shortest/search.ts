// The search for the shortest day: which stations come before and after the meal and each pause, by branch and bound.
import type { Span } from '../types.ts';
import type { ShopAnswer, Steps, Visit } from './shop.ts';
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

/** The most pauses that are put in before the meal, and after it. */
export const MOST_PAUSES = 3;

/** The best day found; the steps that are left are below zero where the search did not end. */
export function search(day: SmallDay, steps: Steps): Found | null {
  let best: Found | null = null;
  const spans: readonly (Span | null)[] = day.milking === null ? [null] : day.milking.spans;
  const known = new Map<string, ShopAnswer>();
  for (const commons of courses(day))
    for (const span of spans) {
      const found = new CourseSearch(day, commons, new Stretches(day, commons, span, steps, known), steps);
      best = found.run(best);
      if (steps.left < 0) return best;
    }
  return best;
}

/** Every order of pauses and meal, the fewest pauses first. */
function courses(day: SmallDay): Common[][] {
  const { meal, pause } = day;
  if (meal === 'no seats') return [];
  const pauses = (count: number) => Array.from({ length: count }, () => pause);
  const numbers = Array.from({ length: MOST_PAUSES + 1 }, (_, count) => count);
  const all =
    meal === null
      ? numbers.map(pauses)
      : numbers.flatMap((before) => numbers.map((after) => [...pauses(before), meal, ...pauses(after)]));
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
  private readonly areAlike: boolean;
  private best: Found | null = null;
  private least = 0;

  constructor(day: SmallDay, commons: readonly Common[], stretches: Stretches, steps: Steps) {
    this.day = day;
    this.commons = commons;
    this.stretches = stretches;
    this.steps = steps;
    const same = (numbers: readonly number[]) => numbers.every((one) => one === numbers[0]);
    this.areAlike = same(day.lastWash.minutes) && commons.every((one) => same(one.comes) && same(one.leaves));
  }

  run(best: Found | null): Found | null {
    this.best = best;
    const patterns = this.patterns();
    if (patterns.length === 0) return best;
    this.least = Math.max(patterns[0]?.bound ?? 0, this.stationBound());
    if (this.isWorse(this.least)) return best;
    this.choose([], patterns, 0);
    return this.best;
  }

  private isWorse = (load: number) => this.best !== null && load >= this.best.times.load;

  /** When loading can begin at the soonest for a split, of which some parties may be missing. */
  private bound(split: Split): number {
    const washes = this.stretches.washesLast(split);
    return timeline(this.day, this.commons, (stretch, heads) => this.stretches.bound(split, stretch, heads, washes))?.load ?? Number.POSITIVE_INFINITY; // prettier-ignore
  }

  /** Every way in which one party can split its stations over the stretches that is possible at all, the quickest first. */
  private patterns(): Pattern[] {
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
      // Party 0 comes first to a meal in turn, so a bound for it alone holds for no other; those have none then.
      const bound = this.areAlike ? this.bound([masks]) : 0;
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
          const from = this.areAlike ? (split.at(-1) ?? 0) : 0;
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

  private isDone = () => this.steps.left < 0 || this.isWorse(this.least);

  private choose(split: Split, patterns: readonly Pattern[], from: number): void {
    if (this.isDone()) return;
    if (split.length === this.day.parties) return this.finish(split);
    const next = patterns
      .slice(from)
      .map(({ masks }, at) => ({ split: [...split, masks], at: from + at }))
      .map((one) => ({ ...one, bound: this.bound(one.split) }))
      .filter(({ bound }) => Number.isFinite(bound) && !this.isWorse(bound))
      .sort((a, b) => a.bound - b.bound);
    this.steps.left -= next.length;
    for (const one of next) {
      if (this.isDone()) return;
      if (!this.isWorse(one.bound)) this.choose(one.split, patterns, this.areAlike ? one.at : 0);
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
