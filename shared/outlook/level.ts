// Follows a doe's level day by day: each whole day moves what is known of her a little.
// The method is a Kalman filter on the logarithm of the day's milk, for three reasons: it weighs recent
// days most without forgetting the older ones, it leans on the common shape only as far as her own days
// say little, and it knows by itself how unsure it is after any gap and at any distance.
import { COMMON_SHAPE, shapeAt, shapeStep } from './shape.ts';
import type { Way } from './outcome.ts';

/** What is known of a doe after her newest whole day. Order: level, b, c, drift, share of a morning; natural logarithms. */
export interface Known {
  readonly mean: readonly number[];
  readonly cov: readonly (readonly number[])[];
  /** Days in milk of the newest whole day; null before the first of this lactation. */
  readonly daysInMilk: number | null;
  /** Days in a row that lay far off on one side, and the side. */
  readonly farOff: number;
  readonly side: number;
}

/** A middle and its spread, both of the natural logarithm of litres. */
export interface Ahead {
  readonly middle_ln: number;
  readonly sd_ln: number;
}

/** A day's least milk that counts, L: zero has no logarithm, and this is as near as matters. */
export const LEAST_L = 0.02;

// One set for every herd, chosen on simulated herds of five shapes and on published daily series of other animals.
const DAY_SD = 0.08; // A day against her level: about 8 %.
const DRIFT_SD = 0.02; // By how much her level wanders from one day to the next.
const DRIFT_KEPT_DAYS = 200; // A drift fades back to her curve over this many days.
const START_SD = 0.3; // Milk comes in over the first days: they say less of what follows,
const START_DAYS = 5; // and the more so the sooner.
const FAR = 1.5; // A day further off than this many spreads counts as this far: a spill, a wrong entry, a sick day;
const FAR_DAYS = 3; // but three in a row on one side are no slip.
const MOST_SD = 1; // Beyond a range of threefold either way a curve says nothing, however far ahead one asks.
const UNKNOWN_LEVEL_SD = 4;
// From one lactation to the next, and from doe to doe within a breed. From memory, no source.
const NEXT_LEVEL_SD = 0.15;
const NEXT_SHAPE_PART = 0.5;
const BREED_SD = 0.35;
// A night apart gives 40 to 60 % of the day's milk (producers' practice, from memory): one half, a fifth either way.
const SHARE = 0.5;
const SHARE_SD = 0.2;

const kept = (days: number) => Math.exp(-days / DRIFT_KEPT_DAYS);
const DRIFT_VAR = DRIFT_SD ** 2 / (1 - kept(1) ** 2);

function dot(x: readonly number[], y: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < x.length; i += 1) sum += (x[i] ?? 0) * (y[i] ?? 0);
  return sum;
}
const times = (cov: Known['cov'], x: readonly number[]) => cov.map((line) => dot(line, x));

function rowOf(daysInMilk: number, way: Way, drift = 1): number[] {
  const at = shapeAt(daysInMilk);
  return [1, at.b, at.c, drift, way === 'am' ? 1 : 0];
}

/** What is known of a doe before any milk of hers: a level from her breed, or none (null), L a day at the anchor. */
export function beforeAnyMilk(level_LPerDay: number | null): Known {
  const { b, c, sd_b, sd_c, together } = COMMON_SHAPE;
  const sd = level_LPerDay === null ? UNKNOWN_LEVEL_SD : BREED_SD;
  const across = together * sd_b * sd_c;
  return {
    mean: [Math.log(level_LPerDay ?? 1), b, c, 0, Math.log(SHARE)],
    cov: [
      [sd ** 2, 0, 0, 0, 0],
      [0, sd_b ** 2, across, 0, 0],
      [0, across, sd_c ** 2, 0, 0],
      [0, 0, 0, DRIFT_VAR, 0],
      [0, 0, 0, 0, SHARE_SD ** 2],
    ],
    daysInMilk: null,
    farOff: 0,
    side: 0,
  };
}

