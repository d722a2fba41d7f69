// A table of days and amounts, and the doe-weeks that can fill one.
import { msg, type Message } from '../sheet/message.ts';
import { shownIn, valueOf, type Shown } from '../quantity/grade.ts';
import type { TablePicture } from '../sheet/picture.ts';
import type { DoeWeek } from '../herd/week.ts';
import { distinctBy, doesWithDays, type DoeDay, type TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { dayLabel, shortDayLabel } from './phrases.ts';
import { sub } from '../sheet/message.ts';
import type { FromBook } from './task.ts';

/** One doe's days as the sheet prints them. */
export interface DayRun {
  readonly doe: DoeWeek;
  readonly days: readonly DoeDay[];
  readonly shown: readonly Shown[];
}

/** Does with at least `least` full days whose printed totals are not all alike. */
export function dayRuns(context: TaskContext, least: number): DayRun[] {
  return doesWithDays(context, least)
    .map(({ doe, days }) => ({ doe, days, shown: days.map((day) => shownIn(day.total_mL, context.measure)) }))
    .filter(({ shown }) => distinctBy(shown, valueOf).length >= 2 && shown.every(({ num }) => num > 0));
}

/** The table: a heading row of days, one row of amounts. */
export function dayTable(run: DayRun, heading: Message): TablePicture {
  return {
    is: 'table',
    columns: [msg('sheet.column.day'), ...run.days.map(({ date }) => shortDayLabel(date))],
    rows: [[heading, ...run.shown]],
  };
}

/** Heading of the amounts: "Cups" or "Liters". */
export function amountHeading(context: TaskContext): Message {
  return msg(`sheet.column.${context.measure.unit}`);
}

/** Where each printed total comes from, when the band rounds it. */
export function runFromBook(context: TaskContext, run: DayRun): FromBook[] {
  return run.days.flatMap((day, index) =>
    fromBook(sub(dayLabel(day.date)), day.readings, run.shown[index] as Shown, context.measure),
  );
}
