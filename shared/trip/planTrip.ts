// A school's day on the farm, from what its teacher asks for: the timetable, or every reason against it and what would help.
import { draftDay } from './draft.ts';
import { emptyMemo } from './gathered.ts';
import { spareAdults } from './groups.ts';
import { ownDay, ownNotes } from './own.ts';
import { slotsOf } from './slots.ts';
import { washMinutes } from './wash.ts';
import { bandOfGrade } from '../tasks/grades.ts';
import type { DayGround, TripFarm, TripPlan, TripWish } from './types.ts';
import { waysFor } from './ways.ts';
import { wishFaults } from './wishFaults.ts';

/**
 * The day of a wish on a farm whose book says `ground` of the date: groups with their adults and each party's slots
 * by the minute; or every reason why there is none, with the smallest changes that were planned again and hold.
 * Rotation is cyclic along the farm's loop; few parties that only so fit keep each its own time. Takes any wish: fields that cannot be are reasons too. Looking for changes
 * takes far longer than the day itself; `without ways` leaves them out, so that a page can show the rest first.
 */
export function planTrip(
  wish: TripWish,
  farm: TripFarm,
  ground: DayGround,
  seek: 'ways' | 'without ways' = 'ways',
): TripPlan {
  const faults = wishFaults(wish, farm);
  if (faults.length > 0)
    return { ok: false, whys: faults.map((field) => ({ kind: 'wish', field })), ways: [], notes: [] };
  const memo = emptyMemo();
  const draft = draftDay(wish, farm, ground, memo);
  const { notes, course, laid, groups, stops, whys } = draft;
  if (!course || !laid) {
    const day = ownDay(wish, farm, ground, draft);
    if (day) return { ok: true, day, notes: ownNotes(notes, day) };
    const ways = seek === 'ways' ? waysFor({ wish, farm }, ground, draft, memo) : [];
    return { ok: false, whys, ways, notes };
  }
  const wash_min = washMinutes(wish.children + wish.adults, farm, farm.rules[bandOfGrade(wish.grade)]);
  return {
    ok: true,
    day: {
      groups,
      spare: spareAdults(wish.children, farm),
      parties: slotsOf(course, laid.beats),
      stations: stops.map(({ station }) => station.id),
      roundsBefore: laid.roundsBefore,
      manner: 'loop',
      wash_min,
    },
    notes,
  };
}
