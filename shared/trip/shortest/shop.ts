// Parties and stations between two things done in common: in which order each party meets its stations, so that all are through soonest.
import type { Span } from '../types.ts';

/** The stations that each party still has to meet before the next common thing. */
export interface Shop {
  readonly minutes: readonly number[];
  /** Walks from where a party is at first, and between stations. */
  readonly first_min: number;
  readonly between_min: readonly (readonly number[])[];
  /** By party: when it is free, and its stations as bits. */
  readonly heads: readonly number[];
  readonly masks: readonly number[];
  /** By party a number, the same for parties of which it makes no difference which is which. */
  readonly alike: readonly number[];
  /** The times within which one station must be met; null where none. */
  readonly only: { readonly station: number; readonly span: Span } | null;
  /** When all are through, from when each party leaves its last station; never falls as one of them rises. */
  readonly through: (ends: readonly number[]) => number;
}

/** A visit of a party at a station. */
export interface Visit {
  readonly party: number;
  readonly station: number;
  readonly from: number;
  readonly to: number;
}

/** The soonest that all can be through, with the visits; `through` is infinite where it cannot be done. */
export interface ShopAnswer {
  readonly through: number;
  readonly visits: readonly Visit[];
}

/** Counts the steps of a search; `left` below zero ends it. */
export interface Steps {
  left: number;
}

/**
 * The best order, found by trying the visits in order of their starts (semi-active schedules), with branches cut off
 * that cannot be better. It stops early at `enough`, a bound that nothing can be below. Textbook branch and bound for
 * an open shop with walks; from memory. Where the steps run out the answer is only the best so far.
 */
export function shortestShop(shop: Shop, enough: number, steps: Steps): ShopAnswer {
  return new ShopSearch(shop, enough, steps).run();
}

/** By station where a party is (the last entry: at first) and the stations left: least minutes of walking and staying. */
export function leastRest(shop: Pick<Shop, 'minutes' | 'first_min' | 'between_min'>): number[][] {
  const count = shop.minutes.length;
  const rest = Array.from({ length: count + 1 }, () => new Array<number>(1 << count).fill(0));
  for (let mask = 1; mask < 1 << count; mask += 1)
    for (let from = 0; from <= count; from += 1) {
      let least = Number.POSITIVE_INFINITY;
      for (let to = 0; to < count; to += 1) {
        if (!(mask & (1 << to))) continue;
        const walk = from === count ? shop.first_min : (shop.between_min[from]?.[to] ?? 0);
        const after = rest[to]?.[mask & ~(1 << to)] ?? 0;
        least = Math.min(least, walk + (shop.minutes[to] ?? 0) + after);
      }
      (rest[from] as number[])[mask] = least;
    }
  return rest;
}

class ShopSearch {
  private readonly shop: Shop;
  private readonly enough: number;
  private readonly steps: Steps;
  private readonly count: number;
  private readonly rest: number[][];
  private readonly ready: number[];
  private readonly at: number[];
  private readonly masks: number[];
  private readonly free: number[];
  private readonly visits: Visit[] = [];
  private best: ShopAnswer = { through: Number.POSITIVE_INFINITY, visits: [] };

  constructor(shop: Shop, enough: number, steps: Steps) {
    this.shop = shop;
    this.enough = enough;
    this.steps = steps;
    this.count = shop.minutes.length;
    this.rest = leastRest(shop);
    this.ready = [...shop.heads];
    this.at = shop.heads.map(() => this.count);
    this.masks = [...shop.masks];
    this.free = shop.minutes.map(() => Number.NEGATIVE_INFINITY);
  }

  run(): ShopAnswer {
    this.go(Number.NEGATIVE_INFINITY, -1);
    return this.best;
  }

  private walk(party: number, station: number): number {
    const from = this.at[party] ?? 0;
    return from === this.count ? this.shop.first_min : (this.shop.between_min[from]?.[station] ?? 0);
  }

  private earliest(party: number, station: number): number {
    const { only } = this.shop;
    const opens = only !== null && only.station === station ? only.span.from : Number.NEGATIVE_INFINITY;
    return Math.max((this.ready[party] ?? 0) + this.walk(party, station), this.free[station] ?? 0, opens);
  }

