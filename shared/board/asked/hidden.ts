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

/**
 * Hides counts under five. Where a reader could compute one of them from the total and what else is shown, the
 * smallest of the shown counts are kept back until no reader can; where that does not help, the total is. The reader
 * is taken to know all of these rules. The usual name for it is complementary (secondary) cell suppression; source:
 * Federal Committee on Statistical Methodology, Statistical Policy Working Paper 22 (from memory).
 */
export function hideSmall(counts: readonly number[]): ShownCounts {
  const total = counts.reduce((sum, one) => sum + one, 0);
  const shown = counts.filter((one) => one >= LEAST_SHOWN).toSorted((a, b) => a - b);
  for (let back = 0; back <= shown.length; back += 1) {
    // Of equal counts all go or none, so that which one went tells nothing.
    if (back > 0 && shown[back] === shown[back - 1]) continue;
    const rest = shown.slice(back);
    const hiddenSum = total - rest.reduce((sum, one) => sum + one, 0);
    const few = counts.length - shown.length;
    if (isSafe(few, back, hiddenSum, rest[0] ?? null))
      return { counts: counts.map((one) => shownAs(one, rest[0] ?? Infinity)), total };
  }
  return { counts: counts.map((one) => shownAs(one, LEAST_SHOWN)), total: null };
}

function shownAs(count: number, least: number): Shown {
  if (count < LEAST_SHOWN) return { as: 'few' };
  return count >= least ? { as: 'count', count } : { as: 'kept back' };
}

/**
 * Whether no hidden small count can be told: some 0 to 4 each, others 5 or more and under the least shown one, which
 * together make a known sum.
 */
function isSafe(few: number, back: number, sum: number, leastShown: number | null): boolean {
  if (few === 0) return true;
  const most = LEAST_SHOWN - 1;
  const backMost = back === 0 ? 0 : leastShown === null ? Infinity : back * (leastShown - 1);
  const lower = Math.max(0, sum - most * (few - 1) - backMost);
  const upper = Math.min(most, sum - LEAST_SHOWN * back);
  return upper > lower;
}
