// Weeks of a lactation for tasks: the herd's own, or those of one cow that were published.
import Fraction from 'fraction.js';
import { rounded, type Shown, type SheetUnit } from '../quantity/grade.ts';
import { msg, sub, text, type Slot } from '../sheet/message.ts';
import type { TaskContext } from './context.ts';

/** A lactation week by week. */
export interface WeekSeries {
  readonly id: string;
  readonly who: Slot;
  readonly unit: SheetUnit;
  /** Whether it is the farm's own milk, or the published cow's fat. */
  readonly own: boolean;
  readonly places: number;
  readonly weeks: readonly { readonly week: number; readonly y: Shown }[];
}

/** Fat of one cow in kg a day, weeks 1 to 35 (Henderson & McCulloch 1990, a technical report of Cornell University). */
export const COW_FAT_KG =
  '.31 .39 .50 .58 .59 .64 .68 .66 .67 .70 .72 .68 .65 .64 .57 .48 .46 .45 .31 .33 .36 .30 .26 .34 .29 .31 .29 .20 .15 .18 .11 .07 .06 .01 .01';

const COW: WeekSeries = {
  id: 'cow',
  who: sub(msg('task.curve.cow')),
  unit: 'kg',
  own: false,
  places: 2,
  weeks: COW_FAT_KG.split(' ').map((written, index) => ({
    week: index + 1,
    y: rounded(new Fraction(written), 2),
  })),
};

/** The herd's own lactations in the band's measure. */
export function ownSeries(context: TaskContext): WeekSeries[] {
  const { unit, unit_mL, places = 1 } = context.measure;
  return (context.curves ?? []).map(({ doe, name, weeks }) => ({
    id: doe,
    who: text(name),
    unit,
    own: true,
    places,
    weeks: weeks.map(({ week, mean_mL }) => ({
      week,
      y: rounded(new Fraction(mean_mL).div(unit_mL), places),
    })),
  }));
}

/** The cow of which weeks were published. */
export function cowSeries(): WeekSeries {
  return COW;
}

/** `size` weeks of a series spread evenly from its first to its last. */
export function spreadWeeks(series: WeekSeries, size: number): WeekSeries['weeks'] {
  const last = series.weeks.length - 1;
  const places = Array.from({ length: size }, (_, index) => Math.round((index * last) / (size - 1)));
  return [...new Set(places)].flatMap((place) => series.weeks[place] ?? []);
}
