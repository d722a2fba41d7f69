// A doe's year as a strip of phases, with the months beneath: geometry only.
import { civilFromDay, dayFromCivil } from '../calendar/day.ts';
import type { Phase, PhaseSpan } from '../herd/expected.ts';

/** The strip of some days. Lengths are in the unit of `width`. */
export interface PhaseStrip {
  readonly parts: readonly {
    readonly phase: Exclude<Phase, 'none'>;
    readonly x: number;
    readonly width: number;
  }[];
  /** First days of months; `month` is 1 to 12. */
  readonly months: readonly { readonly month: number; readonly x: number; readonly width: number }[];
  /** Place of today; null outside the strip. */
  readonly today: number | null;
}

/** Lays out the phases between two days, both included, along `width`. */
export function phaseStrip(
  spans: readonly PhaseSpan[],
  from: number,
  to: number,
  today: number,
  width: number,
): PhaseStrip {
  const scale = width / (to - from + 1);
  const at = (day: number) => (day - from) * scale;
  const parts = spans.flatMap(({ phase, from: start, to: end }) => {
    const [first, last] = [Math.max(start, from), Math.min(end ?? to, to)];
    return first > last ? [] : [{ phase, x: at(first), width: (last - first + 1) * scale }];
  });
  return {
    parts,
    months: monthsBetween(from, to).map(({ month, first, last }) => ({
      month,
      x: at(first),
      width: (last - first + 1) * scale,
    })),
    today: from <= today && today <= to ? at(today) + scale / 2 : null,
  };
}

function monthsBetween(from: number, to: number): { month: number; first: number; last: number }[] {
  const months = [];
  let first = from;
  while (first <= to) {
    const { year, month } = civilFromDay(first);
    const next = dayFromCivil(month === 12 ? year + 1 : year, (month % 12) + 1, 1);
    months.push({ month, first, last: Math.min(next - 1, to) });
    first = next;
  }
  return months;
}
