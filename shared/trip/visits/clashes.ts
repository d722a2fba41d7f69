// Where visits are in each other's way: more at one place at one time than it holds.
import type { Span, TripFarm } from '../types.ts';
import type { PlannedVisit } from './plannedVisit.ts';
import { usesOf, type PlaceKind, type Use } from './uses.ts';

/** A span in which two visits or more want the same place, and it does not hold them. */
export interface Clash extends Span {
  readonly kind: PlaceKind;
  readonly station: string | null;
  /** ISO date. */
  readonly date: string;
  /** Files of the visits that are there, in the order given. */
  readonly visits: readonly string[];
  /** The most at one time, and how many the place holds: children at stations, people at seats, buses in the yard, visits at taps and toilets. */
  readonly load: number;
  readonly holds: number;
}

/**
 * Every clash of the visits, by date and time. A visit's plan reckons with all taps and all toilets, so that these
 * hold one visit at a time. A visit whose plan does not hold clashes with none: it is told by `findings`.
 */
export function visitClashes(planned: readonly PlannedVisit[], farm: TripFarm): Clash[] {
  const byDate = Map.groupBy(planned, ({ visit }) => visit.wish.date);
  return [...byDate].flatMap(([date, own]) => {
    if (own.length < 2) return [];
    const order = own.map(({ visit }) => visit.file);
    const uses = own.flatMap((one) => usesOf(one, farm));
    const places = Map.groupBy(uses, ({ kind, station }) => JSON.stringify([kind, station]));
    return [...places.values()].flatMap((at) => clashesAt(date, at, order, farm));
  }).sort(byTime); // prettier-ignore
}

const byTime = (a: Clash, b: Clash) =>
  (a.date < b.date ? -1 : a.date > b.date ? 1 : 0) || a.from - b.from || (a.kind < b.kind ? -1 : 1);

/** Walks from one change at a place to the next; what is too much from one to the other without a break is one clash. */
function clashesAt(date: string, uses: readonly Use[], order: readonly string[], farm: TripFarm): Clash[] {
  const [first] = uses;
  if (!first) return [];
  const { kind, station } = first;
  const holds = holdsOf(first, farm);
  const times = [...new Set(uses.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const clashes: Clash[] = [];
  for (const [index, from] of times.entries()) {
    const to = times[index + 1];
    if (to === undefined) break;
    const here = uses.filter((use) => use.from <= from && use.to > from);
    const load = loadOf(kind, here);
    const visits = order.filter((file) => here.some(({ visit }) => visit === file));
    if (visits.length < 2 || load <= holds) continue;
    const last = clashes.at(-1);
    if (last?.to !== from) clashes.push({ kind, station, date, from, to, visits, load, holds });
    else {
      const all = order.filter((file) => last.visits.includes(file) || visits.includes(file));
      clashes[clashes.length - 1] = { ...last, to, visits: all, load: Math.max(last.load, load) };
    }
  }
  return clashes;
}

function holdsOf({ kind, station }: Use, farm: TripFarm): number {
  if (kind === 'station' || kind === 'milking') return farm.stations.find(({ id }) => id === station)?.capacity ?? 0;
  if (kind === 'seats') return farm.seats;
  return kind === 'yard' ? farm.busesAtOnce : 1;
} // prettier-ignore

function loadOf(kind: PlaceKind, here: readonly Use[]): number {
  if (kind === 'station' || kind === 'milking') return here.reduce((sum, { children }) => sum + children, 0);
  if (kind === 'seats') return here.reduce((sum, { people }) => sum + people, 0);
  const visits = new Map(here.map(({ visit, buses }) => [visit, buses]));
  return kind === 'yard' ? [...visits.values()].reduce((sum, buses) => sum + buses, 0) : visits.size;
}
