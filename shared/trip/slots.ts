// A laid day as each party's slots.
import type { Beat } from './clock.ts';
import { stopIn, type Course } from './course.ts';
import type { Slot } from './types.ts';
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
