// The few times of a day that everybody asks for.
import type { DayPlan, SlotKind, Span } from '../types.ts';

/** From the first party's beginning to the last one's end of one kind of slot; null where there is none. */
export function wholeSpan(day: Pick<DayPlan, 'parties'>, kind: SlotKind): Span | null {
  const slots = day.parties.flat().filter((slot) => slot.kind === kind);
  if (slots.length === 0) return null;
  return {
    from: Math.min(...slots.map(({ from }) => from)),
    to: Math.max(...slots.map(({ to }) => to)),
  };
}

/** Whether every party has its slots of this kind at the same time. */
export function isTogether(day: Pick<DayPlan, 'parties'>, kind: SlotKind): boolean {
  const told = day.parties.map((slots) =>
    slots
      .filter((slot) => slot.kind === kind)
      .map(({ from, to }) => `${from}-${to}`)
      .join(),
  );
  return new Set(told).size <= 1;
}
