// What a stretch of stations between two common things takes: exactly, and as a bound that is quick to work out.
import type { Span } from '../types.ts';
import { leastRest, shortestShop, type Shop, type ShopAnswer, type Steps, type Visit } from './shop.ts';
import type { Common, SmallDay } from './smallDay.ts';

/** By party, by stretch: the stations that it meets there, as bits. Parties that are not decided yet are missing. */
export type Split = readonly (readonly number[])[];

// Parties are four at most, so three bits count them.
const COUNT_BITS = 3;
const COUNT_MASK = (1 << COUNT_BITS) - 1;

/** Works out stretches of one day for one order of common things and one time of milking. */
export class Stretches {
  private readonly day: SmallDay;
  private readonly commons: readonly Common[];
  private readonly span: Span | null;
  private readonly steps: Steps;
  private readonly rest: { readonly first: number[][]; readonly later: number[][] };
  private readonly dirtyMask: number;
  private readonly afterMeal: number;
  private readonly known: Map<string, ShopAnswer>;
  /** By stations as bits: one visit of each, counted side by side in one number. */
  private readonly counted: readonly number[];
  private readonly leastWash_min: number;
  private readonly areTogether: boolean;
  // Written over and over, since a bound is asked for many thousand times.
  private readonly masks: number[] = [];
  private readonly ends: number[] = [];
  private readonly comes: number[] = [];

  constructor(
    day: SmallDay,
    commons: readonly Common[],
    span: Span | null,
    steps: Steps,
    known: Map<string, ShopAnswer>,
  ) {
    this.day = day;
    this.commons = commons;
    this.span = span;
    this.steps = steps;
    this.known = known;
    const { minutes, between_min } = day;
    this.rest = {
      first: leastRest({ minutes, between_min, first_min: day.first_min }),
      later: leastRest({ minutes, between_min, first_min: day.fromTaps_min }),
    };
    this.counted = Array.from({ length: 1 << minutes.length }, (_, mask) =>
      minutes.reduce((sum, _minutes, at) => (mask & (1 << at) ? sum + (1 << (at * COUNT_BITS)) : sum), 0),
    );
    this.leastWash_min = Math.min(...day.lastWash.minutes);
    this.areTogether = commons.every((one) => one.comes.every((comes) => comes === 0));
    this.dirtyMask = day.dirty.reduce((mask, dirty, station) => (dirty ? mask | (1 << station) : mask), 0);
    this.afterMeal = commons.findIndex((one) => one.kind === 'meal') + 1;
  }

  /** Whether everybody washes before leaving: some party meets a station outside the clean zone after the meal. */
  washesLast(split: Split): boolean {
    return split.some((masks) =>
      masks.some((mask, stretch) => stretch >= this.afterMeal && (mask & this.dirtyMask) !== 0),
    );
  }

  /**
   * When the common thing after a stretch can start, or loading begin, if the parties leave their last stations at
   * `ends`. Parties that wash one after the other do so in the order in which they come: nothing is sooner.
   */
  through(stretch: number, masks: readonly number[], washes: boolean, ends: readonly number[]): number {
    const { toTaps_min, gateWalk_min, lastWash } = this.day;
    const common = this.commons[stretch];
    const comes = this.comes;
    let last = Number.NEGATIVE_INFINITY;
    for (let party = 0; party < ends.length; party += 1) {
      const walks = (common !== undefined || washes) && (masks[party] !== 0 || stretch === 0);
      const there = (ends[party] ?? 0) + (walks ? toTaps_min : 0) - (common?.comes[party] ?? 0);
      comes[party] = there;
      if (there > last) last = there;
    }
    if (common !== undefined) return last;
    if (!washes) return last + gateWalk_min;
    if (lastWash.together) return last + (lastWash.minutes[0] ?? 0) + gateWalk_min;
    let free = Number.NEGATIVE_INFINITY;
    for (let turn = 0; turn < ends.length; turn += 1) {
      let next = 0;
      for (let party = 1; party < ends.length; party += 1)
        if ((comes[party] ?? 0) < (comes[next] ?? 0)) next = party;
      free = Math.max(free, comes[next] ?? 0) + (lastWash.minutes[next] ?? 0);
      comes[next] = Number.POSITIVE_INFINITY;
    }
    return free + gateWalk_min;
  }

