// Which of two does gave more at one milking, and how many cups more.
import { whole } from '../quantity/grade.ts';
import { math, msg, qty } from '../sheet/message.ts';
import type { Reading, TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { groupsToCompare, pairToCompare } from './oneMilking.ts';
import { cupsOf, faceOf, nameOf, onOf } from './phrases.ts';
import { taskKind, type Ask, type Task } from './task.ts';

/** Kindergarten compares groups of up to ten (K.CC.C.6), grade 1 subtracts within twenty (1.OA.A.1). */
export const moreOrLess = taskKind<Reading[]>({
  name: 'more-or-less',
  bands: ['k-2'],
  standards: ['K.CC.C.6', '1.OA.A.1'],
  lack: 'no-two-does',
  candidates: groupsToCompare,
  touches: ([first]) => (first ? [`${first.date}|${first.milking}`] : []),
  make: (context, group) => compare(context, ...pairToCompare(context, group)),
});

function compare(context: TaskContext, one: Reading, other: Reading): Task {
  const [a, b] = [cupsOf(one, context.cups), cupsOf(other, context.cups)];
  const [more, less] = a > b ? [one, other] : [other, one];
  const kindergarten = context.grade === 0;
  const difference = whole(Math.abs(a - b));
  const [high, low] = [whole(Math.max(a, b)), whole(Math.min(a, b))];
  const askMore: Ask = {
    prompt: msg('task.more-or-less.ask-more'),
    work: { is: 'boxes', after: ['cup'] },
    answer: msg('sheet.answer', { amount: qty(difference, 'cup') }),
    values: [difference],
    accepted: [],
    steps: [msg('sheet.math', { line: math(high, '−', low, '=', difference) })],
  };
  return {
    kind: 'more-or-less',
    // To say which is more is for kindergarten; how many more is asked from grade 1.
    standards: [kindergarten ? 'K.CC.C.6' : '1.OA.A.1'],
    lead: [msg('task.more-or-less.lead', { on: onOf(one.date, one.milking) })],
    picture: {
      is: 'cups',
      groups: [one, other].map((reading) => ({
        label: reading.doe.name,
        face: faceOf(reading.doe),
        count: cupsOf(reading, context.cups),
      })),
      perRow: 10,
    },
    asks: [
      {
        prompt: msg('task.more-or-less.ask-who'),
        work: { is: 'ring', of: [nameOf(one.doe), nameOf(other.doe)] },
        answer: msg('sheet.answer-name', { name: nameOf(more.doe) }),
        values: [more.doe.name],
        accepted: [],
        steps: [
          msg('task.more-or-less.step-who', {
            name: nameOf(more.doe),
            high: qty(high, 'cup'),
            other: nameOf(less.doe),
            low: qty(low, 'cup'),
          }),
        ],
      },
      ...(kindergarten ? [] : [askMore]),
    ],
    mistake: kindergarten
      ? { what: msg('task.more-or-less.mistake-look'), why: msg('task.more-or-less.why-look') }
      : {
          what: msg('task.more-or-less.mistake', { wrong: qty(high, 'cup') }),
          why: msg('task.more-or-less.why'),
        },
    fromBook: [one, other].flatMap((reading) =>
      readingFromBook(reading, whole(cupsOf(reading, context.cups)), context.cups),
    ),
  };
}
