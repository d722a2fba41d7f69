// By when a milking's milk must be cold, and whether it was: the milk ordinance's two times, and a stricter one.
import {
  coolingDeadlines,
  judgeDeadline,
  type CoolingDeadline,
  type DeadlineVerdict,
} from '../milk/cooling.ts';
import type { TickedReading } from './ticks.ts';

/** A time by which milk must be cold; who asks for it. */
export interface ChillMark extends CoolingDeadline {
  readonly by: 'ordinance' | 'good practice';
}

/** Facts in content/facts that carry the two rules. */
export const CHILL_FACTS: readonly string[] = Object.freeze(['cooling-clock', 'cool-best']);

const DAY_MIN = 24 * 60;
const BEST_MIN = 2 * 60;

/** Minutes after midnight of a clock time `HH:MM`. */
export function minutesOf(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 60 + minutes;
}

/** The clock time of minutes after midnight, whatever the day. */
export function clockOf(minutes: number): string {
  const within = ((minutes % DAY_MIN) + DAY_MIN) % DAY_MIN;
  const two = (n: number) => String(n).padStart(2, '0');
  return `${two(Math.floor(within / 60))}:${two(within % 60)}`;
}

/**
 * The marks of a milking in the order of their times: both of the ordinance, and 40 °F (4.45 °C) within two hours after
 * milking. Clock times; an end before the start is on the next day. Sources: Grade A Pasteurized Milk Ordinance, table 1;
 * Code of Massachusetts Regulations 330, section 27.05.
 */
export function chillMarks(
  start: string,
  end: string,
): { ok: true; marks: ChillMark[] } | { ok: false; why: 'a milking lasts at most six hours' } {
  const read = coolingDeadlines(minutesOf(start), minutesOf(end));
  if (!read.ok) return read;
  const ends_min = minutesOf(end) < minutesOf(start) ? minutesOf(end) + DAY_MIN : minutesOf(end);
  const best: ChillMark = {
    by: 'good practice',
    from: 'end of milking',
    by_min: ends_min + BEST_MIN,
    atMost_C: 4.45,
    atMost_F: 40,
  };
  const marks = [...read.deadlines.map((one): ChillMark => ({ ...one, by: 'ordinance' })), best];
  return { ok: true, marks: marks.sort((a, b) => a.by_min - b.by_min || b.atMost_C - a.atMost_C) };
}

/** Whether a mark was met by readings. A clock time before the start of milking is on the next day. */
export function judgeMark(
  mark: ChillMark,
  start: string,
  readings: readonly TickedReading[],
): DeadlineVerdict {
  const starts_min = minutesOf(start);
  return judgeDeadline(
    mark,
    readings.map(({ at, degrees, unit }) => ({
      at_min: minutesOf(at) < starts_min ? minutesOf(at) + DAY_MIN : minutesOf(at),
      // The ordinance prints 45 °F and 7 °C as a pair, though they are 0.2 °C apart: a reading is held against the one in
      // its own unit.
      milk_C: unit === 'C' ? degrees : mark.atMost_C + (degrees - mark.atMost_F) / 1.8,
    })),
  );
}

/** Colder or warmer than this is no milk but a slip of the pencil. */
const READS = { F: { low: 28, high: 110 }, C: { low: -2, high: 43 } } as const;

/** Degrees from a text, or null where it is no temperature that milk can have between doe and ice. */
export function degreesOf(text: string, unit: 'F' | 'C'): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  if (!/^-?\d{1,3}(\.\d{1,2})?$/.test(plain)) return null;
  const degrees = Number(plain);
  return degrees >= READS[unit].low && degrees <= READS[unit].high ? degrees : null;
}
