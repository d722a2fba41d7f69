// Where the texts of a sheet stand among the tasks that were made.
import type { SheetText } from './plan.ts';
import type { Sheet } from './sheet.ts';

/**
 * The texts before a task, by its index among those that were made: each text once, before the first task that it leads to.
 * A text that leads to a task for which another stands in is left out, unless it opens the sheet: it speaks of what is not there.
 */
export function textsByTask(sheet: Sheet, texts: readonly SheetText[]): (index: number) => readonly string[] {
  const { tasks } = sheet;
  const speaksOf = new Map(tasks.map(({ place, standsIn }) => [place, standsIn !== true]));
  const fits = ({ before }: SheetText): boolean => before === 0 || (speaksOf.get(before) ?? true);
  return (index) => {
    const from = (tasks[index - 1]?.place ?? -1) + 1;
    const to = tasks[index]?.place ?? -1;
    return texts.filter((one) => from <= one.before && one.before <= to && fits(one)).map(({ text }) => text);
  };
}

/** The texts after the last task. */
export function textsAfter(sheet: Sheet, texts: readonly SheetText[]): readonly string[] {
  const last = sheet.tasks.at(-1)?.place ?? -1;
  return texts.filter(({ before }) => before > last).map(({ text }) => text);
}
