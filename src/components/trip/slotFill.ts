// Which cut a slot of the day is filled with.
import type { Slot } from '../../../shared/trip/types.ts';

/** How many cuts there are for stations; a longer way round begins with the first again. */
export const STATION_CUTS = 8;

/** The name of a slot's cut in `TripHatches`; `order` has the day's stations in the order of the loop. */
export function cutOf({ kind, station }: Pick<Slot, 'kind' | 'station'>, order: readonly string[]): string {
  if (kind === 'load') return 'trip-unload';
  if (kind !== 'station' || station === null) return `trip-${kind}`;
  return `trip-station-${Math.max(0, order.indexOf(station)) % STATION_CUTS}`;
}
