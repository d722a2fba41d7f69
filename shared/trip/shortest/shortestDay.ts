// The shortest day that a small group can have on the farm, proven to be so, each party at its own time.
import { dayOf } from './dayOf.ts';
import { search } from './search.ts';
import { smallDay, type SmallCase } from './smallDay.ts';
import type { DayPlan } from '../types.ts';
import type { Steps } from './shop.ts';

/** The most parties and stations that a shortest day is looked for. */
export const MOST_SMALL = 4;
/** Steps of the search unless the caller says otherwise: well under a second. */
export const USUAL_STEPS = 60_000;
/** The most pauses that are put in before the meal, and after it, unless the caller says otherwise. */
export const MOST_PAUSES = 2;

/** A day with the minute at which its loading begins and the first minute at which the buses can then leave. */
export interface OwnDay {
  readonly load: number;
  /** Loading and the farm's spare minutes later. The slots of `day` end here. */
  readonly leave: number;
  readonly day: DayPlan;
}

/** The shortest day; that there is none; or that the search was too long, with the best day so far. */
export type ShortestDay =
  | ({ readonly kind: 'shortest' } & OwnDay)
  | { readonly kind: 'none' }
  | { readonly kind: 'not proven'; readonly best: OwnDay | null };

/**
 * The day on which loading can begin earliest, for up to four parties and four stations; other cases throw.
 *
 * It is the least over all days of this kind, in whole minutes:
 * - Groups, parties and stations are as given. Capacity, closed stations and adults are the caller's to have settled.
 * - Opening as in any plan: unloading, walk, welcome, toilets, with a wait before these where the next chance would
 *   else come too late. All parties are then free at once.
 * - Every party meets every station once, for its minutes, in any order; a station has one party at a time. Before
 *   each station lies a walk of the head count and the longest walk between neighbours of the loop, or the way forward
 *   round the loop, or the way from the taps, where that is longer.
 * - All visits of a station where does are milked lie within one and the same time of milking.
 * - Where people eat: each party walks to the taps, washes and eats once. All wash and eat at once where washing
 *   is not longer than `washTogether_min`; else party 0 washes first, then 1, …, each so that it sits down right
 *   after, and as soon as there are seats. The first food starts within the wished time and the farm's slack after it.
 * - Pauses for toilets are common to all parties and come before the last washing: at most `pauses` before and as
 *   many after the meal, twice as many where nobody eats. From arrival to the first chance, from the end of one to the
 *   start of the next, and from the last one to the leaving of the buses no more than `toiletWithin_min` pass. The
 *   buses leave as soon as they are loaded and the farm's spare minutes are over, and not after the wished time.
 * - Everybody washes before leaving where any party meets a station outside the clean zone after its meal (or where
 *   there is no meal); all at once, or by party in the order in which they come. Then the walk to the gate, then
 *   loading, for all at once.
 */
export function shortestDay(
  small: SmallCase,
  most: number = USUAL_STEPS,
  pauses: number = MOST_PAUSES,
): ShortestDay {
  const day = smallDay(small);
  if (day.parties > MOST_SMALL || day.minutes.length > MOST_SMALL || day.minutes.length === 0)
    throw new Error(`${day.parties} parties at ${day.minutes.length} stations are no small case.`);
  const steps: Steps = { left: most };
  const found = search(day, pauses, steps);
  if (found === null) return steps.left < 0 ? { kind: 'not proven', best: null } : { kind: 'none' };
  const load = found.times.load;
  const own = { load, leave: load + day.load_min + day.busSpare_min, day: dayOf(small, day, found) };
  return steps.left < 0 ? { kind: 'not proven', best: own } : { kind: 'shortest', ...own };
}
