// A claim about two does: true or not? The cups tell.
import { whole } from '../quantity/grade.ts';
import { count, msg, sub, type Message } from '../sheet/message.ts';
import type { Reading, TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { groupsToCompare, pairToCompare } from './oneMilking.ts';
import { cupsOf, faceOf, nameOf, onOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

/** More, fewer or as many within ten (K.CC.C.6); how many more, within twenty, from grade 1 (1.OA.A.1). */
export const trueOrNot = taskKind<Reading[]>({
  name: 'true-or-not',
  bands: ['k-2'],
  standards: ['K.CC.C.6', '1.OA.A.1'],
  lack: 'no-two-does',
  candidates: groupsToCompare,
  touches: ([first]) => (first ? [`${first.date}|${first.milking}`] : []),
  make: (context, group) => claimed(context, ...pairToCompare(context, group)),
});

/** The claim, and whether it holds. */
function claimOf(
  context: TaskContext,
  a: Reading,
  b: Reading,
): { claim: Message; holds: boolean; older: boolean } {
  const [high, low] = cupsOf(a, context.cups) > cupsOf(b, context.cups) ? [a, b] : [b, a];
  const difference = cupsOf(high, context.cups) - cupsOf(low, context.cups);
  const holds = context.chance.int(0, 1) === 1;
  const [first, second] = holds ? [high, low] : [low, high];
  const names = { a: nameOf(first.doe), b: nameOf(second.doe) };
  if (context.grade === 0 || context.chance.int(0, 1) === 0)
    return { claim: msg('task.true-or-not.claim-more', names), holds, older: false };
  const said = holds ? difference : difference + 1;
  const right = { a: nameOf(high.doe), b: nameOf(low.doe), n: count(said) };
  return { claim: msg('task.true-or-not.claim-by', right), holds, older: true };
}

function claimed(context: TaskContext, one: Reading, other: Reading): Task {
  const { claim, holds, older } = claimOf(context, one, other);
  const pair = [one, other];
  const counts = pair.map((reading) => whole(cupsOf(reading, context.cups)));
  const [a, b] = counts as [ReturnType<typeof whole>, ReturnType<typeof whole>];
  const verdict = holds ? 'true' : 'not-true';
  return {
    kind: 'true-or-not',
    standards: [older || Math.max(a.num, b.num) > 10 ? '1.OA.A.1' : 'K.CC.C.6'],
    lead: [msg('task.true-or-not.lead', { on: onOf(one.date, one.milking) })],
    picture: {
      is: 'cups',
      groups: pair.map((reading) => ({
        label: reading.doe.name,
        face: faceOf(reading.doe),
        count: cupsOf(reading, context.cups),
      })),
      perRow: 10,
    },
    asks: [
      {
        prompt: claim,
        work: { is: 'ring', of: ['true', 'not-true'].map((key) => sub(msg(`task.true-or-not.${key}`))) },
        answer: msg(`task.true-or-not.${verdict}`),
        values: [verdict],
        accepted: [],
        steps: pair.map((reading) =>
          msg('task.true-or-not.step', {
            name: nameOf(reading.doe),
            cups: { is: 'quantity', ...whole(cupsOf(reading, context.cups)), unit: 'cup' },
          }),
        ),
      },
      {
        prompt: msg('task.true-or-not.ask-numbers'),
        work: { is: 'boxes', after: [null, null], signs: ['and'] },
        answer: msg('sheet.answer-and', { a: { is: 'number', ...a }, b: { is: 'number', ...b } }),
        values: counts,
        accepted: [],
        steps: [msg('task.true-or-not.step-count')],
      },
    ],
    mistake: { what: msg('task.true-or-not.mistake'), why: msg('task.true-or-not.why') },
    fromBook: pair.flatMap((reading) =>
      readingFromBook(reading, whole(cupsOf(reading, context.cups)), context.cups),
    ),
  };
}
