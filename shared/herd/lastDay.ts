// The last day and the window: which week the figures speak of.
import { isWhole, type Ledger } from './ledger.ts';
import type { Window } from './types.ts';

/** Days, `asOf` included, in which a herd with entries counts as milking. */
export const RECENT_DAYS = 14;
/** Days in the window that ends on the last day. */
export const WINDOW_DAYS = 7;

/** `empty` where the book holds no milk up to `asOf`. */
export type HerdState = 'milking' | 'resting' | 'empty';

/** The day the figures stand on. */
export interface LastDay {
  readonly state: HerdState;
  /** Day number of the last day; null in an empty book. */
  readonly day: number | null;
  readonly wholeDay: boolean;
  readonly window: Window | null;
}

/**
 * Finds the last day: the newest whole day up to `asOf`. Where none lies in the 14 days that end on
 * `asOf` but there are entries in them, it is the newest day with an entry, and not whole. A book
 * without any whole day falls back on its newest entry, so that a thin book still tells its milk.
 * The herd is resting when the last day lies 14 or more days before `asOf`.
 * Source: the farm folder's contract.
 */
export function findLastDay(ledger: Ledger): LastDay {
  let newestWhole: number | null = null;
  let newestEntry: number | null = null;
  for (const [day, sum] of ledger.herdDays) {
    if (sum.rows > 0 && (newestEntry === null || day > newestEntry)) newestEntry = day;
    if (isWhole(sum) && (newestWhole === null || day > newestWhole)) newestWhole = day;
  }
  const isRecent = (day: number | null) => day !== null && ledger.asOf - day < RECENT_DAYS;
  const whole = isRecent(newestWhole) || (newestWhole !== null && !isRecent(newestEntry));
  const day = whole ? newestWhole : newestEntry;
  if (day === null) return { state: 'empty', day: null, wholeDay: false, window: null };
  return {
    state: isRecent(day) ? 'milking' : 'resting',
    day,
    wholeDay: whole,
    window: { from: day - WINDOW_DAYS + 1, to: day },
  };
}
