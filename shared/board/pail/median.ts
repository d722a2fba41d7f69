// The middle of some numbers.

/**
 * The median: the middle one in order of size, or the mean of the two middle ones; null of none.
 * @example median([5, 1, 3]) // => 3
 * @example median([4, 1, 3, 2]) // => 2.5
 */
export function median(values: readonly number[]): number | null {
  const inOrder = values.toSorted((a, b) => a - b);
  const half = Math.floor(inOrder.length / 2);
  const upper = inOrder[half];
  if (upper === undefined) return null;
  return inOrder.length % 2 === 1 ? upper : ((inOrder[half - 1] as number) + upper) / 2;
}
