// When nobody is using the board: how long it has not been touched, and whether something plays.
import { BUSY, SIGNS_OF_LIFE } from './alone.ts';

/** How long a page still has to be left in peace until it has been so for a while, ms: 0 when it has. */
export type Restless = (least_ms: number) => number;

/** Watches a page from now on. Whoever opened it counts as a touch, unless nobody can have begun anything on it yet. */
export function watchRest(page: Document, opened: 'by a touch' | 'untouched'): Restless {
  const view = page.defaultView;
  let touched_ms = opened === 'by a touch' ? performance.now() : Number.NEGATIVE_INFINITY;
  const touch = () => (touched_ms = performance.now());
  for (const sign of SIGNS_OF_LIFE) view?.addEventListener(sign, touch, { passive: true, capture: true });
  return (least_ms) => {
    // While it plays nobody knows when it will end.
    if (page.documentElement.dataset[BUSY] !== undefined) return least_ms;
    return Math.max(0, least_ms - (performance.now() - touched_ms));
  };
}
