// Whole children whose daily calcium a pail holds, by age.
import type { CalciumNeed, CalciumServed } from './calcium.ts';

/** An age with the whole number of children. */
export interface ServedAge extends CalciumNeed {
  readonly children: number;
}

// A count that arithmetic left a hair below a whole one is that whole one.
const HAIR = 1e-9;

/** Counts whole children: part of a child drinks nothing. */
export function servedAges(served: readonly CalciumServed[]): ServedAge[] {
  return served.map((one) => ({ ...one, children: Math.floor(one.children + HAIR) }));
}
