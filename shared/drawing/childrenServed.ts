// How many little figures stand for a number of children, when there are too many to draw each.

/** Figures for a number of children. */
export interface ChildrenServed {
  /** How many children one figure stands for. */
  readonly each: number;
  /** Figures that stand for `each` children. */
  readonly whole: number;
  /** Children left over, fewer than `each`: one more figure, drawn faint. 0 when it comes out even. */
  readonly rest: number;
}

/**
 * Figures for `count` children (a whole number, 0 or more) with at most `max` figures (1 or more). One figure stands
 * for the smallest of 1, 2, 5, 10, 20, 50, 100 … children that fits. `whole * each + rest` is the count.
 * Throws on a count that is no such number.
 *
 * @example childrenServed(43, 12) // { each: 5, whole: 8, rest: 3 }
 */
export function childrenServed(count: number, max: number): ChildrenServed {
  if (!Number.isInteger(count) || count < 0 || !(max >= 1)) {
    throw new Error(
      `Children are counted in whole numbers from 0, in at least 1 figure, not ${count} in ${max}.`,
    );
  }
  for (let power = 1; ; power *= 10) {
    for (const step of [1, 2, 5]) {
      const each = step * power;
      if (Math.ceil(count / each) <= max)
        return { each, whole: Math.floor(count / each), rest: count % each };
    }
  }
}
