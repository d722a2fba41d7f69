// The clock of a lesson: when each step begins and ends.

/** From when to when something lasts, minutes after midnight, or after the lesson's beginning. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

const DAY_min = 24 * 60;

/** The spans of steps that follow each other; `start` is minutes after midnight, 0 where none is known. */
export function spansOf(minutes: readonly number[], start: number): Span[] {
  let from = start;
  return minutes.map((one) => {
    const span = { from, to: from + one };
    from = span.to;
    return span;
  });
}

/**
 * Minutes after midnight as a clock shows them, over midnight too.
 * @example clockText(570) // => '9:30'
 */
export function clockText(minutes: number): string {
  const inDay = ((minutes % DAY_min) + DAY_min) % DAY_min;
  return `${Math.floor(inDay / 60)}:${String(inDay % 60).padStart(2, '0')}`;
}

/**
 * Reads a time of day: `09:30`, `9:30`. Null for what is none.
 * @example readClock('09:30') // => 570
 */
export function readClock(text: string): number | null {
  const [, hours, rest] = /^(\d{1,2}):(\d{2})$/.exec(text.trim()) ?? [];
  if (hours === undefined || rest === undefined) return null;
  const minutes = Number(hours) * 60 + Number(rest);
  return Number(rest) < 60 && minutes < DAY_min ? minutes : null;
}
