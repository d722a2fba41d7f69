// The year of a doe as a line of phases: with her kids, nights apart, twice a day, dry.
import { phaseSpans, type PhaseSpan } from '../herd/expected.ts';
import type { Book, Kidding } from '../herd/types.ts';

/** A phase on the line. Day numbers, both included. */
export interface LinedSpan {
  readonly phase: PhaseSpan['phase'];
  readonly from: number;
  readonly to: number;
  /** Whether the book ends before the phase does. */
  readonly open: boolean;
}

/** A doe's phases from one kidding on, ended by the next. */
export interface PhaseTimeline {
  readonly kidding: Kidding;
  /** In order of time, up to the book's day. */
  readonly spans: readonly LinedSpan[];
}

/** The phases of a doe as a timeline, one for each kidding up to the book's day, the oldest first. */
export function timelineOf(book: Pick<Book, 'kiddings'>, doe: string, asOf: number): PhaseTimeline[] {
  const inOrder = book.kiddings.filter((one) => one.doe === doe).sort((a, b) => a.day - b.day);
  return inOrder.flatMap((kidding, index) => {
    const next = inOrder[index + 1];
    if (kidding.day > asOf || next?.day === kidding.day) return [];
    const last = Math.min(asOf, next ? next.day - 1 : asOf);
    const spans = phaseSpans(next ? [kidding, next] : [kidding]).flatMap((span) => {
      if (span.from > last) return [];
      const to = Math.min(span.to ?? last, last);
      return [{ phase: span.phase, from: span.from, to, open: to === asOf && (span.to === null || span.to > asOf) }]; // prettier-ignore
    });
    return [{ kidding, spans }];
  });
}
