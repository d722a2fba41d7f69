// What a planned visit takes up of the farm, and when: stations, taps, toilets, seats, the yard of the buses.
import type { DayPlan, Slot, Span, TripFarm } from '../types.ts';
import type { PlannedVisit } from './plannedVisit.ts';

/** A place that visits share. `station` and `milking` come with the station's id. */
export type PlaceKind = 'station' | 'milking' | 'taps' | 'toilets' | 'seats' | 'yard';

/** A party's span at a shared place. */
export interface Use extends Span {
  readonly kind: PlaceKind;
  /** The station's id; null for other places. */
  readonly station: string | null;
  /** The visit's file. */
  readonly visit: string;
  /** Which party of the visit, from 0. */
  readonly party: number;
  /** Children of the party. */
  readonly children: number;
  /** Children and adults who walk with it. */
  readonly people: number;
  /** Buses that stand at the gate with it. */
  readonly buses: number;
}

/** Children and people of each party. Adults who are kept free are counted with the first: they wash and eat as well. */
export function partySizes({ groups, parties, spare }: DayPlan): { children: number; people: number }[] {
  return parties.map((_, party) => {
    const own = groups.filter((group) => group.party === party);
    const children = own.reduce((sum, group) => sum + group.children, 0);
    const adults = own.reduce((sum, group) => sum + group.adults, party === 0 ? spare : 0);
    return { children, people: children + adults };
  });
}

/** Every use of a visit, in no order; none where its plan does not hold. */
export function usesOf({ visit, plan }: PlannedVisit, farm: TripFarm): Use[] {
  if (!plan.ok) return [];
  const { day } = plan;
  const sizes = partySizes(day);
  const buses = Math.min(visit.wish.buses, farm.busesAtOnce);
  return day.parties.flatMap((slots, party) =>
    slots.flatMap((slot): Use[] => {
      const kind = placeOf(slot, farm);
      const size = sizes[party];
      if (kind === null || !size || slot.to <= slot.from) return [];
      const { from, to, station } = slot;
      const at = kind === 'station' || kind === 'milking' ? station : null;
      return [{ kind, station: at, visit: visit.file, party, from, to, ...size, buses }];
    }),
  );
}

function placeOf({ kind, station }: Slot, farm: TripFarm): PlaceKind | null {
  if (kind === 'station') return farm.stations.find(({ id }) => id === station)?.milking ? 'milking' : 'station';
  if (kind === 'wash') return 'taps';
  if (kind === 'toilets') return 'toilets';
  if (kind === 'lunch') return 'seats';
  return kind === 'unload' || kind === 'load' ? 'yard' : null;
} // prettier-ignore
