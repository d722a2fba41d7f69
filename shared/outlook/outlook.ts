// The milk to expect from each doe and from the herd on a coming day, with a range.
import type { Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import { BREED_YEARS, type BreedYear } from './breeds.ts';
import { eventOn, kiddingOn, wayOf } from './events.ts';
import { followHerd, type FollowedDoe, type FollowedHerd } from './follow.ts';
import { ahead, atNextKidding, levelOn, shareOf, type Known } from './level.ts';
import type { Basis, Caution, DayOutlook, DoeEvent, DoeOutlook, HerdOutlook, NoOutlook, Parts, Way } from './outcome.ts'; // prettier-ignore
import { ANCHOR_DAYS, USUAL_DAYS } from './shape.ts';
import { wideningFor, Z80 } from './spread.ts';
import { herdRange, togetherOf, type Together } from './together.ts';

// Days with milkings expected but none whole, after which a doe's own milk no longer tells of her.
const SILENT_DAYS = 21;

/** An outlook that may be asked for any number of days. */
export interface Outlook {
  readonly asOf: number;
  /** What to expect on a day after `asOf`. */
  on(day: number): DayOutlook;
}

/** The outlook of a book as its ledger stands. `breeds` serves does without milk of their own. */
export function openOutlook(book: Book, ledger: Ledger, breeds: readonly BreedYear[] = BREED_YEARS): Outlook {
  const herd = followHerd(book, ledger, breeds);
  const together = togetherOf(herd);
  return { asOf: herd.asOf, on: (day) => dayOutlook(herd, together, day) };
}

/** The outlook of a book for each of some coming days, in their order. Days that are not coming say so. */
export function outlook(
  book: Book,
  ledger: Ledger,
  days: readonly number[],
  breeds: readonly BreedYear[] = BREED_YEARS,
): DayOutlook[] {
  const opened = openOutlook(book, ledger, breeds);
  return days.map((day) => opened.on(day));
}

function dayOutlook(herd: FollowedHerd, together: Together, day: number): DayOutlook {
  const does = herd.does.map((doe) => doeOutlook(doe, herd.asOf, day));
  return { day, does, herd: herdOutlook(herd, together, does, day) };
}

function herdOutlook(
  herd: FollowedHerd,
  together: Together,
  does: readonly DoeOutlook[],
  day: number,
): HerdOutlook {
  if (day <= herd.asOf) return { ok: false, why: 'not coming' };
  if (does.length === 0) return { ok: false, why: 'no does' };
  const told = does.filter((one) => one.ok);
  if (told.length === 0) return { ok: false, why: 'no doe has an outlook' };
  const milked = told.filter((one) => one.basis !== null);
  const members = milked.map(({ middle_L, spread }) => ({
    middle_L,
    sd_ln: spread ? spread.model_ln * spread.factor : 0,
  }));
  const { factor, errors } = wideningFor(together.widenings, day - herd.asOf);
  return {
    ok: true,
    ...herdRange(members, together.alike, factor),
    does: milked.map(({ doe }) => doe),
    without: does.filter((one) => !one.ok).map(({ doe }) => doe),
    alike: together.alike,
    factor,
    errors,
  };
}

function doeOutlook(doe: FollowedDoe, asOf: number, day: number): DoeOutlook {
  const no = (why: NoOutlook): DoeOutlook => ({ ok: false, doe: doe.id, why });
  if (day <= asOf) return no({ kind: 'not coming', asOf });
  if (doe.kiddings.length === 0 && doe.rows > 0) return no({ kind: 'no kidding', rows: doe.rows });
  const event = eventOn(doe.kiddings, doe.spans, day);
  const way = wayOf(event);
  const kidding = kiddingOn(doe.kiddings, day);
  if (way === null || kidding === null) return noMilk(doe, event);
  const isNow = kidding.day === doe.kidding;
  if (isNow && doe.silent_days >= SILENT_DAYS)
    return no({ kind: 'silent', newest: doe.newest?.day ?? null, expected_days: doe.silent_days });
  const basis = isNow ? doe.basis : doe.nextBasis;
  if (basis === null) return no({ kind: 'no figures', breed: doe.breed });
  return milk(doe, event, basis, {
    asOf,
    day,
    way,
    kidding: kidding.day,
    isNow,
    hasDry: kidding.dry !== null,
  });
}

function noMilk(doe: FollowedDoe, event: DoeEvent): DoeOutlook {
  const none = { basis: null, parts: null, spread: null, cautions: [] };
  return { ok: true, doe: doe.id, middle_L: 0, low_L: 0, high_L: 0, event, ...none };
}

interface Asked {
  readonly asOf: number;
  readonly day: number;
  readonly way: Way;
  readonly kidding: number;
  /** Whether the day lies in the lactation that has begun. */
  readonly isNow: boolean;
  readonly hasDry: boolean;
}

function milk(doe: FollowedDoe, event: DoeEvent, basis: Basis, asked: Asked): DoeOutlook {
  const daysInMilk = asked.day - asked.kidding;
  // Kiddings to come before the one asked about each add a year in which she may have changed.
  const since = doe.kidding ?? doe.kiddings[0]?.day ?? asked.kidding;
  const between = doe.kiddings.filter(({ day }) => since < day && day <= asked.kidding);
  const known = between.reduce(atNextKidding, doe.known);
  const { middle_ln, sd_ln } = ahead(known, daysInMilk, asked.way);
  const distance = asked.day - (doe.newest?.day ?? asked.asOf);
  const { factor, errors } = asked.isNow ? wideningFor(doe.widenings, distance) : { factor: 1, errors: 0 };
  const middle_L = Math.exp(middle_ln);
  const wide = Math.exp(Z80 * sd_ln * factor);
  const cautions: Caution[] =
    daysInMilk > USUAL_DAYS && !asked.hasDry
      ? [{ kind: 'long lactation', daysInMilk, usual_days: USUAL_DAYS }]
      : [];
  return {
    ok: true,
    doe: doe.id,
    middle_L,
    low_L: middle_L / wide,
    high_L: middle_L * wide,
    event,
    basis,
    parts: partsOf(known, middle_ln, asked.way, doe.newest && asked.isNow ? doe.newest.way : asked.way),
    spread: { model_ln: sd_ln, factor, errors },
    cautions,
  };
}

/** The factors of a middle: her level on the day it was last known (or at the anchor), curve, change of milking. */
function partsOf(known: Known, middle_ln: number, way: Way, levelWay: Way): Parts {
  const level_daysInMilk = known.daysInMilk ?? ANCHOR_DAYS;
  const level_ln = levelOn(known, level_daysInMilk, levelWay);
  const share = shareOf(known);
  const change_ln = (way === 'am' ? share : 0) - (levelWay === 'am' ? share : 0);
  return {
    level_LPerDay: Math.exp(level_ln),
    level_daysInMilk,
    level_way: levelWay,
    curve: Math.exp(middle_ln - level_ln - change_ln),
    change: Math.exp(change_ln),
  };
}
