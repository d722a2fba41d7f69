// The small printed block of each place where a lesson is held.
import type { Place } from '../../../shared/lesson/types.ts';
import type { EmblemName } from '../drawings/pieces/emblemName.ts';

/** A question before the visit, the milking in the barn, the numbers after it. */
export const PLACE_EMBLEMS: Readonly<Record<Place, EmblemName>> = {
  class: 'why-milk',
  barn: 'does-it-hurt',
  after: 'how-much',
};