  /** Whether the remaining visits cannot all be made sooner than the best day so far. */
  private isHopeless(): boolean {
    const ends = this.ready.map(
      (ready, party) => ready + (this.rest[this.at[party] ?? 0]?.[this.masks[party] ?? 0] ?? 0),
    );
    if (this.shop.through(ends) >= this.best.through) return true;
    for (let station = 0; station < this.count; station += 1) {
      const waiting = this.masks.flatMap((mask, party) => (mask & (1 << station) ? [party] : []));
      if (waiting.length === 0) continue;
      const opens = Math.min(...waiting.map((party) => this.earliest(party, station)));
      const closes = opens + waiting.length * (this.shop.minutes[station] ?? 0);
      const { only } = this.shop;
      if (only !== null && only.station === station && closes > only.span.to) return true;
      const isLate = waiting.every((party) => {
        const end = ends[party] ?? 0;
        if (end >= closes) return this.shop.through(ends) >= this.best.through;
        ends[party] = closes;
        const value = this.shop.through(ends);
        ends[party] = end;
        return value >= this.best.through;
      });
      if (isLate) return true;
    }
    return false;
  }

  private go(since: number, last: number): void {
    this.steps.left -= 1;
    if (this.steps.left < 0 || this.best.through <= this.enough) return;
    if (this.masks.every((mask) => mask === 0)) {
      const through = this.shop.through(this.ready);
      if (through < this.best.through) this.best = { through, visits: [...this.visits] };
      return;
    }
    if (this.isHopeless()) return;
    for (const { party, station, from } of this.choices(since, last)) this.visit(party, station, from);
  }

  /** The visits that may come next, the most urgent party first. */
  private choices(since: number, last: number): { party: number; station: number; from: number }[] {
    const open: { party: number; station: number; from: number; urgent: number }[] = [];
    let soonest = Number.POSITIVE_INFINITY;
    for (let party = 0; party < this.masks.length; party += 1) {
      const mask = this.masks[party] ?? 0;
      if (mask === 0) continue;
      for (let station = 0; station < this.count; station += 1) {
        if (!(mask & (1 << station))) continue;
        const from = this.earliest(party, station);
        const to = from + (this.shop.minutes[station] ?? 0);
        // What could be over, walk included, before another visit begins, would be moved in before it.
        const out = Math.max(0, ...(this.shop.between_min[station] ?? []));
        soonest = Math.min(soonest, to + out);
        const index = party * this.count + station;
        if (from < since || (from === since && index < last) || this.isTwin(party)) continue;
        open.push({ party, station, from, urgent: this.urgency(party, station) - from });
      }
    }
    return open.filter(({ from }) => from < soonest).sort((a, b) => b.urgent - a.urgent);
  }

  private urgency(party: number, station: number): number {
    const left = this.rest[this.at[party] ?? 0]?.[this.masks[party] ?? 0] ?? 0;
    const waiting = this.masks.filter((mask) => mask & (1 << station)).length;
    return Math.max(left, waiting * (this.shop.minutes[station] ?? 0)) * 2;
  }

  /** Whether a party before this one stands exactly as it does, so that swapping the two changes nothing. */
  private isTwin(party: number): boolean {
    if ((this.at[party] ?? 0) !== this.count) return false;
    for (let other = 0; other < party; other += 1)
      if (
        this.at[other] === this.count &&
        this.masks[other] === this.masks[party] &&
        this.ready[other] === this.ready[party] &&
        this.shop.alike[other] === this.shop.alike[party]
      )
        return true;
    return false;
  }

  private visit(party: number, station: number, from: number): void {
    const to = from + (this.shop.minutes[station] ?? 0);
    const before = {
      ready: this.ready[party] ?? 0,
      at: this.at[party] ?? 0,
      mask: this.masks[party] ?? 0,
      free: this.free[station] ?? 0,
    };
    this.ready[party] = to;
    this.at[party] = station;
    this.masks[party] = before.mask & ~(1 << station);
    this.free[station] = to;
    this.visits.push({ party, station, from, to });
    this.go(from, party * this.count + station);
    this.visits.pop();
    this.ready[party] = before.ready;
    this.at[party] = before.at;
    this.masks[party] = before.mask;
    this.free[station] = before.free;
  }
}
