// A day on which each party keeps its own time, for few parties at few stations where the loop in step does not fit.
import type { Draft } from './draft.ts';
import { spareAdults } from './groups.ts';
import { MOST_SMALL, shortestDay } from './shortest/shortestDay.ts';
import type { DayGround, DayPlan, Slot, TripFarm, TripNote, TripWish } from './types.ts';

// The page asks at every key, so the search may not be long; where it is cut off the day is as good as it got.
const STEPS = 1500;

/** A day in manner `own` where one fits though the loop does not; null where none was found. */
export function ownDay(wish: TripWish, farm: TripFarm, ground: DayGround, draft: Draft): DayPlan | null {
  const { course, groups, stops } = draft;
  if (!course || wish.stations.length === 0 || !mayHelp(draft)) return null;
  const stations = stops.map((stop) => ({ id: stop.station.id, for: stop.for }));
  const spare = spareAdults(wish.children, farm);
  const found = shortestDay({ wish, farm, ground, groups, spare, stations }, STEPS);
  const own = found.kind === 'not proven' ? found.best : found.kind === 'shortest' ? found : null;
  if (!own || own.leave > wish.leave) return null;
  const parties = own.day.parties.map((slots) => stretched(slots, wish.leave - own.leave));
  const { toiletWithin } = course;
  if (parties.some((slots) => wish.leave - lastChance(slots) > toiletWithin)) return null;
  return { ...own.day, parties };
}

/** The notes of a day in manner `own`: as those of the loop, but for washing where nobody washes. */
export function ownNotes(notes: readonly TripNote[], day: DayPlan): TripNote[] {
  const washes = day.parties.some((slots) => slots.some(({ kind }) => kind === 'wash'));
  return notes.filter(({ kind }) => washes || kind !== 'wash by party');
}

/**
 * Whether parties would gain by not waiting for each other: time alone is short, and by no more than what is waited
 * in rounds as long as their longest station.
 */
function mayHelp({ whys, stops, course, groups }: Draft): boolean {
  if (!course || stops.length > MOST_SMALL || course.parties > MOST_SMALL || groups.length === 0)
    return false;
  const short = whys.map((why) => (why.kind === 'time' ? why.needs_min - why.is_min : Infinity));
  const rounds = course.rounds.reduce((sum, one) => sum + one, 0);
  const own = course.minutes.reduce((sum, one) => sum + one, 0);
  return Math.max(...short) <= rounds - own;
}

/** The day with more waiting before the way back. */
function stretched(slots: readonly Slot[], minutes: number): Slot[] {
  if (minutes === 0) return [...slots];
  const bus = slots.findLastIndex(({ kind }) => kind !== 'wait' && kind !== 'load' && kind !== 'walk') + 1;
  const home = slots.findIndex(({ kind }, at) => at >= bus && kind !== 'wait');
  const start = home < 0 ? slots.length : home;
  const later = slots
    .slice(start)
    .map((slot) => ({ ...slot, from: slot.from + minutes, to: slot.to + minutes }));
  const before = slots.slice(0, start);
  const from = before.at(-1)?.kind === 'wait' ? before.pop()!.from : (before.at(-1)?.to ?? 0);
  const to = later[0]?.from ?? (slots.at(-1)?.to ?? 0) + minutes;
  return [...before, { kind: 'wait', from, to, station: null, for: null }, ...later];
}

function lastChance(slots: readonly Slot[]): number {
  return slots.findLast(({ kind }) => kind === 'toilets' || kind === 'lunch')?.to ?? 0;
}
