// Which fields of a wish cannot be, before any day is planned from it.
import { dayNumber } from '../calendar/day.ts';
import { NEEDS, type TripFarm, type TripWish } from './types.ts';

const DAY_min = 24 * 60;
// More than any school brings; it keeps what is drawn and printed finite.
const MOST_CHILDREN = 1000;
const MOST_ADULTS = 1000;
const MOST_BUSES = 50;

/** The fields of a wish that cannot be planned from, in the order of the wish. */
export function wishFaults(wish: TripWish, farm: TripFarm): (keyof TripWish)[] {
  const known = new Set(farm.stations.map(({ id }) => id));
  const sound: Partial<Record<keyof TripWish, boolean>> = {
    date: typeof wish.date === 'string' && dayNumber(wish.date) !== null,
    grade: isWhole(wish.grade, 0, 12),
    children: isWhole(wish.children, 1, MOST_CHILDREN),
    adults: isWhole(wish.adults, 0, MOST_ADULTS),
    arrive: isWhole(wish.arrive, 0, DAY_min),
    leave: isWhole(wish.leave, 0, DAY_min) && !(wish.leave <= wish.arrive),
    buses: isWhole(wish.buses, 0, MOST_BUSES),
    lunch: wish.lunch === null || isWhole(wish.lunch, 0, DAY_min),
    stations: wish.stations.every((id) => known.has(id)),
    needs: wish.needs.every((need) => NEEDS.includes(need)),
  };
  return (Object.keys(sound) as (keyof TripWish)[]).filter((field) => !sound[field]);
}

function isWhole(value: number, least: number, most: number): boolean {
  return Number.isInteger(value) && value >= least && value <= most;
}
