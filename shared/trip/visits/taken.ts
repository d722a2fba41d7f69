// When the farm is taken, without a word of by whom: all that a page which anybody may read tells of other visits.
import type { Visit, VisitState } from '../visitTypes.ts';
import type { Span } from '../types.ts';

/** A span of a date in which another group is on the farm. */
export interface TakenSpan extends Span {
  /** ISO date. */
  readonly date: string;
  readonly children: number;
}

// A visit that is only asked for holds no place yet, and one that was called off none any more.
const TAKING: readonly VisitState[] = ['agreed', 'held'];

/** The spans that agreed visits take, by date and time. They name no school. */
export function takenSpans(visits: readonly Pick<Visit, 'state' | 'wish'>[]): TakenSpan[] {
  return visits
    .filter(({ state }) => TAKING.includes(state))
    .map(({ wish: { date, arrive, leave, children } }) => ({ date, from: arrive, to: leave, children }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.from - b.from || a.to - b.to));
}

/**
 * The spans of one date, in order of time.
 * @example takenOn([{ date: '2026-05-27', from: 570, to: 720, children: 24 }], '2026-05-28') // => []
 */
export function takenOn(taken: readonly TakenSpan[], date: string): readonly TakenSpan[] {
  return taken.filter((one) => one.date === date);
}
