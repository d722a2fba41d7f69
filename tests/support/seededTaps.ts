// A seeded monkey: where it taps next on a page of the board.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';

/** Places to tap, each a share of the screen's width and height, 0..1; the same for the same seed. */
export function* seededTaps(seed: number): Generator<{ readonly x: number; readonly y: number }, never> {
  const random = xoroshiro128plus(seed);
  const share = () => uniformInt(random, 0, 9999) / 10_000;
  for (;;) yield { x: share(), y: share() };
}
