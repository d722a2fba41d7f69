// Finds the timetable of a day: how many rounds go before the food, or why no time suffices.
import { lay, type Beat } from './clock.ts';
import { isHopeless, type Course } from './course.ts';
import type { MilkingFit } from './milking.ts';
import { findRoute, HORIZON_min, type Errand } from './route.ts';
import type { TripWhy } from './types.ts';

/** A day on the clock. */
export interface Laid {
  readonly beats: readonly Beat[];
  readonly roundsBefore: number;
}

/** The day with as many rounds before the food as fit; null where there is none. `milking` null: none has to be seen. */
export function timetable(course: Course, milking: MilkingFit | null): Laid | null {
  if (isHopeless(course)) return null;
  const { leave } = course;
  for (const roundsBefore of splits(course)) {
    const laid = fitted({ course, roundsBefore, leave, hold: 0, unhurried: false }, milking);
    if (laid) return laid;
  }
  return null;
}

/** Whether `timetable` finds a day for a course that shows no milking. */
export function hasTimetable(course: Course): boolean {
  if (isHopeless(course)) return false;
  const { leave } = course;
  return splits(course).some((roundsBefore) =>
    findRoute({ course, roundsBefore, leave, hold: 0, unhurried: false }),
  );
}

/** How many rounds can come before the food, most first. */
function splits({ food, rounds }: Course): number[] {
  if (!food) return [rounds.length];
  return Array.from({ length: rounds.length + 1 }, (_, after) => rounds.length - after);
}

/** The day of an errand; where its milking would be missed, after a wait. */
function fitted(errand: Errand, milking: MilkingFit | null): Laid | null {
  const route = findRoute(errand);
  if (!route) return null;
  const beats = lay(errand.course, route, errand.hold);
  const wait = milking ? milking(beats) : 0;
  if (wait === 0) return { beats, roundsBefore: errand.roundsBefore };
  return wait === null || errand.hold > 0 ? null : fitted({ ...errand, hold: wait }, milking);
}

/** Every reason of time against a day; none where only a milking stands against it. */
export function timeWhys(course: Course): TripWhy[] {
  const { food, arrive, leave, toiletWithin } = course;
  const soonest = (one: Course, unhurried: boolean) =>
    splits(course).flatMap((roundsBefore) => {
      const route = findRoute({ course: one, roundsBefore, leave: null, hold: 0, unhurried });
      return route ? [route] : [];
    });
  // Where the toilets come too late in any day, the others are told as if they need not come.
  const longest = longestApart(course);
  const free = longest > toiletWithin ? { ...course, toiletWithin: Infinity } : course;
  const inTime = soonest(free, false);
  const nearest = inTime.length > 0 ? inTime : soonest(free, true);
  const whys: TripWhy[] = [];
  const end = Math.min(arrive + HORIZON_min, ...nearest.map((route) => route.leave));
  if (end > leave) whys.push({ kind: 'time', is_min: leave - arrive, needs_min: end - arrive });
  if (food && inTime.length === 0)
    whys.push({ kind: 'lunch', at: food.from, earliest: earliestFood(course) });
  else if (food && food.from + course.meal.total - course.meal.parties[0]!.washed + course.tail > leave)
    whys.push({ kind: 'lunch', at: food.from, earliest: null });
  if (longest > toiletWithin) whys.push({ kind: 'toilets', within_min: toiletWithin, longest_min: longest });
  if (whys.length > 0 || hasTimetable(course)) return whys;
  // Each part of the day can be had, but not up to this leaving: time is left that is too short for another pause.
  return [{ kind: 'toilets', within_min: toiletWithin, longest_min: toiletWithin + leave - end }];
}

/** When the first party could eat at the soonest. */
function earliestFood({ arrive, buses, gateWalk, welcome, toilets, tapsWalk, meal }: Course): number {
  return arrive + buses + gateWalk + welcome + toilets + tapsWalk + meal.parties[0]!.washed;
}

/** The longest time without a toilet that no pause can shorten. */
function longestApart(course: Course): number {
  const { meal, wash, tail, tapsWalk, fromTaps, change } = course;
  const rounds = course.rounds.map(
    (minutes, round) => minutes + tapsWalk + (round === 0 ? change : fromTaps),
  );
  const waits = [...meal.parties.map(({ washed }) => washed), meal.total - meal.parties[0]!.eaten];
  const gaps = [
    course.buses + course.gateWalk + course.welcome,
    ...rounds,
    ...(course.food ? waits : []),
    tail,
  ];
  return Math.max(...gaps, course.soils.includes(true) ? wash.total : 0);
}
