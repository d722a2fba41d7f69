// Plans a day once: stations, groups, clock, and every reason where it does not hold. The changes that would help come on top.
import { bandOfGrade } from '../tasks/grades.ts';
import { isHopeless, type Course } from './course.ts';
import { gather, type Gathered, type Memo } from './gathered.ts';
import { isLess, leastAdults } from './groups.ts';
import type { MilkingFit } from './milking.ts';
import { stationsOn } from './stationsOn.ts';
import { hasTimetable, timetable, timeWhys, type Laid } from './timetable.ts';
import type { DayGround, TripFarm, TripNote, TripWhy, TripWish } from './types.ts';
import { washMinutes } from './wash.ts';

/** A day before its slots are written out. */
export interface Draft extends Omit<Gathered, 'milking'> {
  /** Every reason against it, of people and of time. */
  readonly whys: readonly TripWhy[];
  /** Set where the day holds. */
  readonly laid: Laid | null;
}

/**
 * The best day for a wish without faults; where the group chooses no station, with as many of the farm's usual ones
 * as fit.
 */
export function draftDay(wish: TripWish, farm: TripFarm, ground: DayGround, memo: Memo): Draft {
  if (wish.stations.length > 0) return draftWith(wish.stations, wish, farm, ground, memo);
  let best: Draft | null = null;
  for (const chosen of farmChoices(wish, farm, ground)) {
    const draft = draftWith(chosen, wish, farm, ground, memo);
    if (best === null || isNearer(draft, best)) best = draft;
    if (draft.laid) break;
  }
  return { ...best!, notes: [{ kind: 'farm chose', stations: best!.chosen }, ...best!.notes] };
}

/** Whether `draftDay` finds a day, without asking why not. */
export function dayHolds(wish: TripWish, farm: TripFarm, ground: DayGround, memo: Memo): boolean {
  return anyDay(wish, farm, ground, memo, (course, milking) =>
    milking ? timetable(course, milking) !== null : hasTimetable(course),
  );
}

/** Whether `draftDay` might find a day: people and places are in order, and no bare sum of lengths is too long. */
export function dayMayHold(wish: TripWish, farm: TripFarm, ground: DayGround, memo: Memo): boolean {
  return anyDay(wish, farm, ground, memo, (course) => !isHopeless(course));
}

function anyDay(
  wish: TripWish,
  farm: TripFarm,
  ground: DayGround,
  memo: Memo,
  test: (course: Course, milking: MilkingFit | null) => boolean,
): boolean {
  const choices = wish.stations.length > 0 ? [wish.stations] : farmChoices(wish, farm, ground);
  return choices.some((chosen) =>
    [true, false].some((milked) => {
      if (milked && ground.milkings.length === 0) return false;
      const { course, whys, milking } = gather(chosen, wish, farm, ground, milked, memo);
      return course !== null && whys.length === 0 && test(course, milking);
    }),
  );
}

/**
 * The farm's usual stations on the date, then without the last, and so on; at least one choice, which may be empty.
 * Where none of these has room for so many children, then the usual ones with one more that is open, with two, and so on.
 */
function farmChoices(wish: TripWish, farm: TripFarm, ground: DayGround): readonly (readonly string[])[] {
  const usual = (ground.usual ?? farm.usual)[bandOfGrade(wish.grade)];
  const room = new Map(farm.stations.map(({ id, capacity }) => [id, capacity]));
  const known = usual.filter((id) => room.has(id));
  if (known.length === 0) return [known];
  const choices = known.map((_, at) => known.slice(0, known.length - at));
  const rooms = (ids: readonly string[]) => ids.length * Math.min(...ids.map((id) => room.get(id)!));
  if (choices.some((ids) => rooms(ids) >= wish.children)) return choices;
  const all = farm.stations.map(({ id }) => id);
  const open = stationsOn(all, wish, farm, ground, ground.milkings.length > 0)
    .stops.filter((stop) => stop.for === null && !known.includes(stop.station.id))
    .sort((a, b) => b.station.capacity - a.station.capacity)
    .map(({ station }) => station.id);
  return [...choices, ...open.map((_, at) => [...known, ...open.slice(0, at + 1)])];
}

/** Fewer stations too small for the parties (fewer stations make larger parties), then fewer reasons, then less time. */
function isNearer(draft: Draft, best: Draft): boolean {
  return isLess(distance(draft), distance(best));
}

function distance({ whys }: Draft): readonly number[] {
  const time = whys.find((why) => why.kind === 'time');
  return [whys.filter(({ kind }) => kind === 'capacity').length, whys.length, time ? time.needs_min : 0];
}

/** With a milking to watch if one can be fitted in; that never makes a day fail. */
function draftWith(
  chosen: readonly string[],
  wish: TripWish,
  farm: TripFarm,
  ground: DayGround,
  memo: Memo,
): Draft {
  const without = () => draftStops(gather(chosen, wish, farm, ground, false, memo), wish, farm);
  if (ground.milkings.length === 0) return without();
  const shown = draftStops(gather(chosen, wish, farm, ground, true, memo), wish, farm);
  if (shown.laid || !shown.stops.some(({ station }) => station.milking)) return shown;
  const other = without();
  // Where neither holds, the milking is to blame only if nothing else stands against the day that has one. The
  // reasons are then those that would be left without it: no day fails for its milking.
  if (!other.laid && shown.whys.length > 0)
    return isNearer(other, shown) ? { ...shown, whys: other.whys } : shown;
  return {
    ...other,
    notes: [{ kind: 'milking at another time', milkings: ground.milkings }, ...other.notes],
  };
}

function draftStops({ milking, ...gathered }: Gathered, wish: TripWish, farm: TripFarm): Draft {
  const { course } = gathered;
  if (!course) return { ...gathered, laid: null };
  const laid = timetable(course, milking);
  const whys = laid ? gathered.whys : [...gathered.whys, ...timeWhys(course)];
  const notes = [...gathered.notes, ...crowdNotes(gathered, course, laid, wish, farm)];
  return { ...gathered, notes, whys, laid: whys.length > 0 ? null : laid };
}

function crowdNotes(
  { groups }: Pick<Gathered, 'groups'>,
  course: Course,
  laid: Laid | null,
  wish: TripWish,
  farm: TripFarm,
): TripNote[] {
  const rules = farm.rules[bandOfGrade(wish.grade)];
  const notes: TripNote[] = [];
  // Where adults are wanting, the groups are made as if they were there; what holds of these would only confuse.
  const perAdult = Math.max(...groups.map((one) => Math.ceil(one.children / one.adults)));
  if (wish.adults >= leastAdults(wish.children, farm, rules) && perAdult > rules.perAdult.aim)
    notes.push({ kind: 'few adults', perAdult, aim: rules.perAdult.aim });
  const washes = laid === null || laid.beats.some(({ kind }) => kind === 'meal' || kind === 'wash');
  // One party alone takes no turns.
  if (washes && course.wash.inTurn && course.wash.parties.length > 1) {
    const minutes = Math.ceil(washMinutes(wish.children + wish.adults, farm, rules));
    notes.push({ kind: 'wash by party', minutes });
  }
  return notes;
}
