// Minutes for each of some steps, so that together they fill the time.
import type { LessonStep } from './types.ts';

/**
 * Whole minutes for each step, within its shortest and longest time, that come as near to `minutes` as they can:
 * exactly where it lies between the sums of the shortest and the longest. What is over or wanting is shared out
 * in proportion to how far each step can give, the larger remainder first.
 * @example allot([{ minutes: 5, least: 3, most: 9 }, { minutes: 10, least: 10, most: 12 }], 18) // => [7, 11]
 */
export function allot(
  steps: readonly Pick<LessonStep, 'minutes' | 'least' | 'most'>[],
  minutes: number,
): number[] {
  const usual = steps.reduce((sum, step) => sum + step.minutes, 0);
  const way = minutes < usual ? -1 : 1;
  const rooms = steps.map((step) => (way > 0 ? step.most - step.minutes : step.minutes - step.least));
  const room = rooms.reduce((sum, one) => sum + one, 0);
  const change = Math.min(Math.abs(minutes - usual), room);
  if (change === 0) return steps.map((step) => step.minutes);
  const shares = rooms.map((one) => Math.floor((one * change) / room));
  const left = change - shares.reduce((sum, one) => sum + one, 0);
  const remainder = (index: number) => ((rooms[index] ?? 0) * change) % room;
  const byRemainder = steps.map((_, index) => index).sort((a, b) => remainder(b) - remainder(a) || a - b);
  for (const index of byRemainder.slice(0, left)) shares[index] = (shares[index] ?? 0) + 1;
  return steps.map((step, index) => step.minutes + way * (shares[index] ?? 0));
}
