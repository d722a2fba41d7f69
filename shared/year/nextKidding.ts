// When a doe kids next: as written down, counted from her breeding, or about a year after the last time.
import type { Kidding } from '../herd/types.ts';
import { KIDDING_INTERVAL_DAYS, OWN_INTERVAL_DAYS } from './defaults.ts';
import { dueFrom, GESTATION_DAYS, type DayRange } from './gestation.ts';

/** A breeding that the farm knows of. */
export interface Breeding {
  readonly doe: string;
  /** Day number. */
  readonly day: number;
}

/** What a day rests on, from the surest to the least sure. */
export type Basis = 'book' | 'counted' | 'common practice';

/** The next kidding, or why none can be told. */
export type NextKidding =
  | ({ readonly ok: true; readonly basis: Basis } & DayRange)
  | {
      readonly ok: false;
      readonly why:
        | 'no kidding of hers is in the book'
        | 'her due date has passed without a new row'
        | 'her last kidding is more than a year ago';
    };

/**
 * One doe's next kidding after a day. A kidding that the book dates ahead goes first, then her latest
 * breeding, then the same time next year: after as many days as between her last two kiddings where
 * those are 300 to 430, else 365, a heat cycle sooner or later. That last one is common practice, no
 * promise.
 */
export function nextKidding(
  kiddings: readonly Kidding[],
  breedings: readonly Breeding[],
  asOf: number,
): NextKidding {
  const inOrder = [...kiddings].sort((a, b) => a.day - b.day);
  const ahead = inOrder.find((one) => one.day > asOf);
  if (ahead) {
    const { low, usual, high } = GESTATION_DAYS;
    const range = { day: ahead.day, from: ahead.day - (usual - low), to: ahead.day + (high - usual) };
    return { ok: true, basis: 'book', ...range };
  }
  const last = inOrder.at(-1);
  const bred = [...breedings]
    .filter((one) => one.day <= asOf && (!last || one.day > last.day))
    .sort((a, b) => a.day - b.day)
    .at(-1);
  if (bred) {
    const due = dueFrom(bred.day);
    if (due.to < asOf) return { ok: false, why: 'her due date has passed without a new row' };
    return { ok: true, basis: 'counted', ...due };
  }
  if (!last) return { ok: false, why: 'no kidding of hers is in the book' };
  const { usual, cycle } = KIDDING_INTERVAL_DAYS;
  const own = last.day - (inOrder.at(-2)?.day ?? Number.NaN);
  const interval = own >= OWN_INTERVAL_DAYS.low && own <= OWN_INTERVAL_DAYS.high ? own : usual;
  const day = last.day + interval;
  if (day + cycle < asOf) return { ok: false, why: 'her last kidding is more than a year ago' };
  return { ok: true, basis: 'common practice', day, from: day - cycle, to: day + cycle };
}
