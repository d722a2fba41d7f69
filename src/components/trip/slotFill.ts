// Which cut a slot of the day is filled with, and which drawing stands for a station.
import type { Slot, Station } from '../../../shared/trip/types.ts';

/** How many cuts there are for stations; a longer way round begins with the first again. */
export const STATION_CUTS = 8;

/** The name of a slot's cut in `TripCuts`; `order` has the day's stations in the order of the loop. */
export function cutOf({ kind, station }: Pick<Slot, 'kind' | 'station'>, order: readonly string[]): string {
  if (kind === 'load') return 'trip-unload';
  if (kind !== 'station' || station === null) return `trip-${kind}`;
  return `trip-station-${Math.max(0, order.indexOf(station)) % STATION_CUTS}`;
}

/** The name of a station's drawing in `TripCuts`: stations of one kind look alike. */
export function stationLook({ zone, roofed, milking, kidding, touch }: Station): string {
  const special = milking ? 'milking' : kidding ? 'kidding' : touch ? 'touch' : 'look';
  return `trip-at-${zone}-${roofed ? 'roofed' : 'open'}-${special}`;
}
