// Finds the timetable of a day: how many rounds go before the food, where waiting goes, or why no time suffices.
import { lay, type Hold, type Laid } from './clock.ts';
import { isHopeless, type Course } from './course.ts';
import type { MilkingFit } from './milking.ts';
import type { TripWhy } from './types.ts';

/** The day with as many rounds before the food as fit; null where there is none. */
export function timetable(course: Course, milking: MilkingFit): Laid | null {
  if (isHopeless(course)) return null;
  const count = course.rounds.length;
  for (let before = count; before >= (course.food ? 0 : count); before--) {
    const laid = fitted(course, before, milking);
    if (laid) return laid;
  }
  return null;
}

/** The day with so many rounds before the food, if it can be had with waiting in one place or another. */
function fitted(course: Course, before: number, milking: MilkingFit): Laid | null {
  const first = lay(course, before, course.leave);
  if (first.spare < 0 || (course.food && first.food! > course.food.to)) return null;
  const wait = milking(first);
  if (wait === null) return null;
  if (wait > 0) return tryHold(course, before, milking, { at: -1, minutes: wait });
  if (holds(course, first)) return first;
  // The time to spare is too short for a pause at the toilets and too long to go without: it goes before an earlier one.
  for (let at = first.chances - 1; at >= 0; at--) {
    const laid = tryHold(course, before, milking, { at, minutes: first.spare });
    if (laid) return laid;
  }
  return null;
}

function tryHold(course: Course, before: number, milking: MilkingFit, hold: Hold): Laid | null {
  const laid = lay(course, before, course.leave, hold);
  return holds(course, laid) && milking(laid) === 0 ? laid : null;
}

function holds({ food, leave, toiletWithin }: Course, laid: Laid): boolean {
  return laid.end === leave && laid.longest <= toiletWithin && (food === null || laid.food! <= food.to);
}

/** Every reason of time against a day; none where only a milking stands against it. */
export function timeWhys(course: Course): TripWhy[] {
  const { food, arrive, leave, toiletWithin } = course;
  const count = course.rounds.length;
  const days: Laid[] = [];
  for (let before = count; before >= (food ? 0 : count); before--) days.push(lay(course, before, null));
  const inTime = food ? days.filter((laid) => laid.food! <= food.to) : days;
  const nearest = inTime.length > 0 ? inTime : days;
  const end = Math.min(...nearest.map((laid) => laid.end));
  const longest = Math.min(...nearest.map((laid) => laid.longest));
  const whys: TripWhy[] = [];
  if (end > leave) whys.push({ kind: 'time', is_min: leave - arrive, needs_min: end - arrive });
  if (food && inTime.length === 0)
    whys.push({ kind: 'lunch', at: food.from, earliest: Math.min(...days.map((laid) => laid.food!)) });
  else if (food && food.from + mealAfter(course) + course.tail > leave)
    whys.push({ kind: 'lunch', at: food.from, earliest: null });
  if (longest > toiletWithin) whys.push({ kind: 'toilets', within_min: toiletWithin, longest_min: longest });
  if (whys.length > 0 || timetable(course, () => 0)) return whys;
  // Only the filling of the day with waiting fails: what is too long is the time after the last chance.
  const filled = lay(course, nearest[0]!.roundsBefore, leave);
  const late = Math.max(filled.longest, filled.end - leave + toiletWithin);
  return [{ kind: 'toilets', within_min: toiletWithin, longest_min: late }];
}

/** From the first party's food until the last has eaten. */
function mealAfter({ meal }: Course): number {
  return meal.total - meal.parties[0]!.washed;
}
