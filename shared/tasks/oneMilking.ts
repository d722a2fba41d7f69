// Readings of one milking, held beside each other in whole cups.
import { leastUsed, namesDiffer, use, type Reading, type TaskContext } from './context.ts';
import { mostToCompare } from './countable.ts';
import { cupsOf, touchesOf } from './phrases.ts';

/** Readings of one milking that can stand beside each other: 1 to `most` cups each. */
export function sameMilking(context: TaskContext, most: number): Reading[][] {
  const groups = new Map<string, Reading[]>();
  for (const reading of context.readings) {
    const cups = cupsOf(reading, context.cups);
    if (cups < 1 || cups > most) continue;
    const slot = `${reading.date}|${reading.milking}`;
    groups.set(slot, [...(groups.get(slot) ?? []), reading]);
  }
  return [...groups.values()];
}

const differ = (context: TaskContext, a: Reading, b: Reading): boolean =>
  cupsOf(a, context.cups) !== cupsOf(b, context.cups) && namesDiffer([a.doe, b.doe]);

/** Milkings in which two does of different names gave more and less. */
export function groupsToCompare(context: TaskContext): Reading[][] {
  return sameMilking(context, mostToCompare(context)).filter((group) =>
    group.some((a) => group.some((b) => differ(context, a, b))),
  );
}

/** Two of such a group that differ, those that the sheet has used least; noted as used. */
export function pairToCompare(context: TaskContext, group: readonly Reading[]): [Reading, Reading] {
  const able = group.filter((a) => group.some((b) => differ(context, a, b)));
  const [one] = leastUsed(context, able, 1, ({ doe }) => doe.id) as [Reading];
  const rivals = group.filter((other) => differ(context, one, other));
  const [other] = leastUsed(context, rivals, 1, ({ doe }) => doe.id) as [Reading];
  use(context, touchesOf([one, other]));
  return [one, other];
}
