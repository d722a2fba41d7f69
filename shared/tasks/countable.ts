// Milkings whose cups can be counted one by one.
import type { Reading, TaskContext } from './context.ts';
import { cupsOf } from './phrases.ts';

/** A milking and its whole cups. */
export interface Countable {
  readonly reading: Reading;
  readonly cups: number;
}

/** The week's milkings of at least `least` and at most `most` whole cups. */
export function countable(context: TaskContext, least: number, most: number): Countable[] {
  return context.readings
    .map((reading) => ({ reading, cups: cupsOf(reading, context.cups) }))
    .filter(({ cups }) => least <= cups && cups <= most);
}
