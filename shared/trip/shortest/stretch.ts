// What a stretch of stations between two common things takes: exactly, and as a bound that is quick to work out.
import type { Span } from '../types.ts';
import { leastRest, shortestShop, type Shop, type ShopAnswer, type Steps, type Visit } from './shop.ts';
import type { Common, SmallDay } from './smallDay.ts';

/** By party, by stretch: the stations that it meets there, as bits. Parties that are not decided yet are missing. */
export type Split = readonly (readonly number[])[];

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
    this.dirtyMask = day.dirty.reduce((mask, dirty, station) => (dirty ? mask | (1 << station) : mask), 0);
    this.afterMeal = commons.findIndex((one) => one.kind === 'meal') + 1;
  }

  /** Whether everybody washes before leaving: some party meets a station outside the clean zone after the meal. */
  washesLast(split: Split): boolean {
    return split.some((masks) =>
      masks.some((mask, stretch) => stretch >= this.afterMeal && (mask & this.dirtyMask) !== 0),
    );
  }

  /** When the common thing after a stretch can start, or loading begin, from when each party leaves its last station. */
  through(stretch: number, masks: readonly number[], washes: boolean): (ends: readonly number[]) => number {
    const { toTaps_min, gateWalk_min, lastWash } = this.day;
    const walks = masks.map((mask) => (mask !== 0 || stretch === 0 ? toTaps_min : 0));
    const common = this.commons[stretch];
    if (common !== undefined)
      return (ends) => {
        let start = Number.NEGATIVE_INFINITY;
        for (let party = 0; party < ends.length; party += 1)
          start = Math.max(start, (ends[party] ?? 0) + (walks[party] ?? 0) - (common.comes[party] ?? 0));
        return start;
      };
    if (!washes) return (ends) => Math.max(...ends) + gateWalk_min;
    if (lastWash.together)
      return (ends) =>
        Math.max(...ends.map((end, party) => end + (walks[party] ?? 0))) +
        (lastWash.minutes[0] ?? 0) +
        gateWalk_min;
    return (ends) => {
      let free = Number.NEGATIVE_INFINITY;
      for (const { comes, party } of this.washOrder(ends, walks))
        free = Math.max(free, comes) + (lastWash.minutes[party] ?? 0);
      return free + gateWalk_min;
    };
  }

  /** Parties that wash one after the other go in the order in which they come: nothing is sooner. */
  washOrder(ends: readonly number[], walks: readonly number[]): { party: number; comes: number }[] {
    return ends
      .map((end, party) => ({ party, comes: end + (walks[party] ?? 0) }))
      .sort((a, b) => a.comes - b.comes || a.party - b.party);
  }

  /** A time before which a stretch is not through, whatever the order of visits; missing parties are left out. */
  bound(split: Split, stretch: number, heads: readonly number[], washes: boolean): number {
    const rest = stretch === 0 ? this.rest.first : this.rest.later;
    const entry_min = stretch === 0 ? this.day.first_min : this.day.fromTaps_min;
    const masks = heads.map((_, party) => split[party]?.[stretch] ?? 0);
    const through = this.through(stretch, masks, washes);
    const ends = heads.map((head, party) => head + (rest.at(-1)?.[masks[party] ?? 0] ?? 0));
    let bound = through(ends);
    for (let station = 0; station < this.day.minutes.length; station += 1) {
      const there = masks.flatMap((mask, party) => (mask & (1 << station) ? [party] : []));
      if (there.length === 0) continue;
      const shows = this.day.milking?.station === station ? this.span : null;
      const opens = Math.max(
        Math.min(...there.map((party) => heads[party] ?? 0)) + entry_min,
        shows?.from ?? Number.NEGATIVE_INFINITY,
      );
      const closes = opens + there.length * (this.day.minutes[station] ?? 0);
      if (shows !== null && closes > shows.to) return Number.POSITIVE_INFINITY;
      let soonest = Number.POSITIVE_INFINITY;
      for (const party of there) {
        const late = [...ends];
        late[party] = Math.max(ends[party] ?? 0, closes);
        soonest = Math.min(soonest, through(late));
      }
      bound = Math.max(bound, soonest);
    }
    return bound;
  }

  /** The best order of visits in a stretch. */
  exactly(split: Split, stretch: number, heads: readonly number[], washes: boolean): ShopAnswer {
    const masks = split.map((one) => one[stretch] ?? 0);
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
      through: this.through(stretch, masks, washes),
    };
    if (!Number.isFinite(bound)) return { through: bound, visits: [] };
    return shortestShop(shop, bound, this.steps);
  }
}

const moved = ({ through, visits }: ShopAnswer, by: number): ShopAnswer => ({
  through: through + by,
  visits: visits.map((one): Visit => ({ ...one, from: one.from + by, to: one.to + by })),
});
