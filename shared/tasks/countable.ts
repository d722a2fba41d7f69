// Milkings whose cups can be counted one by one.
import type { Reading, TaskContext } from './context.ts';
import { cupsOf } from './phrases.ts';

/** A milking and its whole cups. */
export interface Countable {
  readonly reading: Reading;
  readonly cups: number;
}

/** The most cups that a grade compares: kindergarten to ten (K.CC.C.6), older children to twenty (1.OA.A.1). */
export function mostToCompare(context: TaskContext): number {
  return context.grade === 0 ? 10 : 20;
}

/** The week's milkings of at least `least` and at most `most` whole cups. */
export function countable(context: TaskContext, least: number, most: number): Countable[] {
  return context.readings
    .map((reading) => ({ reading, cups: cupsOf(reading, context.cups) }))
    .filter(({ cups }) => least <= cups && cups <= most);
}
