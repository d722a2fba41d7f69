// Numbers to guess from: the right one among them, at any place of the row.
import type { Chance } from '../../sheet/chance.ts';

/** How many numbers a row to guess from has. */
export const CHOICES = 4;

/**
 * A row of whole numbers in steps, rising, the right one at a place that chance picks. None lies below `least`;
 * `right` itself is at least that.
 */
export function choicesAround(chance: Chance, right: number, step: number, least = 1): number[] {
  const below = Math.min(CHOICES - 1, Math.floor((right - least) / step));
  const place = chance.int(0, below);
  return Array.from({ length: CHOICES }, (_, index) => right + (index - place) * step);
}
