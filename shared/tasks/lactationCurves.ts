// Lactation curves for tasks: the herd's own where the book tells one, else published ones.
import Fraction from 'fraction.js';
import { exactly, rounded, valueOf, type Shown, type SheetUnit } from '../quantity/grade.ts';
import { msg, sub, text, type Slot } from '../sheet/message.ts';
import type { TaskContext } from './context.ts';

/** A lactation curve y = a·x^b·e^(−cx) as the sheet prints it; x in days. */
export interface PrintedCurve {
  readonly id: string;
  /** Whose curve it is. */
  readonly who: Slot;
  readonly unit: SheetUnit;
  readonly a: Shown;
  readonly b: Shown;
  readonly c: Shown;
  /** Decimal places of amounts on the curve. */
  readonly places: number;
  /** Days and amounts that it was fitted to, where they are the farm's own. */
  readonly points: readonly { readonly x: number; readonly y: Shown }[];
}

const decimal = (value: number, places: number): Shown =>
  rounded(new Fraction(Math.round(value * 10 ** places), 10 ** places), places);

/**
 * Curves to fall back on. The two of Simmental cows are published (Animal Bioscience 34, 2021, page 949: up to day 305
 * and up to day 640, kg a day); the model doe is made up, and the sheet says so.
 */
const PUBLISHED: readonly PrintedCurve[] = [
  { id: 'simmental-305', a: decimal(15.2317, 4), b: decimal(0.1029, 4), c: decimal(0.0015, 4) },
  { id: 'simmental-640', a: decimal(17.4329, 4), b: decimal(0.0603, 4), c: decimal(0.001, 4) },
  { id: 'model-doe', a: decimal(2, 1), b: decimal(0.2, 1), c: decimal(0.004, 3) },
].map((one) => ({ ...one, who: sub(msg(`task.curve.${one.id}`)), unit: 'kg', places: 2, points: [] }));

/** The curve at a day, from the printed numbers, in doubles. */
export function onCurve({ a, b, c }: Pick<PrintedCurve, 'a' | 'b' | 'c'>, x: number): number {
  return valueOf(a) * x ** valueOf(b) * Math.exp(-valueOf(c) * x);
}

/** The same, rounded to the curve's places. */
export function curveValue(curve: PrintedCurve, x: number): Shown {
  return decimal(onCurve(curve, x), curve.places);
}

/** Where the printed curve is highest, b ÷ c, to one decimal place. */
export function peakOf({ b, c }: PrintedCurve): Shown {
  return rounded(exactly(b).div(exactly(c)), 1);
}

// A peak in the first days or after most of a year comes of few or odd days.
const PEAK_DAYS = [8, 150] as const;

/** Every curve that a task may be about: the herd's own, or the published ones where it has none. */
export function printedCurves(context: TaskContext): readonly PrintedCurve[] {
  const { unit, unit_mL, places = 1 } = context.measure;
  const size = unit_mL.valueOf();
  const own = (context.curves ?? []).flatMap(({ doe, name, weeks, wood }): PrintedCurve[] => {
    if (!wood) return [];
    const [a, b, c] = [decimal(wood.a / size, 3), decimal(wood.b, 3), decimal(wood.c, 4)];
    if (a.num <= 0 || b.num <= 0 || c.num < 1) return [];
    const points = weeks.map(({ week, mean_mL }) => ({
      x: week * 7 - 4,
      y: decimal(mean_mL / size, places),
    }));
    const curve = { id: doe, who: text(name), unit, a, b, c, places: 2, points };
    const peak = valueOf(peakOf(curve));
    const inside = peak >= PEAK_DAYS[0] && peak <= PEAK_DAYS[1];
    return inside && onCurve(curve, Math.round(peak)) >= 0.5 ? [curve] : [];
  });
  return own.length > 0 ? own : PUBLISHED;
}
