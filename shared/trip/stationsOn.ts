// Which stations a group meets on its date: what rain, the season, a kidding and a wheelchair close, and what takes their place.
import type { DayGround, Station, TripFarm, TripNote, TripWish } from './types.ts';

/** A station of the day, and whose place it takes. */
export interface Stop {
  readonly station: Station;
  readonly for: string | null;
}

/** The stations of a day in the order of the loop, and what the teacher must hear of. */
export interface Stops {
  readonly stops: readonly Stop[];
  readonly notes: readonly TripNote[];
}

type Closed = 'rain' | 'kidding' | 'wheelchair' | 'no milking';

/**
 * The chosen stations as they are on the day. A closed station gives way to its stand-in, or to that one's stand-in,
 * as long as nobody else goes there; otherwise it is left out. `milked` says whether a milking can be watched.
 */
export function stationsOn(
  chosen: readonly string[],
  wish: TripWish,
  farm: TripFarm,
  ground: DayGround,
  milked: boolean,
): Stops {
  const known = new Map(farm.stations.map((station) => [station.id, station]));
  const closed = (station: Station): Closed | null => {
    if (wish.rain && !station.roofed) return 'rain';
    if (ground.kiddingNear && station.kidding) return 'kidding';
    if (wish.needs.includes('wheelchair') && !station.wheelchair) return 'wheelchair';
    return station.milking && !milked ? 'no milking' : null;
  };
  const wanted = farm.stations.filter(({ id }) => chosen.includes(id));
  const met = new Map<string, string | null>();
  for (const station of wanted) if (closed(station) === null) met.set(station.id, null);
  const notes: TripNote[] = [];
  for (const station of wanted) {
    const why = closed(station);
    if (why === null) continue;
    const by = openStandIn(station, known, (one) => closed(one) === null && !met.has(one.id));
    if (by === null) notes.push({ kind: 'left out', station: station.id, why });
    else {
      met.set(by, station.id);
      notes.push({ kind: 'stand-in', station: station.id, by, why });
    }
  }
  const stops = farm.stations.flatMap((station) => {
    const place = met.get(station.id);
    return place === undefined ? [] : [{ station, for: place }];
  });
  return { stops, notes };
}

/** The first one along the chain of stand-ins that is open; null where none is, or the chain runs in a ring. */
function openStandIn(
  from: Station,
  known: ReadonlyMap<string, Station>,
  open: (station: Station) => boolean,
): string | null {
  const seen = new Set([from.id]);
  let next = from.standIn;
  while (next !== null && !seen.has(next)) {
    seen.add(next);
    const station = known.get(next);
    if (station === undefined) return null;
    if (open(station)) return station.id;
    next = station.standIn;
  }
  return null;
}

/**
 * The longest walk between stops that follow each other on the one-way loop, past stations that are not visited, in
 * minutes. A single stop follows itself, once around the loop, since nobody says where on it the group comes in.
 */
export function longestWalk(stops: readonly Stop[], farm: TripFarm): number {
  const first = stops[0];
  if (first === undefined) return 0;
  const met = new Set(stops.map(({ station }) => station.id));
  const start = farm.stations.findIndex(({ id }) => id === first.station.id);
  let longest = 0;
  let walked = 0;
  for (let step = 1; step <= farm.stations.length; step++) {
    const station = farm.stations[(start + step) % farm.stations.length]!;
    walked += station.walk_min;
    if (!met.has(station.id)) continue;
    longest = Math.max(longest, walked);
    walked = 0;
  }
  return longest;
}
