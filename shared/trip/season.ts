// What a day of the coming year allows: milkings to watch, kiddings near. The year itself is computed in `yearAhead.ts`.
import { isMilked, stateOn, wayOn } from './doeOn.ts';
import { usualOn } from './programme.ts';
import type { DayGround, NoMilking, Span, TripFarm } from './types.ts';
import { MILKING_DOE_MIN } from './doeMinutes.ts';
import type { SeasonDoe, TripSeason } from './visitTypes.ts';

/** Days ahead that a season tells: a year, so that the same day next year is in it. */
export const SEASON_DAYS = 370;

// A kidding told by custom may be three weeks off either way. Closing the pen for all of that would shut it for two
// months, so only its middle third counts; the panel says that the day is a guess.
const NARROW_DAYS = 7;

/**
 * What a date (a day number) allows. A doe counts for a milking where she is milked whenever within its range her
 * kidding falls; does under treatment are milked like the others. Each doe is watched for ten minutes, unless the
 * farm names a span of its own for visitors, which takes the place of the early morning.
 */
export function groundOn(farm: TripFarm, season: TripSeason, day: number): DayGround {
  const ways = season.does.map((doe) => wayOn(doe, day));
  const am = ways.filter((way) => way !== null).length;
  const pm = ways.filter((way) => way === 'both').length;
  const isBeyond = day > season.asOf + SEASON_DAYS;
  const milkings = isBeyond
    ? []
    : [
        ...(am > 0 ? [season.shownMilking ?? narrowed(season.milkings.am, am)] : []),
        ...(pm > 0 ? [narrowed(season.milkings.pm, pm)] : []),
      ];
  const usual = isBeyond ? null : usualOn(farm, season, day);
  return {
    milkings,
    noMilking: milkings.length > 0 ? null : isBeyond ? 'unknown' : whyNone(season.does, day),
    doesDue: isBeyond ? 0 : Math.max(am, pm),
    kiddingNear: season.does.some((doe) => isKiddingNear(farm, doe, day)),
    ...(usual && { usual }),
  };
}

const narrowed = ({ from, to }: Span, does: number): Span => ({
  from,
  to: Math.min(to, from + does * MILKING_DOE_MIN),
});

function whyNone(does: readonly SeasonDoe[], day: number): NoMilking {
  if (does.length === 0) return 'no does';
  const states = does.map((doe) => stateOn(doe, day).state);
  if (states.includes('unknown') || states.some(isMilked)) return 'unknown';
  return states.includes('with kids') ? 'with kids' : 'dry';
}

/**
 * Whether her pen is closed on a day: a kidding on record, or one to come with all the days on which it may fall.
 * A day that rests on custom alone counts with the week before and after it.
 */
export function isKiddingNear(
  { kiddingDays: { before, after } }: Pick<TripFarm, 'kiddingDays'>,
  { kiddings, due }: SeasonDoe,
  day: number,
): boolean {
  const isNear = (from: number, to: number) => day >= from - before && day <= to + after;
  if (kiddings.some((one) => isNear(one, one))) return true;
  if (!due) return false;
  if (due.basis === 'common practice') return isNear(due.day - NARROW_DAYS, due.day + NARROW_DAYS);
  return isNear(due.from, due.to);
}
