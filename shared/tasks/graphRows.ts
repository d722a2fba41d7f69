// The does of one milking that stand in a graph of whole cups, a row for each.
import { distinctBy, leastUsed, use, type Reading, type TaskContext } from './context.ts';
import { sameMilking } from './oneMilking.ts';
import { cupsOf, touchesOf } from './phrases.ts';

/** Most cups of a row: ten are still counted at a glance, two rows add up to twenty, and ten squares of 1 cm fit beside face, name and number. */
export const MOST_CUPS = 10;

/** Milkings of three does or more, each name once, that do not all give the same. */
export function graphGroups(context: TaskContext): Reading[][] {
  const cups = (one: Reading) => cupsOf(one, context.cups);
  return sameMilking(context, MOST_CUPS)
    .map((group) => distinctBy(group, ({ doe }) => doe.name))
    .filter((group) => group.length >= 3 && distinctBy(group, cups).length >= 2);
}

/** Of such a group up to four does in grade 2 (2.MD.D.10) and three in grade 1 (1.MD.C.4), not all of the same; noted as used. */
export function graphRows(context: TaskContext, group: readonly Reading[]): readonly Reading[] {
  const cups = (one: Reading) => cupsOf(one, context.cups);
  const size = Math.min(group.length, context.grade >= 2 ? 4 : 3);
  let rows = leastUsed(context, group, size, ({ doe }) => doe.id);
  if (distinctBy(rows, cups).length < 2) {
    const other = group.find((one) => cups(one) !== cups(rows[0] as Reading)) as Reading;
    rows = [...rows.slice(0, size - 1), other];
  }
  use(context, touchesOf(rows));
  return rows;
}