  /** A time before which a stretch is not through, whatever the order of visits; missing parties are left out. */
  bound(split: Split, stretch: number, heads: readonly number[], washes: boolean): number {
    const { day, masks, ends } = this;
    const rest = stretch === 0 ? this.rest.first : this.rest.later;
    const fromHere = rest[day.minutes.length] ?? [];
    const head = heads[0] ?? 0;
    let areEven = this.commons[stretch] === undefined || this.areTogether;
    let visits = 0;
    for (let party = 0; party < heads.length; party += 1) {
      const mask = split[party]?.[stretch] ?? 0;
      masks[party] = mask;
      visits += this.counted[mask] ?? 0;
      ends[party] = (heads[party] ?? 0) + (fromHere[mask] ?? 0);
      areEven &&= heads[party] === head;
    }
    let bound = this.through(stretch, masks, washes, ends);
    for (let station = 0; station < day.minutes.length; station += 1) {
      const count = (visits >> (station * COUNT_BITS)) & COUNT_MASK;
      if (count === 0) continue;
      const isPlain = areEven && day.milking?.station !== station;
      bound = Math.max(
        bound,
        isPlain
          ? this.evenBound(station, count, stretch, head, washes)
          : this.stationBound(station, stretch, heads, washes),
      );
    }
    return bound;
  }

  /** A station's bound where all parties are free at once and awaited at once. */
  private evenBound(station: number, count: number, stretch: number, head: number, washes: boolean): number {
    const { day } = this;
    const entry_min = stretch === 0 ? day.first_min : day.fromTaps_min;
    const closes = head + entry_min + count * (day.minutes[station] ?? 0);
    if (this.commons[stretch] !== undefined) return closes + day.toTaps_min;
    return closes + day.gateWalk_min + (washes ? day.toTaps_min + this.leastWash_min : 0);
  }

  /** The same from one station alone, which has one party at a time; by the masks just set. */
  private stationBound(station: number, stretch: number, heads: readonly number[], washes: boolean): number {
    const { day, masks } = this;
    const common = this.commons[stretch];
    let count = 0;
    let head = Number.POSITIVE_INFINITY;
    // What is left to do after the last of these visits, at least.
    let after = Number.POSITIVE_INFINITY;
    for (let party = 0; party < heads.length; party += 1) {
      if (!((masks[party] ?? 0) & (1 << station))) continue;
      count += 1;
      head = Math.min(head, heads[party] ?? 0);
      const washing = washes ? (day.lastWash.minutes[party] ?? 0) : 0;
      after = Math.min(after, common ? -(common.comes[party] ?? 0) : washing);
    }
    if (count === 0) return Number.NEGATIVE_INFINITY;
    const shows = day.milking?.station === station ? this.span : null;
    const entry_min = stretch === 0 ? day.first_min : day.fromTaps_min;
    const closes = Math.max(head + entry_min, shows?.from ?? 0) + count * (day.minutes[station] ?? 0);
    if (shows !== null && closes > shows.to) return Number.POSITIVE_INFINITY;
    const taps = common !== undefined || washes ? day.toTaps_min : 0;
    return closes + taps + after + (common ? 0 : day.gateWalk_min);
  }

  /** The best order of visits in a stretch. */
  exactly(split: Split, stretch: number, heads: readonly number[], washes: boolean): ShopAnswer {
    const masks = heads.map((_, party) => split[party]?.[stretch] ?? 0);
    const { day } = this;
    const shows = day.milking !== null && masks.some((mask) => mask & (1 << (day.milking?.station ?? 0)));
    const base = shows ? 0 : Math.min(...heads);
    const kind = this.commons[stretch]?.kind ?? `end ${washes}`;
    const key = [
      kind,
      stretch === 0,
      shows ? this.span?.from : '',
      masks,
      heads.map((head) => head - base),
    ].join(';');
    let answer = this.known.get(key);
    if (answer === undefined) {
      answer = moved(
        this.solve(masks, stretch, heads, washes, shows, this.bound(split, stretch, heads, washes)),
        -base,
      );
      if (this.steps.left >= 0) this.known.set(key, answer);
    }
    return moved(answer, base);
  }

  private solve(
    masks: readonly number[],
    stretch: number,
    heads: readonly number[],
    washes: boolean,
    shows: boolean,
    bound: number,
  ): ShopAnswer {
    const { day } = this;
    const common = this.commons[stretch];
    const shop: Shop = {
      minutes: day.minutes,
      first_min: stretch === 0 ? day.first_min : day.fromTaps_min,
      between_min: day.between_min,
      heads,
      masks,
      only:
        shows && this.span !== null && day.milking !== null
          ? { station: day.milking.station, span: this.span }
          : null,
      alike: common?.comes ?? (washes ? day.lastWash.minutes : masks.map(() => 0)),
      through: (ends) => this.through(stretch, masks, washes, ends),
    };
    if (!Number.isFinite(bound)) return { through: bound, visits: [] };
    return shortestShop(shop, bound, this.steps);
  }
}

const moved = ({ through, visits }: ShopAnswer, by: number): ShopAnswer => ({
  through: through + by,
  visits: visits.map((one): Visit => ({ ...one, from: one.from + by, to: one.to + by })),
});