/** What is known at her next kidding: level, shape and share carry over, less surely; the drift does not. */
export function atNextKidding(known: Known): Known {
  const more = [NEXT_LEVEL_SD, COMMON_SHAPE.sd_b * NEXT_SHAPE_PART, COMMON_SHAPE.sd_c * NEXT_SHAPE_PART, 0, SHARE_SD * NEXT_SHAPE_PART]; // prettier-ignore
  return {
    mean: known.mean.map((value, i) => (i === 3 ? 0 : value)),
    cov: known.cov.map((line, i) =>
      line.map((value, j) => {
        if (i === 3 || j === 3) return i === j ? DRIFT_VAR : 0;
        return i === j ? value + (more[i] ?? 0) ** 2 : value;
      }),
    ),
    daysInMilk: null,
    farOff: 0,
    side: 0,
  };
}

/** The same knowledge some days later: the drift fades, and grows unsure again. */
function later(known: Known, days: number): Pick<Known, 'mean' | 'cov'> {
  const left = kept(days);
  const part = (i: number) => (i === 3 ? left : 1);
  return {
    mean: known.mean.map((value, i) => value * part(i)),
    cov: known.cov.map((line, i) =>
      line.map(
        (value, j) => value * part(i) * part(j) + (i === 3 && j === 3 ? DRIFT_VAR * (1 - left ** 2) : 0),
      ),
    ),
  };
}

const dayVar = (daysInMilk: number) => DAY_SD ** 2 + START_SD ** 2 * Math.exp(-daysInMilk / START_DAYS);

/** What is known after a whole day of `amount_L`. Days come in order; a gap between them is no harm. */
export function afterDay(known: Known, daysInMilk: number, way: Way, amount_L: number): Known {
  const { mean, cov } =
    known.daysInMilk === null ? known : later(known, Math.max(daysInMilk - known.daysInMilk, 0));
  const row = rowOf(daysInMilk, way);
  const pull = times(cov, row);
  const spread = dot(row, pull) + dayVar(daysInMilk);
  const miss = Math.log(Math.max(amount_L, LEAST_L)) - dot(row, mean);
  const most = FAR * Math.sqrt(spread);
  const side = Math.abs(miss) > most ? Math.sign(miss) : 0;
  const farOff = side === 0 ? 0 : side === known.side ? known.farOff + 1 : 1;
  const isSlip = side !== 0 && known.daysInMilk !== null && farOff < FAR_DAYS;
  const counted = isSlip ? side * most : miss;
  return {
    mean: mean.map((value, i) => value + ((pull[i] ?? 0) / spread) * counted),
    cov: cov.map((line, i) => line.map((value, j) => value - ((pull[i] ?? 0) * (pull[j] ?? 0)) / spread)),
    daysInMilk,
    farOff,
    side,
  };
}

/** Her level on a day as now known, without the chance of the day itself: natural logarithm of L. */
export function levelOn(known: Known, daysInMilk: number, way: Way): number {
  return dot(rowOf(daysInMilk, way), known.mean);
}

/** Natural logarithm of the part of a full day that her morning after a night apart gives. */
export function shareOf(known: Known): number {
  return known.mean[4] ?? 0;
}

/** The milk of a later day of the same lactation, with the spread of a single day. */
export function ahead(known: Known, daysInMilk: number, way: Way): Ahead {
  const from = known.daysInMilk;
  const start = from ?? 1;
  const left = from === null ? 1 : kept(Math.max(daysInMilk - from, 0));
  const [level = 0, b = 0, c = 0, drift = 0, share = 0] = known.mean;
  const at = shapeAt(start);
  const middle_ln =
    level +
    b * at.b +
    c * at.c +
    shapeStep(b, c, start, daysInMilk) +
    drift * left +
    (way === 'am' ? share : 0);
  const row = rowOf(daysInMilk, way, left);
  const variance = dot(row, times(known.cov, row)) + DRIFT_VAR * (1 - left * left) + dayVar(daysInMilk);
  return { middle_ln, sd_ln: Math.min(Math.sqrt(Math.max(variance, 0)), MOST_SD) };
}
