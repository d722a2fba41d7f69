// The cooling clock as a strip: milking, and the two times by which the milk must be cold.
import type { CoolingRow } from '../milk/milkPage.ts';

/** Where things stand along the strip. */
export interface CoolingStrip {
  readonly milking: { readonly x: number; readonly width: number };
  readonly marks: readonly {
    readonly x: number;
    readonly by_min: number;
    readonly atMost_C: number;
    readonly atMost_F: number;
  }[];
  readonly hours: readonly { readonly x: number; readonly at_min: number }[];
}

const HOUR_MIN = 60;

/** Lays out one milking from the hour before it to the hour after its last deadline, along `width`. */
export function coolingStrip({ starts_min, ends_min, deadlines }: CoolingRow, width: number): CoolingStrip {
  const last = Math.max(ends_min, ...deadlines.map(({ by_min }) => by_min));
  const from = Math.floor(starts_min / HOUR_MIN) * HOUR_MIN;
  const to = Math.ceil((last + 1) / HOUR_MIN) * HOUR_MIN;
  const at = (minute: number) => ((minute - from) / (to - from)) * width;
  const count = (to - from) / HOUR_MIN;
  return {
    milking: { x: at(starts_min), width: at(ends_min) - at(starts_min) },
    marks: deadlines.map(({ by_min, atMost_C, atMost_F }) => ({ x: at(by_min), by_min, atMost_C, atMost_F })),
    hours: Array.from({ length: count + 1 }, (_, index) => {
      const at_min = from + index * HOUR_MIN;
      return { x: at(at_min), at_min };
    }),
  };
}
