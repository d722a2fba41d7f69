// A pack's address read and planned: the wish, the day that comes of it, and what the papers are made from.
import { dayNumber } from '../../calendar/day.ts';
import { clockText } from '../../lesson/clock.ts';
import { bandOfGrade, gradeSign } from '../../tasks/grades.ts';
import type { Band } from '../../quantity/grade.ts';
import type { TripCase } from '../papers/types.ts';
import { planTrip } from '../planTrip.ts';
import { groundOn } from '../season.ts';
import { toldAsides } from '../../words/asides.ts';
import { readTrip, writeTrip } from '../tripQuery.ts';
import type { DayGround, TripPlan, TripWish } from '../types.ts';
import type { PackGround } from './bundle.ts';
import { readPack, type PackChoice } from './packQuery.ts';
import { partNames } from './parts.ts';

/** What an address comes to. */
export interface PackCase {
  readonly wish: TripWish;
  readonly choice: PackChoice;
  /** Parts of the address that made no sense, as they were found. */
  readonly aside: readonly string[];
  readonly band: Band;
  readonly ground: DayGround;
  readonly plan: TripPlan;
  /** What the papers are made from; null where there is no such day. */
  readonly trip: TripCase | null;
  /** The query of the trip alone, written anew. */
  readonly tripQuery: string;
}

/** Reads the query of a pack and plans its day. The same query on the same ground gives the same case. */
export function packCase(query: string, ground: PackGround): PackCase {
  const { farm, usual, shelf, contact, farmName } = ground;
  const known = new Set(partNames(shelf));
  const { trip, choice, aside } = readPack(query, shelf.paper, (name) => known.has(name));
  const read = readTrip(trip, farm, usual);
  const { wish } = read;
  const onDay = groundOn(farm, ground.season, dayNumber(wish.date) ?? ground.season.asOf);
  const plan = planTrip(wish, farm, onDay);
  return {
    wish,
    choice,
    aside: toldAsides([...read.aside, ...aside.map((found) => ({ found }))]).map(({ found }) => found),
    band: bandOfGrade(wish.grade),
    ground: onDay,
    plan,
    trip: plan.ok
      ? {
          wish,
          farm,
          ground: onDay,
          day: plan.day,
          notes: plan.notes,
          otherWeather: planTrip({ ...wish, rain: !wish.rain }, farm, onDay, 'without ways'),
          contact,
          farmName,
          school: '',
        }
      : null,
    tripQuery: writeTrip(wish, usual),
  };
}

/**
 * The name of a file of a visit, without its ending: day, grade, children, arrival and the class word, which tell two visits
 * of a day apart; no name of anybody.
 * @example `trip-2026-05-27-grade-2-54-children-0930-fern`
 */
export function tripFileName({ date, grade, children, arrive, word }: TripWish): string {
  const time = clockText(arrive).replace(':', '').padStart(4, '0');
  return `trip-${date}-grade-${gradeSign(grade)}-${children}-children-${time}${word === '' ? '' : `-${word}`}`;
}
