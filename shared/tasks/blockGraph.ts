// Colour a bar graph from counts, one square for each cup, and read it.
import { whole, type Shown } from '../quantity/grade.ts';
import { joined, math, msg, qty } from '../sheet/message.ts';
import type { Reading, TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { graphGroups, graphRows, MOST_CUPS } from './graphRows.ts';
import { cupsOf, faceOf, nameOf, onOf } from './phrases.ts';
import { taskKind, type Ask, type Task } from './task.ts';

/** Up to three categories in grade 1 (1.MD.C.4), up to four with a scale of one in grade 2 (2.MD.D.10). */
export const blockGraph = taskKind<Reading[]>({
  name: 'block-graph',
  bands: ['k-2'],
  standards: ['1.MD.C.4', '2.MD.D.10'],
  lack: 'no-three-does',
  candidates: graphGroups,
  touches: ([first]) => (first ? [`${first.date}|${first.milking}`] : []),
  make: (context, group) => graph(context, graphRows(context, group)),
});

/** How many cups the rows have in all. */
function inAll(counts: readonly Shown[], sum: Shown): Ask {
  return {
    prompt: msg('task.block-graph.ask-all'),
    work: { is: 'boxes', after: ['cup'] },
    answer: msg('sheet.answer', { amount: qty(sum, 'cup') }),
    values: [sum],
    accepted: [],
    steps: [msg('sheet.math', { line: math(...joined(counts, '+'), '=', sum) })],
  };
}

function graph(context: TaskContext, rows: readonly Reading[]): Task {
  const cups = (one: Reading) => cupsOf(one, context.cups);
  const low = [...rows].sort((a, b) => cups(a) - cups(b))[0] as Reading;
  const high = context.chance.pick(rows.filter((one) => cups(one) > cups(low)));
  const difference = whole(cups(high) - cups(low));
  const sum = whole(rows.slice(0, 3).reduce((all, one) => all + cups(one), 0));
  // Three addends of a graph stay within twenty (1.OA.A.2).
  const adds = rows.length === 3 && sum.num <= 20;
  const first = rows[0] as Reading;
  const picture = {
    is: 'block-graph' as const,
    title: msg('task.block-graph.title', { when: onOf(first.date, first.milking) }),
    most: MOST_CUPS,
    rows: rows.map((one) => ({ label: one.doe.name, face: faceOf(one.doe), count: cups(one) })),
  };
  return {
    kind: 'block-graph',
    standards: [rows.length <= 3 ? '1.MD.C.4' : '2.MD.D.10'],
    lead: [msg('task.block-graph.lead')],
    picture,
    asks: [
      {
        prompt: msg('task.block-graph.ask-color'),
        work: { is: 'picture' },
        answer: msg('task.block-graph.answer-color'),
        values: rows.map((one) => whole(cups(one))),
        accepted: [],
        steps: [],
        picture,
      },
      {
        prompt: msg('task.block-graph.ask-fewer', { high: nameOf(high.doe), low: nameOf(low.doe) }),
        work: { is: 'boxes', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(difference, 'cup') }),
        values: [difference],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(cups(high)), '−', whole(cups(low)), '=', difference) })],
      },
      ...(adds
        ? [
            inAll(
              rows.map((one) => whole(cups(one))),
              sum,
            ),
          ]
        : []),
    ],
    mistake: {
      what: msg('task.block-graph.mistake', { wrong: qty(whole(cups(high)), 'cup') }),
      why: msg('task.block-graph.why'),
    },
    fromBook: rows.flatMap((one) => readingFromBook(one, whole(cups(one)), context.cups)),
  };
}
