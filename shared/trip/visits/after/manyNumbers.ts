// What the tasks from many numbers share: how a number is written, how often it came, and what was measured.
import type { Shown } from '../../../quantity/grade.ts';
import { count, msg, type Message } from '../../../sheet/message.ts';
import { GRADE_LIMITS } from '../../../tasks/limits.ts';
import { stepsShown } from './fineness.ts';
import { KEY, type MeasuredMany } from './madeTask.ts';

/** Writes steps as the grade does. */
export const shownBy =
  ({ den, grade }: MeasuredMany) =>
  (steps: number): Shown =>
    stepsShown(steps, den, grade);

/** How often one of the numbers came. */
export const timesOf = (all: readonly number[], one: number): number =>
  all.filter((other) => other === one).length;

/** A count of numbers, alone. */
export const numbers = (n: number): Message => msg(`${KEY}.numbers`, { n: count(n) });

/** What was measured, and how often where the grade counts so far. */
export function leadOf({ measure, steps, grade }: MeasuredMany): Message {
  if (steps.length > (GRADE_LIMITS[grade].most ?? Infinity)) return msg(`visits.after.measure.${measure}`);
  return msg(`${KEY}.lead.${measure}`, { n: count(steps.length) });
}
