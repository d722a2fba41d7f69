// A lactation in weeks, as school sheets take it: the mean day of each week, and the curve where one may be told.
import type { Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import { curveView } from './curveView.ts';
import { lactationsOf, type Lactation } from './doeDays.ts';
import type { WoodCurve } from './wood.ts';

/** The mean of the whole days in a week since kidding; week 1 holds the first seven days. */
export interface MilkWeek {
  readonly week: number;
  /** Whole mL a day. */
  readonly mean_mL: number;
}

/** A doe's newest lactation that is long enough. */
export interface LactationWeeks {
  readonly doe: string;
  readonly name: string;
  readonly weeks: readonly MilkWeek[];
  /** Wood's curve in mL a day over days since kidding; null where its peak may not be told. */
  readonly wood: WoodCurve | null;
}

const LEAST_WEEKS = 8;
const LEAST_DAYS_A_WEEK = 4;
const WEEK_DAYS = 7;
/** They travel to the browser with every sheet, so only the longest do. */
const MOST_DOES = 4;

/** The newest lactation of each doe with eight weeks or more of four whole days, the longest first; four at most. */
export function lactationWeeks(book: Book, ledger: Ledger): LactationWeeks[] {
  return book.does
    .flatMap(({ id, name }): LactationWeeks[] => {
      const found = lactationsOf(book, ledger, id)
        .map((lactation) => ({ lactation, weeks: weeksOf(lactation) }))
        .findLast(({ weeks }) => weeks.length >= LEAST_WEEKS);
      if (!found) return [];
      const { fit, why } = curveView(found.lactation);
      const told = fit !== null && why === null && fit.peak !== null;
      return [{ doe: id, name, weeks: found.weeks, wood: told ? inMillilitres(fit.curve) : null }];
    })
    .sort((a, b) => b.weeks.length - a.weeks.length || (a.doe < b.doe ? -1 : 1))
    .slice(0, MOST_DOES);
}

const inMillilitres = ({ a, b, c }: WoodCurve): WoodCurve => ({ a: a * 1000, b, c });

function weeksOf({ days }: Lactation): MilkWeek[] {
  const weeks = new Map<number, number[]>();
  for (const { t, yield_L } of days) {
    const week = Math.floor(t / WEEK_DAYS) + 1;
    weeks.set(week, [...(weeks.get(week) ?? []), yield_L]);
  }
  return [...weeks]
    .filter(([, yields]) => yields.length >= LEAST_DAYS_A_WEEK)
    .map(([week, yields]) => ({
      week,
      mean_mL: Math.round((yields.reduce((sum, one) => sum + one, 0) / yields.length) * 1000),
    }))
    .sort((a, b) => a.week - b.week);
}
