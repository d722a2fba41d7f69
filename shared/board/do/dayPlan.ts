// Reckons the plan of the pages that speak of one doe's day: for the build alone, so that no page carries it.
import { middleDoe } from '../howMuch.ts';
import { dayAmount, dayUnit } from '../shown.ts';
import type { BoardInput } from '../types.ts';
import type { DayPlan, DoeDay } from './doeDay.ts';

/** The middle doe's mean day; null where no doe's day is known, or where it would be told as nothing. */
export function middleDay(input: BoardInput): DoeDay | null {
  const middle = middleDoe(input);
  if (!middle) return null;
  const { n, text } = dayAmount(input, middle.mean_mL);
  if (n <= 0) return null;
  return { name: middle.doe.name, amount: text, n, unit: dayUnit(input) === 'L' ? 'L' : 'cup' };
}

/** The plan of any week. */
export function dayPlan(input: BoardInput): DayPlan {
  return { day: middleDay(input) };
}
