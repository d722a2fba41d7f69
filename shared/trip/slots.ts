// A laid day as each party's slots, and readers of them: a group's day, who is where at a minute, what is in use when.
import type { Beat } from './clock.ts';
import { stopIn, type Course } from './course.ts';
import type { DayPlan, Group, Slot, Span, TripFarm } from './types.ts';
import type { Turns } from './wash.ts';

/** The slots of each party, from arriving to leaving without a gap. */
export function slotsOf(course: Course, beats: readonly Beat[]): Slot[][] {
  return Array.from({ length: course.parties }, (_, party) =>
    joined(beats.flatMap((beat) => slotsIn(beat, party, course))),
  );
}

/** Waiting that follows waiting is one. */
function joined(slots: readonly Slot[]): Slot[] {
  const all: Slot[] = [];
  for (const slot of slots) {
    const before = all.at(-1);
    if (slot.kind === 'wait' && before?.kind === 'wait') all[all.length - 1] = { ...before, to: slot.to };
    else all.push(slot);
  }
  return all;
}

function slotsIn({ kind, from, to, round }: Beat, party: number, course: Course): Slot[] {
  if (kind === 'meal') return turnSlots(course.meal, party, from, to);
  if (kind === 'wash') return turnSlots(course.wash, party, from, to);
  if (round < 0) return [{ kind, from, to, station: null, for: null }];
  const stop = course.stops[stopIn(party, round, course.stops.length)]!;
  return [{ kind, from, to, station: stop.station.id, for: stop.for }];
}

/** A party's turn at the taps and, where it eats, at the table, with its waiting before and after. */
function turnSlots(turns: Turns, party: number, from: number, to: number): Slot[] {
  const turn = turns.parties[party]!;
  const slot = (kind: Slot['kind'], start: number, end: number): Slot[] =>
    end > start ? [{ kind, from: start, to: end, station: null, for: null }] : [];
  return [
    ...slot('wait', from, from + turn.wash),
    ...slot('wash', from + turn.wash, from + turn.washed),
    ...slot('lunch', from + turn.washed, from + turn.eaten),
    ...slot('wait', from + turn.eaten, to),
  ];
}

/** The day of one group: the slots of its party. */
export function slotsOfGroup(day: DayPlan, group: Group): readonly Slot[] {
  return day.parties[group.party] ?? [];
}

/** What a party does at a minute after midnight; null before it arrives and after it has left. */
export function slotAt(day: DayPlan, party: number, minute: number): Slot | null {
  return day.parties[party]?.find(({ from, to }) => from <= minute && minute < to) ?? null;
}

/** A place of the farm in use by one party. */
export interface TripUse extends Span {
  /** `milking`: a station where a doe is milked. */
  readonly kind: 'station' | 'milking' | 'taps' | 'toilets' | 'seats';
  /** The station; null for taps, toilets and seats. */
  readonly station: string | null;
  readonly party: number;
  readonly children: number;
  /** Children and the adults of their groups. */
  readonly people: number;
}

const PLACES = { wash: 'taps', toilets: 'toilets', lunch: 'seats' } as const;

/** Which stations, taps, toilets and seats are in use when, and by how many; in order of time. */
export function tripSpans(day: DayPlan, farm: TripFarm): TripUse[] {
  const milking = new Set(farm.stations.filter((one) => one.milking).map(({ id }) => id));
  const uses = day.parties.flatMap((slots, party) => {
    const groups = day.groups.filter((one) => one.party === party);
    const children = groups.reduce((sum, one) => sum + one.children, 0);
    const people = groups.reduce((sum, one) => sum + one.adults, children);
    return slots.flatMap(({ kind, from, to, station }): TripUse[] => {
      const shared = { from, to, party, children, people };
      if (kind === 'station' && station !== null)
        return [{ kind: milking.has(station) ? 'milking' : 'station', station, ...shared }];
      if (kind !== 'wash' && kind !== 'toilets' && kind !== 'lunch') return [];
      return [{ kind: PLACES[kind], station: null, ...shared }];
    });
  });
  return uses.sort((a, b) => a.from - b.from || a.party - b.party);
}
