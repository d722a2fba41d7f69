// Which changes a school or the farm could make to a day, smallest first, and none that would be absurd.
import { bandOfGrade } from '../tasks/grades.ts';
import type { Asked } from './changes.ts';
import { leastAdults } from './groups.ts';
import type { Stop } from './stationsOn.ts';
import { MOST } from './tripQuery.ts';
import type { TripChange, TripWhy } from './types.ts';

/** Kinds of change, easiest for a school first. */
export const WAY_KINDS = Object.freeze([
  'adults',
  'leave later',
  'arrive sooner',
  'lunch',
  'without',
  'fewer children',
  'taps',
  'toilets',
] as const);
/** One of them. */
export type WayKind = (typeof WAY_KINDS)[number];

/** The kind of a change. */
export function wayKind(change: TripChange): WayKind {
  if (change.kind === 'longer') return change.end === 'leave' ? 'leave later' : 'arrive sooner';
  return change.kind;
}

const CLOCK = ['time', 'lunch', 'toilets'] as const;

/** What a kind of change can mend; it is not tried for anything else. */
export const MENDS: Readonly<Record<WayKind, readonly TripWhy['kind'][]>> = Object.freeze({
  adults: ['adults', 'capacity'],
  'leave later': CLOCK,
  'arrive sooner': CLOCK,
  lunch: [...CLOCK, 'seats'],
  without: [...CLOCK, 'capacity', 'seats'],
  'fewer children': [...CLOCK, 'adults', 'capacity', 'seats'],
  taps: [...CLOCK, 'seats'],
  toilets: CLOCK,
});

// No school gladly stays more than an hour and a half longer, or eats that far from its hour, brings more than twice
// the adults, or leaves more than half of its children or stations out; no farm more than doubles its taps for a visit.
// Common practice, no source.
const MOST_MINUTES = 90;
// No school is under way before six in the morning or after eight in the evening. Common practice, no source.
const FIRST_min = 6 * 60;
const LAST_min = 20 * 60;

/** How far changes go: `near` as schools make them gladly; `far` as only a day asks for that was thought of quite otherwise. */
export type Reach = 'near' | 'far';

/** Changes of a kind that differ by an amount only: up to `most`, each a step more than the one before. */
export interface Steps {
  readonly most: number;
  readonly change: (amount: number) => TripChange;
}

/** The steps of a kind of change; null for the kinds that `choicesOf` lists. */
export function stepsOf(kind: WayKind, { wish, farm }: Asked, reach: Reach): Steps | null {
  const minutes = (room: number, far: number) =>
    Math.max(0, Math.min(room, reach === 'near' ? MOST_MINUTES : Math.max(MOST_MINUTES, far)));
  switch (kind) {
    case 'adults': {
      // However few there are, so many are what the grade asks for; who has one must hear of six.
      const asked = leastAdults(wish.children, farm, farm.rules[bandOfGrade(wish.grade)]) - wish.adults;
      const most = Math.min(Math.max(wish.adults, farm.leastAdults, asked), MOST.adults - wish.adults);
      return { most, change: (more) => ({ kind, more }) };
    }
    case 'leave later':
      return {
        most: minutes(MOST.minute - wish.leave, LAST_min - wish.leave),
        change: (later) => ({ kind: 'longer', minutes: later, end: 'leave' }),
      };
    case 'arrive sooner':
      return {
        most: minutes(wish.arrive, wish.arrive - FIRST_min),
        change: (sooner) => ({ kind: 'longer', minutes: sooner, end: 'arrive' }),
      };
    case 'fewer children':
      return {
        most: reach === 'near' ? Math.floor(wish.children / 2) : wish.children - 1,
        change: (fewer) => ({ kind, children: wish.children - fewer }),
      };
    case 'taps':
      return { most: farm.taps, change: (more) => ({ kind, more }) };
    case 'toilets':
      return { most: farm.toilets, change: (more) => ({ kind, more }) };
    case 'lunch':
    case 'without':
      return null;
  }
}

/** The changes of a kind without steps, smallest first. */
export function choicesOf(
  kind: WayKind,
  { wish }: Asked,
  stops: readonly Stop[],
): Iterable<readonly TripChange[]> {
  if (kind === 'lunch') return otherHours(wish.lunch);
  return kind === 'without' ? leavings(wish.stations, stops) : [];
}

/** Food at another time, nearest first and later before sooner; at last no food on the farm. */
function* otherHours(lunch: number | null): Iterable<readonly TripChange[]> {
  if (lunch === null) return;
  for (let minutes = 1; minutes <= MOST_MINUTES; minutes++)
    for (const at of [lunch + minutes, lunch - minutes])
      if (at >= 0 && at <= MOST.minute) yield [{ kind: 'lunch', at }];
  yield [{ kind: 'lunch', at: null }];
}

/**
 * One station fewer, then two, up to half of them. What children touch stays longest, then what takes least time,
 * then what was chosen first. Where the farm chooses, it leaves stations out by itself.
 */
function* leavings(asked: readonly string[], stops: readonly Stop[]): Iterable<readonly TripChange[]> {
  const chosen = [...new Set(asked)];
  const most = Math.floor(chosen.length / 2);
  const met = new Map(stops.map((stop) => [stop.for ?? stop.station.id, stop.station]));
  const minutes = (id: string) => Math.max(0, ...Object.values(met.get(id)?.minutes ?? {}));
  const dearest = chosen
    .map((station, at) => ({ station, at, touch: met.get(station)?.touch ? 1 : 0 }))
    .sort((a, b) => a.touch - b.touch || minutes(b.station) - minutes(a.station) || b.at - a.at)
    .map(({ station }): TripChange => ({ kind: 'without', station }));
  if (most >= 1) for (const one of dearest) yield [one];
  if (most >= 2)
    for (const [at, one] of dearest.entries()) for (const other of dearest.slice(at + 1)) yield [one, other];
  for (let count = 3; count <= most; count++) yield dearest.slice(0, count);
}
