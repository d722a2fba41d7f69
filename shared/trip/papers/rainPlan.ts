// The rain plan beside the plan for a fine day: which stations change, and which times.
import type { DayPlan, Slot, SlotKind, Span } from '../types.ts';
import { rainNotes } from './applies.ts';
import { wholeSpan } from './keyTimes.ts';
import type { TripCase } from './types.ts';

/** A station of the fine day, and what stands in its place in rain; null where nothing does. */
export interface RainSwap {
  readonly fine: string;
  readonly wet: string | null;
}

/** A time of the day by both plans; null where the plan has no such time. */
export interface TimePair {
  readonly kind: SlotKind;
  readonly fine: Span | null;
  readonly wet: Span | null;
}

/** Both plans beside each other. */
export interface RainPlan {
  /** Which of the two the other papers are written for. */
  readonly written: 'fine' | 'wet';
  readonly fine: DayPlan | null;
  readonly wet: DayPlan | null;
  readonly swaps: readonly RainSwap[];
  readonly times: readonly TimePair[];
  /** Whether every group keeps its times, so that only places change. */
  readonly sameTimes: boolean;
}

const KINDS: readonly SlotKind[] = ['welcome', 'toilets', 'station', 'lunch', 'wash', 'load'];

/** The rain plan of a visit. */
export function rainPlan(trip: TripCase): RainPlan {
  const other = trip.otherWeather.ok ? trip.otherWeather.day : null;
  const [fine, wet] = trip.wish.rain ? [other, trip.day] : [trip.day, other];
  const times = KINDS.map((kind) => ({
    kind,
    fine: fine && wholeSpan(fine, kind),
    wet: wet && wholeSpan(wet, kind),
  }));
  return {
    written: trip.wish.rain ? 'wet' : 'fine',
    fine,
    wet,
    swaps: swapsOf(trip),
    times: times.filter((pair) => pair.fine !== null || pair.wet !== null),
    sameTimes: fine !== null && wet !== null && timesOf(fine) === timesOf(wet),
  };
}

/** The same visit in the other weather, for cards that hold then; null where there is no such day. */
export function inOtherWeather(trip: TripCase): TripCase | null {
  const { wish, day, notes, otherWeather } = trip;
  if (!otherWeather.ok) return null;
  return {
    ...trip,
    wish: { ...wish, rain: !wish.rain },
    day: otherWeather.day,
    notes: otherWeather.notes,
    otherWeather: { ok: true, day, notes },
  };
}

/** What the rain plan says of the stations that it changes. */
function swapsOf(trip: TripCase): RainSwap[] {
  const { wish, day, farm } = trip;
  const swaps = rainNotes(trip).map((note): RainSwap => {
    return { fine: note.station, wet: note.kind === 'stand-in' ? note.by : null };
  });
  if (wish.rain) return swaps;
  // A station under the open sky that no note speaks of has no place in rain.
  const open = farm.stations.filter(({ id, roofed }) => !roofed && day.stations.includes(id));
  const silent = open.filter(({ id }) => !swaps.some(({ fine }) => fine === id));
  return [...swaps, ...silent.map(({ id }) => ({ fine: id, wet: null }))];
}

/** The times of all parties as one text, whatever the stations. */
function timesOf({ parties }: DayPlan): string {
  return JSON.stringify(parties.map((slots) => slots.map(({ kind, from, to }) => [kind, from, to])));
}

/** Whether a party's slot of the other plan differs from what the day has it do at that time. */
export function isElsewhere({ parties }: DayPlan, party: number, slot: Slot): boolean {
  if (slot.kind === 'walk') return false;
  const same = (one: Slot): boolean =>
    one.kind === slot.kind && one.from === slot.from && one.to === slot.to && one.station === slot.station;
  return !parties[party]?.some(same);
}
