// A day in numbers: groups, adults, first food, washing, minutes to spare.
import type { DayPlan, Slot } from './types.ts';

/** What a teacher wants to know of a day at one glance. */
export interface DayTotals {
  readonly groups: number;
  readonly children: number;
  /** Adults who lead a group. */
  readonly leaders: number;
  /** The earliest food, minutes after midnight; null where nobody eats. */
  readonly food: number | null;
  /** Everybody's washing, whole minutes, rounded up; 0 on a day in the clean zone without food. */
  readonly wash_min: number;
  /** Waiting of the party that waits least, minutes, without the minutes that the farm keeps free before the buses leave. */
  readonly spare_min: number;
}

/** The numbers of a day on a farm that keeps so many minutes free between loading and leaving. */
export function dayTotals({ groups, parties, wash_min }: DayPlan, busSpare_min: number): DayTotals {
  const food = parties.flat().filter(({ kind }) => kind === 'lunch');
  const sum = (parts: readonly number[]) => parts.reduce((so, one) => so + one, 0);
  const waits = parties.map((slots) => sum(slots.filter(({ kind }) => kind === 'wait').map(lengthOf)));
  return {
    groups: groups.length,
    children: sum(groups.map(({ children }) => children)),
    leaders: sum(groups.map(({ adults }) => adults)),
    food: food.length === 0 ? null : Math.min(...food.map(({ from }) => from)),
    // A double of a whole number of minutes may lie a hair above it.
    wash_min: parties.flat().some(({ kind }) => kind === 'wash') ? Math.ceil(wash_min - 1e-9) : 0,
    // The last minutes on the buses are needed: a day without them would not hold.
    spare_min: waits.length === 0 ? 0 : Math.min(...waits) - busSpare_min,
  };
}

/** How long a slot is, minutes. */
export function lengthOf({ from, to }: Pick<Slot, 'from' | 'to'>): number {
  return to - from;
}

/** Whether a slot is the waiting on the buses between loading and leaving; all parties load at once. */
export function isAboard({ kind, from }: Slot, { parties }: Pick<DayPlan, 'parties'>): boolean {
  return kind === 'wait' && parties.flat().some((slot) => slot.kind === 'load' && slot.to === from);
}

/** Stations whose slot holds a minute, by party; null for a party that is elsewhere. */
export function stationsAt(day: DayPlan, minute: number): (string | null)[] {
  return day.parties.map((slots) => {
    const now = slots.find(({ from, to }) => from <= minute && minute < to);
    return now?.kind === 'station' ? now.station : null;
  });
}

/** The minutes at which a party begins at a station, in order, each once. */
export function roundStarts(day: DayPlan): number[] {
  const starts = day.parties.flatMap((slots) =>
    slots.filter(({ kind }) => kind === 'station').map(({ from }) => from),
  );
  return [...new Set(starts)].sort((a, b) => a - b);
}
