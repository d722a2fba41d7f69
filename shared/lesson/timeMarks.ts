// Where the time below a strip is marked.

const STEPS_min = [1, 5, 10, 15, 30, 60];
const MOST_MARKS = 5;

/**
 * Minutes to mark below a strip of `whole` minutes: 0 and every so many after it, at most `MOST_MARKS` in all.
 * @example timeMarks(45) // => [0, 10, 20, 30, 40]
 */
export function timeMarks(whole: number): number[] {
  const step = STEPS_min.find((one) => Math.floor(whole / one) + 1 <= MOST_MARKS) ?? Math.ceil(whole / MOST_MARKS); // prettier-ignore
  return Array.from({ length: Math.floor(whole / step) + 1 }, (_, index) => index * step);
}
