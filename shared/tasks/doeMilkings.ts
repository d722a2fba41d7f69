// The milkings of one doe's week as a list, and what lists of numbers are asked for: quartiles, lots, an axis.
import Fraction from 'fraction.js';
import { exactly, rounded, shownIn, valueOf, type Shown } from '../quantity/grade.ts';
import type { DoeWeek } from '../herd/week.ts';
import { distinctBy, type Reading, type TaskContext } from './context.ts';
import { milkingsTold } from './fromBook.ts';
import { medianOf, sortedShown } from './spread.ts';
import type { FromBook } from './task.ts';

/** All milkings of a doe in the week, in the order of the days. */
export interface DoeMilkings {
  readonly doe: DoeWeek;
  readonly readings: readonly Reading[];
  readonly shown: readonly Shown[];
}

/** Does with at least `least` milkings of which at least `different` are printed unlike, none of them zero. */
export function doeMilkings(context: TaskContext, least: number, different: number): DoeMilkings[] {
  return context.week.does.flatMap((doe) => {
    const readings = context.readings.filter((one) => one.doe.id === doe.id);
    const shown = readings.map((one) => shownIn(one.amount_mL, context.measure));
    const sound = shown.every(({ num }) => num > 0) && distinctBy(shown, valueOf).length >= different;
    return readings.length >= least && sound ? [{ doe, readings, shown }] : [];
  });
}

/** Where each printed milking comes from, when the band rounds it. */
export function milkingsFromBook(context: TaskContext, { doe, readings, shown }: DoeMilkings): FromBook[] {
  return milkingsTold(doe.name, readings, shown, context.measure);
}

/** A number with its places, or one more where it stands halfway. */
export function withHalves(value: Fraction, places: number): Shown {
  const short = rounded(value, places);
  return exactly(short).equals(value) ? short : rounded(value, places + 1);
}

/** Least, quartiles, median and greatest as the sheet prints them. */
export interface FiveNumbers {
  readonly low: Shown;
  readonly q1: Shown;
  readonly median: Shown;
  readonly q3: Shown;
  readonly high: Shown;
}

/**
 * Five numbers of a list of four or more. A quartile is the median of a half; of an odd list the middle one belongs to
 * neither half: the way of US school books (common practice, no source).
 */
export function fiveNumbers(shown: readonly Shown[], places: number): FiveNumbers {
  const sorted = sortedShown(shown);
  const half = Math.floor(sorted.length / 2);
  return {
    low: sorted[0] as Shown,
    q1: withHalves(medianOf(sorted.slice(0, half)), places),
    median: withHalves(medianOf(sorted), places),
    q3: withHalves(medianOf(sorted.slice(-half)), places),
    high: sorted.at(-1) as Shown,
  };
}

const STEPS = ['0.01', '0.02', '0.05', '0.1', '0.2', '0.5', '1', '2', '5', '10', '20', '50'] as const;
const MOST_STEPS = 10;

/** A round axis that holds all values: its ends lie on its steps. */
export function roundSteps(values: readonly Shown[]): { from: Shown; to: Shown; step: Shown } {
  const sorted = sortedShown(values);
  const [low, high] = [exactly(sorted[0] as Shown), exactly(sorted.at(-1) as Shown)];
  const text = STEPS.find((one) => high.sub(low).valueOf() / Number(one) <= MOST_STEPS - 2) ?? '50';
  const step = new Fraction(text);
  const places = text.split('.')[1]?.length ?? 0;
  const [from, to] = [low.div(step).floor().mul(step), high.div(step).ceil().mul(step)];
  return {
    from: rounded(from, places),
    to: rounded(to.equals(from) ? to.add(step) : to, places),
    step: rounded(step, places),
  };
}
