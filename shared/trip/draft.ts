// Plans a day once: stations, groups, clock, and every reason where it does not hold. The changes that would help come on top.
import type { Band } from '../quantity/grade.ts';
import { bandOfGrade } from '../tasks/standards.ts';
import { courseOf, type Course } from './course.ts';
import type { Laid } from './clock.ts';
import { groupingOf, groupsOf, isLess, leastAdults, spareAdults } from './groups.ts';
import { stationsOn, type Stop } from './stationsOn.ts';
import { timetable } from './timetable.ts';
import { milkingFits } from './milking.ts';
import { washMinutes } from './wash.ts';
import type { DayGround, Group, TripFarm, TripNote, TripWhy, TripWish } from './types.ts';

/** A day that holds, before its slots are written out. */
export interface Draft {
  readonly whys: readonly TripWhy[];
  readonly notes: readonly TripNote[];
  /** Ids of the stations as they were chosen, before stand-ins. */
  readonly chosen: readonly string[];
  readonly stops: readonly Stop[];
  readonly groups: readonly Group[];
  /** Set where the day holds, and where only its time does not. */
  readonly course: Course | null;
  /** Set where the day holds. */
  readonly laid: Laid | null;
}

/** The best day for a wish without faults; where the group chooses no station, with as many of the farm's usual ones as fit. */
export function draftDay(wish: TripWish, farm: TripFarm, ground: DayGround): Draft {
  if (wish.stations.length > 0) return draftWith(wish.stations, wish, farm, ground);
  const usual = farm.usual[bandOfGrade(wish.grade)];
  const known = usual.filter((id) => farm.stations.some((one) => one.id === id));
  let best: Draft | null = null;
  for (let count = known.length; count >= Math.min(1, known.length); count--) {
    const draft = draftWith(known.slice(0, count), wish, farm, ground);
    const notes: TripNote[] = [...draft.notes, { kind: 'farm chose', stations: draft.chosen }];
    if (best === null || isNearer(draft, best)) best = { ...draft, notes };
    if (draft.whys.length === 0 || count === 0) break;
  }
  return best!;
}

/** Fewer stations too small for the parties (fewer stations make larger parties), then fewer reasons, then less time. */
function isNearer(draft: Draft, best: Draft): boolean {
  return isLess(distance(draft), distance(best));
}

function distance({ whys }: Draft): readonly number[] {
  const time = whys.find((why) => why.kind === 'time');
  return [whys.filter(({ kind }) => kind === 'capacity').length, whys.length, time ? time.needs_min : 0];
}

/** With a milking to watch if one can be fitted in; it never makes a day fail. */
function draftWith(chosen: readonly string[], wish: TripWish, farm: TripFarm, ground: DayGround): Draft {
  const asked = farm.stations.some((one) => one.milking && chosen.includes(one.id));
  if (ground.milkings.length > 0) {
    const draft = draftStops(chosen, wish, farm, ground, true);
    const shows = draft.stops.some(({ station }) => station.milking);
    if (!shows || draft.whys.length === 0) return draft;
  }
  const draft = draftStops(chosen, wish, farm, ground, false);
  if (!asked || ground.milkings.length === 0) return draft;
  return {
    ...draft,
    notes: [{ kind: 'milking at another time', milkings: ground.milkings }, ...draft.notes],
  };
}

function draftStops(
  chosen: readonly string[],
  wish: TripWish,
  farm: TripFarm,
  ground: DayGround,
  milked: boolean,
): Draft {
  const band = bandOfGrade(wish.grade);
  const { stops, notes } = stationsOn(chosen, wish, farm, ground, milked);
  const { whys, groups } = gather(wish, farm, band, stops);
  const none = { chosen, stops, groups, notes, course: null, laid: null };
  if (stops.length === 0) return { ...none, whys: [{ kind: 'no station' }, ...whys] };
  const people = peopleIn(wish, groups);
  const course = courseOf(wish, farm, band, stops, people);
  if (course.meal.seated > farm.seats && wish.lunch !== null)
    whys.push({ kind: 'seats', is: farm.seats, needs: course.meal.seated });
  const fits = milkingFits(course, milked ? ground.milkings : null);
  const timed = timetable(course, fits);
  if (timed.laid === null) whys.push(...timed.whys);
  const all = [...notes, ...crowdNotes(wish, farm, band, groups, washesInTurn(course, timed.laid))];
  if (whys.length > 0) return { ...none, course, notes: all, whys };
  return { chosen, stops, groups, notes: all, course, laid: timed.laid, whys };
}

/** Groups, as if there were adults enough, and what stands against them. */
function gather(
  wish: TripWish,
  farm: TripFarm,
  band: Band,
  stops: readonly Stop[],
): { whys: TripWhy[]; groups: Group[] } {
  const rules = farm.rules[band];
  const whys: TripWhy[] = [];
  const needs = leastAdults(wish.children, farm, rules);
  if (wish.adults < needs) whys.push({ kind: 'adults', is: wish.adults, needs, most: rules.perAdult.most });
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
function peopleIn(wish: TripWish, groups: readonly Group[]): { parties: number[]; all: number } {
  const parties: number[] = [];
  for (const { party, children, adults } of groups)
    parties[party] = (parties[party] ?? 0) + children + adults;
  const led = parties.reduce((sum, one) => sum + one, 0);
  return { parties, all: Math.max(led, wish.children + wish.adults) };
}

function washesInTurn(course: Course, laid: Laid | null): boolean {
  if (!course.wash.inTurn) return false;
  return laid === null || laid.beats.some(({ kind }) => kind === 'meal' || kind === 'wash');
}

function crowdNotes(
  wish: TripWish,
  farm: TripFarm,
  band: Band,
  groups: readonly Group[],
  inTurn: boolean,
): TripNote[] {
  const rules = farm.rules[band];
  const notes: TripNote[] = [];
  const perAdult = Math.max(...groups.map((one) => Math.ceil(one.children / one.adults)));
  if (perAdult > rules.perAdult.aim) notes.push({ kind: 'few adults', perAdult, aim: rules.perAdult.aim });
  if (inTurn)
    notes.push({
      kind: 'wash by party',
      minutes: Math.ceil(washMinutes(wish.children + wish.adults, farm, rules)),
    });
  return notes;
}
