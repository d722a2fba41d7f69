// The wish that the Trip plan opens with: a usual class on the first school day a week after the farm's day.
import { isoDate, weekday } from '../calendar/day.ts';
import type { TripWish } from './types.ts';

const WEEK_days = 7;
const [SUNDAY, SATURDAY] = [0, 6];

/**
 * What stands in the fields before anybody has filled them in, for the farm's day (a day number). Links leave out
 * what is usual, so these values may not change; the date is in every link. A class of 24 with four adults and one
 * bus: common practice, no source.
 */
export function usualWish(asOf: number): TripWish {
  return {
    date: isoDate(schoolDay(asOf + WEEK_days)),
    grade: 2,
    children: 24,
    adults: 4,
    arrive: 9 * 60 + 30,
    leave: 13 * 60,
    buses: 1,
    lunch: 11 * 60 + 45,
    stations: [],
    needs: [],
    rain: false,
    word: '',
  };
}

/** The day itself, or the Monday after a weekend. */
function schoolDay(day: number): number {
  if (weekday(day) === SATURDAY) return day + 2;
  return weekday(day) === SUNDAY ? day + 1 : day;
}
