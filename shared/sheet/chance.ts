// Picks by seed: the same word always gives the same picks, and no clock or system chance is asked.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { seedOf } from '../drawing/wobble.ts';

/** A run of picks. Each call moves it on. */
export interface Chance {
  /** A whole number from `low` to `high`, both included. */
  int(low: number, high: number): number;
  /** One of a list that is not empty. */
  pick<T>(from: readonly T[]): T;
  /** The list in another order; the list itself is left alone. */
  shuffle<T>(from: readonly T[]): T[];
}

/**
 * The picks that a word gives. Numbers come from xoroshiro128+ seeded with the word's 32-bit FNV-1a
 * hash, so a word gives the same picks in every browser and in Node.
 */
export function chanceOf(word: string): Chance {
  const generator = xoroshiro128plus(seedOf(word));
  const int = (low: number, high: number): number => uniformInt(generator, low, high);
  return {
    int,
    pick<T>(from: readonly T[]): T {
      if (from.length === 0) throw new Error('A pick was asked for from an empty list.');
      return from[int(0, from.length - 1)] as T;
    },
    shuffle<T>(from: readonly T[]): T[] {
      const mixed = [...from];
      for (let last = mixed.length - 1; last > 0; last -= 1) {
        const other = int(0, last);
        [mixed[last], mixed[other]] = [mixed[other] as T, mixed[last] as T];
      }
      return mixed;
    },
  };
}
