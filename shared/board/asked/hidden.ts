// Which counts are shown: none under five, and no others that would give a hidden one away by the total.

/** Counts under this are shown as "fewer than" it. */
export const LEAST_SHOWN = 5;

/** A count as it may be shown. */
export type Shown =
  | { readonly as: 'count'; readonly count: number }
  /** Fewer than five. */
  | { readonly as: 'few' }
  /** Five or more, kept back so that the total gives no other one away. */
  | { readonly as: 'kept back' };

/** Some counts and their total as they may be shown; the total is null where it would give a count away. */
export interface ShownCounts {
  readonly counts: readonly Shown[];
  readonly total: number | null;
}

// With less room than this between the least that it may be and the next count, one kept back would hide nothing.
const LEAST_NEXT = 2 * LEAST_SHOWN;
const LEAST_WIDTH = 2;

/**
 * Hides counts under five. Beside them the smallest of the other counts is kept back, and the total stands only where
 * each hidden count could still have three values or more. Which of this is done follows from what is shown alone, so
 * that knowing the rules tells a reader nothing more. The usual name for it is complementary (secondary) cell
 * suppression; source: Federal Committee on Statistical Methodology, Statistical Policy Working Paper 22 (from memory).
 */
export function hideSmall(counts: readonly number[]): ShownCounts {
  const total = counts.reduce((sum, one) => sum + one, 0);
  const shown = counts.filter((one) => one >= LEAST_SHOWN).toSorted((a, b) => a - b);
  const few = counts.length - shown.length;
  const [least, next] = shown;
  if (few === 0) return { counts: counts.map((one) => shownAs(one)), total };
  // No larger count to hide behind: then there is no total, and nothing more to keep back.
  if (least === undefined || next === undefined || next < LEAST_NEXT)
    return { counts: counts.map((one) => shownAs(one)), total: null };
  const back = counts.indexOf(least);
  const hiddenSum = counts.reduce(
    (sum, one, place) => (one < LEAST_SHOWN || place === back ? sum + one : sum),
    0,
  );
  return {
    counts: counts.map((one, place) => (place === back ? { as: 'kept back' } : shownAs(one))),
    total: isWide(few, hiddenSum, next) ? total : null,
  };
}

function shownAs(count: number): Shown {
  return count < LEAST_SHOWN ? { as: 'few' } : { as: 'count', count };
}

/** Whether each of `few` counts of 0 to 4 may have three values, where they and one of 5 up to, not with, `next` make a sum. */
function isWide(few: number, sum: number, next: number): boolean {
  const most = LEAST_SHOWN - 1;
  const lower = Math.max(0, sum - most * (few - 1) - (next - 1));
  const upper = Math.min(most, sum - LEAST_SHOWN);
  return upper - lower >= LEAST_WIDTH;
}
