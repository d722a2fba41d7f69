// Who meets which stations, whatever the hour: stations of the day, groups, parties, the lengths, and what stands against them.
import type { Band } from '../quantity/grade.ts';
import { bandOfGrade } from '../tasks/grades.ts';
import { courseOf, type Course } from './course.ts';
import { groupingOf, groupsOf, leastAdults, spareAdults } from './groups.ts';
import { milkingFits, type MilkingFit } from './milking.ts';
import { stationsOn, type Stop, type Stops } from './stationsOn.ts';
import type { DayGround, Group, Span, TripFarm, TripNote, TripWhy, TripWish } from './types.ts';
import type { People } from './wash.ts';

/** All of a day that no clock time changes. */
export interface Gathered {
  /** Ids of the stations as they were chosen, before stand-ins. */
  readonly chosen: readonly string[];
  readonly stops: readonly Stop[];
  readonly notes: readonly TripNote[];
  /** As if there were adults enough. */
  readonly groups: readonly Group[];
  /** Reasons that no clock time mends. */
  readonly whys: readonly TripWhy[];
  /** The lengths, with the clock times of the wish that they were made for; null where there is no station. */
  readonly course: Course | null;
  /** Null where none is shown. */
  readonly milking: MilkingFit | null;
}

/** What was found before, for wishes of one date and grade on one farm that differ as changes of a trip differ. */
export interface Memo {
  readonly stations: Map<string, Stops>;
  readonly days: Map<string, Gathered>;
}

/** A memo that holds nothing. */
export function emptyMemo(): Memo {
  return { stations: new Map(), days: new Map() };
}

/** Gathers a day, or takes it from the memo with the clock times of this wish. */
export function gather(
  chosen: readonly string[],
  wish: TripWish,
  farm: TripFarm,
  ground: DayGround,
  milked: boolean,
  memo: Memo,
): Gathered {
  const { children, adults, lunch } = wish;
  const place = `${milked ? 'milked' : ''} ${chosen.join(' ')}`;
  const key = `${children} ${adults} ${lunch === null ? '' : 'food'} ${farm.taps} ${farm.toilets} ${place}`;
  const gathered = memo.days.get(key);
  if (!gathered) {
    const stops = memo.stations.get(place) ?? stationsOn(chosen, wish, farm, ground, milked);
    memo.stations.set(place, stops);
    const anew = gatherAnew(chosen, stops, wish, farm, milked ? ground.milkings : null);
    memo.days.set(key, anew);
    return anew;
  }
  const { course } = gathered;
  if (
    !course ||
    (course.arrive === wish.arrive && course.leave === wish.leave && course.food?.from === wish.lunch)
  )
    return gathered;
  const { arrive, leave } = wish;
  const food = lunch === null ? null : { from: lunch, to: lunch + farm.lunchSlack_min };
  return { ...gathered, course: { ...course, arrive, leave, food } };
}

function gatherAnew(
  chosen: readonly string[],
  { stops, notes }: Stops,
  wish: TripWish,
  farm: TripFarm,
  milkings: readonly Span[] | null,
): Gathered {
  const band = bandOfGrade(wish.grade);
  const { whys, groups } = groupAll(wish, farm, band, stops);
  if (stops.length === 0) {
    whys.unshift({ kind: 'no station' });
    return { chosen, stops, notes, groups, whys, course: null, milking: null };
  }
  const course = courseOf(wish, farm, band, stops, peopleIn(wish, groups));
  if (wish.lunch !== null && course.meal.seated > farm.seats)
    whys.push({ kind: 'seats', is: farm.seats, needs: course.meal.seated });
  const milking = milkingFits(course, milkings);
  return { chosen, stops, notes, groups, whys, course, milking };
}

/** Groups, as if there were adults enough, and what stands against them. */
function groupAll(
  wish: TripWish,
  farm: TripFarm,
  band: Band,
  stops: readonly Stop[],
): { whys: TripWhy[]; groups: Group[] } {
  const rules = farm.rules[band];
  const whys: TripWhy[] = [];
  const needs = leastAdults(wish.children, farm, rules);
  // Each group has an adult, so none leads more children than the largest group has.
  const most = Math.min(rules.perAdult.most, rules.groupMost);
  if (wish.adults < needs) whys.push({ kind: 'adults', is: wish.adults, needs, most });
  const leaders = Math.max(wish.adults, needs) - spareAdults(wish.children, farm);
  const room = Math.min(...stops.map(({ station }) => station.capacity));
  const grouping = groupingOf(wish.children, leaders, Math.max(1, stops.length), room, rules);
  for (const { station } of stops)
    if (station.capacity < grouping.largest)
      whys.push({ kind: 'capacity', station: station.id, is: station.capacity, needs: grouping.largest });
  const wheelchair = wish.needs.includes('wheelchair');
  return { whys, groups: groupsOf(wish.children, leaders, grouping, rules, wheelchair) };
}

/** Children and adults by party, and all who come. */
function peopleIn(wish: TripWish, groups: readonly Group[]): People {
  const parties: number[] = [];
  for (const { party, children, adults } of groups)
    parties[party] = (parties[party] ?? 0) + children + adults;
  const led = parties.reduce((sum, one) => sum + one, 0);
  return { parties, all: Math.max(led, wish.children + wish.adults) };
}
