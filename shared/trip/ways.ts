// The smallest changes that make a day work: each is planned again, and only what then holds is offered.
import type { Asked } from './changes.ts';
import type { Draft } from './draft.ts';
import type { DayGround, TripWay } from './types.ts';

/** Ways out of a day that does not hold, easiest for a school first. */
export function waysFor(_asked: Asked, _ground: DayGround, _draft: Draft): readonly TripWay[] {
  return [];
}
