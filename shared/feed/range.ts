// A least and a most, which is how honest figures of feed and land come.

/** Least and most, in the unit that the name of the field says. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Both ends times a number that is not below 0. */
export function times(range: Range, by: number): Range {
  return { low: range.low * by, high: range.high * by };
}

/** Both ends of two ranges added. */
export function plus(a: Range, b: Range): Range {
  return { low: a.low + b.low, high: a.high + b.high };
}

/** The sum of ranges; nothing at all is 0 to 0. */
export function sumOf(ranges: readonly Range[]): Range {
  return ranges.reduce(plus, { low: 0, high: 0 });
}
