// Side by side instead of over each other: a lane for each of the spans that overlap at one place.
import type { Span } from '../types.ts';

/** Which lane each span lies in, from 0, and how many lanes that takes. */
export interface Lanes {
  readonly of: readonly number[];
  readonly count: number;
}

/**
 * Puts each span, in the order given, into the first lane that is free at its start. Spans that begin as another ends
 * share a lane. With spans in order of their start no fewer lanes would do.
 * @example lanesOf([{ from: 0, to: 20 }, { from: 10, to: 30 }, { from: 20, to: 25 }]) // => { of: [0, 1, 0], count: 2 }
 */
export function lanesOf(spans: readonly Span[]): Lanes {
  const ends: number[] = [];
  const of = spans.map(({ from, to }) => {
    const free = ends.findIndex((end) => end <= from);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = to;
    return lane;
  });
  return { of, count: ends.length };
}
