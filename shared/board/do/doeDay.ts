// A day's milk of the doe in the middle, as a thing to do speaks of it.
import { say, type Slots, type Words } from '../../words/words.ts';

/** One doe's mean day in words and numbers. */
export interface DoeDay {
  readonly name: string;
  /** The amount as it is written, the number it is counted by, and its unit's key under `barn.unit`. */
  readonly amount: string;
  readonly n: number;
  readonly unit: 'cup' | 'L';
}

/** The plan of a page that needs nothing of the herd but a doe's day; null where the book has none. */
export interface DayPlan {
  readonly day: DoeDay | null;
}

/** Fills `{name}` and `{amount}` of a text, and chooses its key: `withDoe` where a doe's day is known, else `plain`. */
export function daySlots(words: Words, day: DoeDay | null): { key: string; slots: Slots } {
  if (day === null) return { key: 'plain', slots: {} };
  const unit = say(words, `barn.unit.${day.unit}`, { n: day.n });
  return { key: 'withDoe', slots: { name: day.name, amount: `${day.amount} ${unit}` } };
}
