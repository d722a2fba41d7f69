// Whether a milking is seen by every party while a doe is milked, and the waiting that makes it so.
import type { Beat } from './clock.ts';
import { stopIn, type Course } from './course.ts';
import type { Span } from './types.ts';

/** Waiting for a milking that is longer than this is not worth it: the stand-in takes its place. Common practice, no source. */
const MOST_WAIT_min = 30;

/** What a laid day lacks so that its milking can be watched: null for never, else minutes to wait (0: it fits). */
export type MilkingFit = (beats: readonly Beat[]) => number | null;

/** How a day fits the milkings; null where no stop shows one. */
export function milkingFits(course: Course, milkings: readonly Span[] | null): MilkingFit | null {
  const shown = course.stops.flatMap(({ station }, at) => (station.milking ? [at] : []));
  if (milkings === null || shown.length === 0) return null;
  const rounds = new Set<number>();
  course.rounds.forEach((_, round) => {
    for (let party = 0; party < course.parties; party++)
      if (shown.includes(stopIn(party, round, course.stops.length))) rounds.add(round);
  });
  return (beats) => {
    const seen = beats.filter((beat) => beat.kind === 'station' && rounds.has(beat.round));
    const from = seen[0]!.from;
    const to = seen[seen.length - 1]!.to;
    const waits = milkings.flatMap((span) => {
      const wait = Math.max(0, span.from - from);
      return wait <= MOST_WAIT_min && to + wait <= span.to ? [wait] : [];
    });
    return waits.length > 0 ? Math.min(...waits) : null;
  };
}
