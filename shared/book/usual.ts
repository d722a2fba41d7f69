// What a doe usually gives at a milking, and when an amount is so far from it that the page asks once.
import Fraction from 'fraction.js';
import { dayNumber } from '../calendar/day.ts';
import { amount_mL, type Amount } from '../quantity/amount.ts';
import { UNIT_ML, type AmountUnit } from '../quantity/units.ts';
import { isAfter, type Milking } from './nextMilking.ts';
import type { BookRow } from './types.ts';

/** Most earlier milkings that the usual amount stands on. */
export const LOOKS_BACK = 7;

/**
 * A goat's test day that is more than this above what is expected is an error, lb.
 * Source: AIPL (USDA), change note of May 2004 to the edits of goat records: 12 lb above the expected yield.
 */
export const MOST_ABOVE_USUAL_lb = 12;
/** Without a history the same note's limit is this, lb. Both are a whole day's, so one milking is well below them. */
export const MOST_WITHOUT_HISTORY_lb = 15;

/** What she usually gives at this milking. */
export interface Usual {
  /** Median of her last milkings of the same time of day, mL, exact. */
  readonly middle_mL: Fraction;
  /** An amount below or above these is asked about once, mL. */
  readonly low_mL: Fraction;
  readonly high_mL: Fraction;
  /** Milkings that it stands on, at most seven. */
  readonly milkings: number;
}

/** What there is to say of an amount before it is put down. `too much` is refused; `less` and `more` ask once. */
export type AmountVerdict = 'fine' | 'less' | 'more' | 'too much';

/**
 * The usual amount of a doe at a milking, from the rows before it; null where there is none. Whatever became of the
 * milk, she gave it.
 *
 * The band is the median and three scaled median absolute deviations to each side (1.4826 makes the deviation that of
 * a normal spread: Rousseeuw and Croux 1993; three of them: Leys et al. 2013; both from memory), but at least 30 % of
 * the median and half a US cup, since a jug is read by eye (common practice, no source); and never wider above than
 * the limit for goats' test days.
 */
export function usualOf(rows: readonly BookRow[], doe: string, at: Milking): Usual | null {
  const earlier = rows
    .flatMap((row) => {
      const day = dayNumber(row.date);
      if (row.doe !== doe || row.milking !== at.milking || day === null) return [];
      return isAfter(at, { day, milking: row.milking }) ? [{ day, amount: amount_mL(row.amount) }] : [];
    })
    .sort((a, b) => b.day - a.day)
    .slice(0, LOOKS_BACK)
    .map(({ amount }) => amount);
  if (earlier.length === 0) return null;
  const middle = median(earlier);
  const spread = median(earlier.map((one) => one.sub(middle).abs()));
  const reach = largest([spread.mul(SCALE).mul(3), middle.mul(3, 10), UNIT_ML.cup.div(2)]);
  const low = middle.sub(reach);
  const most = UNIT_ML.lb.mul(MOST_ABOVE_USUAL_lb);
  return {
    middle_mL: middle,
    low_mL: low.compare(0) < 0 ? new Fraction(0) : low,
    high_mL: middle.add(reach.compare(most) > 0 ? most : reach),
    milkings: earlier.length,
  };
}

const SCALE = new Fraction('1.4826');

const largest = (all: readonly Fraction[]): Fraction =>
  all.reduce((most, one) => (one.compare(most) > 0 ? one : most));

/** The middle of some amounts, or the mean of the two in the middle. */
function median(all: readonly Fraction[]): Fraction {
  const inOrder = [...all].sort((a, b) => a.compare(b));
  const half = inOrder.length >> 1;
  const [below, above] = [inOrder[half - 1], inOrder[half]];
  if (!above) throw new Error('There is no middle of no amounts.');
  return inOrder.length % 2 === 1 || !below ? above : below.add(above).div(2);
}

/** The usual amount as the pad offers it: in the unit of the pad, at its nearest step, halves up. */
export function usualAmount(usual: Usual, unit: AmountUnit, step: Fraction): Fraction {
  return usual.middle_mL.div(UNIT_ML[unit]).div(step).add(1, 2).floor().mul(step);
}

/** What there is to say of an amount before it is put down. */
export function judgeAmount(
  amount: Amount,
  usual: Usual | null,
  largestMilking: { readonly amount: number; readonly unit: AmountUnit },
): AmountVerdict {
  const volume = amount_mL(amount);
  const largest_mL = UNIT_ML[largestMilking.unit].mul(largestMilking.amount);
  if (volume.compare(largest_mL) > 0) return 'too much';
  if (!usual) return volume.compare(UNIT_ML.lb.mul(MOST_WITHOUT_HISTORY_lb)) > 0 ? 'more' : 'fine';
  if (volume.compare(usual.low_mL) < 0) return 'less';
  return volume.compare(usual.high_mL) > 0 ? 'more' : 'fine';
}
