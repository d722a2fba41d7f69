// What a doe likely gave at one milking that has no entry, from her own other milkings: marked as an estimate.
import { milkingsOf, phaseOn } from '../herd/expected.ts';
import { litres, type Ledger } from '../herd/ledger.ts';
import type { MilkingTime } from '../herd/types.ts';

/** The milkings of a doe's day, L; null where there is no entry. */
export interface DayMilkings {
  readonly am: number | null;
  readonly pm: number | null;
}

/** What an estimate stands on: the other milking of that day, the days beside, or both. */
export type EstimateBase = 'otherMilking' | 'daysBeside' | 'both';

/** An estimate of one milking, or why there is none. It never enters a total. */
export type MissedMilking =
  | {
      readonly ok: true;
      readonly estimate: true;
      readonly estimate_L: number;
      /** Eight in ten such estimates of her other days came within this of the truth. */
      readonly low_L: number;
      readonly high_L: number;
      readonly from: EstimateBase;
      /** Her morning's part of the day, where it was used. */
      readonly amShare: number | null;
      /** Her own days on which the rule was tried. */
      readonly triedOn: number;
    }
  | { readonly ok: false; readonly why: 'entered' | 'notExpected' | 'noMilkBeside' | 'tooFewDays' };

/** Days on either side from which her share and the range are taken. Common practice, no source. */
export const SHARE_DAYS = 14;
/** Days on either side in which a neighbour is looked for. Common practice, no source. */
export const BESIDE_DAYS = 3;
/** Days at least on which the rule can be tried. Common practice, no source. */
export const FEWEST_DAYS = 5;

const OTHER: Readonly<Record<MilkingTime, MilkingTime>> = { am: 'pm', pm: 'am' };
type Days = ReadonlyMap<number, DayMilkings>;

// A ledger never changes once it is open, and pages ask of the same one doe by doe.
const laidOut = new WeakMap<Ledger, ReadonlyMap<string, Days>>();

/** The milkings of every doe by day, up to the book's day; laid out once for each ledger. */
export function milkingsByDoe(ledger: Ledger): ReadonlyMap<string, Days> {
  const before = laidOut.get(ledger);
  if (before) return before;
  const grain_L = litres(ledger, 1n);
  const does = new Map<string, Map<number, DayMilkings>>();
  for (const { row, grains } of ledger.entries) {
    let days = does.get(row.doe);
    if (days === undefined) does.set(row.doe, (days = new Map<number, DayMilkings>()));
    const own = days.get(row.day) ?? { am: null, pm: null };
    days.set(row.day, { ...own, [row.milking]: Number(grains) * grain_L });
  }
  laidOut.set(ledger, does);
  return does;
}

/**
 * Estimates a milking that was expected of a doe and has no entry: the mean of two guesses, of either
 * where the other cannot be had. One is the day's other milking through her own morning's share of the
 * fourteen days about; the other lies on a straight line between the same milking of the days beside.
 * The range holds eight in ten: it comes from the same rule tried on her own days that have the entry.
 */
export function missedMilking(
  ledger: Ledger,
  days: Days,
  doe: string,
  day: number,
  milking: MilkingTime,
): MissedMilking {
  const spans = ledger.phases.get(doe) ?? [];
  const phase = phaseOn(spans, day);
  if (!milkingsOf(phase).includes(milking) || day > ledger.asOf) return { ok: false, why: 'notExpected' };
  if (typeof days.get(day)?.[milking] === 'number') return { ok: false, why: 'entered' };
  const near = nearDays(days, day, (other) => phaseOn(spans, other) === phase);
  const guess = guessAt(near, day, milking, 'both');
  if (guess === null) return { ok: false, why: 'noMilkBeside' };
  const misses = [...near].flatMap(([other, milkings]) => {
    const truth = other === day ? null : milkings[milking];
    // Tried with the same means as the day in question has; no guess looks at the milking it is for.
    const tried = guessAt(near, other, milking, guess.from);
    return truth === null || tried?.from !== guess.from ? [] : [tried.value - truth];
  });
  if (misses.length < FEWEST_DAYS) return { ok: false, why: 'tooFewDays' };
  const spread = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
  const half = spread * eightInTen(misses.length);
  return {
    ok: true,
    estimate: true,
    estimate_L: guess.value,
    low_L: Math.max(0, guess.value - half),
    high_L: guess.value + half,
    from: guess.from,
    amShare: guess.amShare,
    triedOn: misses.length,
  };
}

function nearDays(days: Days, day: number, samePhase: (day: number) => boolean): Map<number, DayMilkings> {
  const near = new Map<number, DayMilkings>();
  for (let other = day - SHARE_DAYS; other <= day + SHARE_DAYS; other += 1) {
    const milkings = days.get(other);
    if (milkings && samePhase(other)) near.set(other, milkings);
  }
  return near;
}

function guessAt(
  days: Days,
  day: number,
  milking: MilkingTime,
  means: EstimateBase,
): { value: number; from: EstimateBase; amShare: number | null } | null {
  const amShare = means === 'daysBeside' ? null : shareOf(days, day);
  const other = days.get(day)?.[OTHER[milking]] ?? null;
  const share = amShare === null ? null : milking === 'am' ? amShare : 1 - amShare;
  const byShare = other === null || share === null ? null : (other * share) / (1 - share);
  const beside = means === 'otherMilking' ? null : besideOf(days, day, milking);
  if (byShare !== null && beside !== null) return { value: (byShare + beside) / 2, from: 'both', amShare };
  if (byShare !== null) return { value: byShare, from: 'otherMilking', amShare };
  return beside === null ? null : { value: beside, from: 'daysBeside', amShare: null };
}

/** Her morning's part of her whole days about a day; null where one milking gave all, or days are too few. */
function shareOf(days: Days, day: number): number | null {
  let [am, all, whole] = [0, 0, 0];
  for (const [other, milkings] of days) {
    if (other === day || milkings.am === null || milkings.pm === null) continue;
    am += milkings.am;
    all += milkings.am + milkings.pm;
    whole += 1;
  }
  const share = all > 0 ? am / all : 0;
  return whole >= FEWEST_DAYS && share > 0 && share < 1 ? share : null;
}

/** On a straight line between the same milking of the nearest days on both sides, or of the one side that has it. */
function besideOf(days: Days, day: number, milking: MilkingTime): number | null {
  const [before, after] = [-1, 1].map((side) => {
    for (let away = 1; away <= BESIDE_DAYS; away += 1) {
      const value = days.get(day + side * away)?.[milking] ?? null;
      if (value !== null) return { away, value };
    }
    return null;
  });
  if (before && after)
    return (before.value * after.away + after.value * before.away) / (before.away + after.away);
  return before?.value ?? after?.value ?? null;
}

/**
 * How many times the spread of `n` misses holds eight in ten: Student's t at 0.90, by the first terms of
 * its expansion. Source: Abramowitz & Stegun, 26.7.5 (from memory).
 */
function eightInTen(n: number): number {
  return 1.2815516 + 0.8465841 / n + 0.5709 / (n * n);
}
