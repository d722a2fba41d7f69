// A day's milk of the doe in the middle, as a thing to do speaks of it.
import { say, type Words } from '../../words/words.ts';
import { middleDoe } from '../howMuch.ts';
import { dayAmount, dayUnit } from '../shown.ts';
import type { BoardInput } from '../types.ts';

/** One doe's mean day in words and numbers. */
export interface DoeDay {
  readonly name: string;
  /** The amount as it is written, the number it is counted by, and its unit's key under `barn.unit`. */
  readonly amount: string;
  readonly n: number;
  readonly unit: 'cup' | 'L';
}

/** The middle doe's mean day; null where no doe's day is known, or where it would be told as nothing. */
export function middleDay(input: BoardInput): DoeDay | null {
  const middle = middleDoe(input);
  if (!middle) return null;
  const { n, text } = dayAmount(input, middle.mean_mL);
  if (n <= 0) return null;
  return { name: middle.doe.name, amount: text, n, unit: dayUnit(input) === 'L' ? 'L' : 'cup' };
}

/** Fills `{name}` and `{amount}` of a text, and chooses its key: `withDoe` where a doe's day is known, else `plain`. */
export function daySlots(words: Words, day: DoeDay | null) {
  if (day === null) return { key: 'plain', slots: {} };
  const unit = say(words, `barn.unit.${day.unit}`, { n: day.n });
  return { key: 'withDoe', slots: { name: day.name, amount: `${day.amount} ${unit}` } };
}
