// Whose milk is kept apart on a day, and until when: from the treatments in the book.
import type { Treatment, Use } from './types.ts';

/** The part of a treatment that says which days it holds. */
export type TreatmentSpan = Pick<Treatment, 'doe' | 'from' | 'until'>;

/** Whether a treatment holds on a day: from `from` up to but not including `until`. */
export function holdsOn({ from, until }: Pick<TreatmentSpan, 'from' | 'until'>, day: number): boolean {
  return from <= day && (until === null || day < until);
}

/** Whether a doe's milk of a day is to be withheld. One treatment that holds is enough, so the longest of several wins. */
export function isTreated(treatments: readonly TreatmentSpan[], doe: string, day: number): boolean {
  return treatments.some((one) => one.doe === doe && holdsOn(one, day));
}

/**
 * The first day from `day` on whose milk may be kept: `day` itself where she is under no treatment, null while a
 * treatment without an end holds. Treatments that follow one another without a free day count as one.
 */
export function firstFreeDay(treatments: readonly TreatmentSpan[], doe: string, day: number): number | null {
  const own = treatments.filter((one) => one.doe === doe);
  let free = day;
  for (;;) {
    const holding = own.filter((one) => holdsOn(one, free));
    if (holding.length === 0) return free;
    const ends = holding.map(({ until }) => until);
    if (ends.includes(null)) return null;
    free = Math.max(...ends.filter((end) => end !== null));
  }
}

/**
 * What counts as a row's use. `written` is null where its cell is empty: then the milk is withheld while a treatment
 * holds, else kept. A use that somebody wrote stands, whatever the treatments say.
 */
export function countedUse(
  written: Use | null,
  treatments: readonly TreatmentSpan[],
  doe: string,
  day: number,
): Use {
  if (written !== null) return written;
  return isTreated(treatments, doe, day) ? 'withheld' : 'kept';
}
