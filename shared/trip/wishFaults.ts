// Which fields of a wish cannot be, before any day is planned from it.
import { dayNumber } from '../calendar/day.ts';
import { MOST } from './tripQuery.ts';
import { NEEDS, type TripFarm, type TripWish } from './types.ts';

/** The fields of a wish that cannot be planned from, in the order of the wish. An address can tell every other one. */
export function wishFaults(wish: TripWish, farm: TripFarm): (keyof TripWish)[] {
  const known = new Set(farm.stations.map(({ id }) => id));
  const sound: Partial<Record<keyof TripWish, boolean>> = {
    date: typeof wish.date === 'string' && dayNumber(wish.date) !== null,
    grade: isWhole(wish.grade, 0, 12),
    children: isWhole(wish.children, 1, MOST.children),
    adults: isWhole(wish.adults, 0, MOST.adults),
    arrive: isWhole(wish.arrive, 0, MOST.minute),
    leave: isWhole(wish.leave, 0, MOST.minute) && !(wish.leave <= wish.arrive),
    buses: isWhole(wish.buses, 0, MOST.buses),
    lunch: wish.lunch === null || isWhole(wish.lunch, 0, MOST.minute),
    stations: wish.stations.every((id) => known.has(id)),
    needs: wish.needs.every((need) => NEEDS.includes(need)),
  };
  return (Object.keys(sound) as (keyof TripWish)[]).filter((field) => !sound[field]);
}

function isWhole(value: number, least: number, most: number): boolean {
  return Number.isInteger(value) && value >= least && value <= most;
}
