// A picture graph of three or four does, one cup to a picture.
import { whole } from '../quantity/grade.ts';
import { joined, math, msg, qty } from '../sheet/message.ts';
import type { Reading, TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { graphGroups, graphRows } from './graphRows.ts';
import { cupsOf, faceOf, nameOf, onOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

/** Reads a graph of one milking: how many more, and how many together. */
export const pictureGraph = taskKind<Reading[]>({
  name: 'picture-graph',
  bands: ['k-2'],
  standards: ['1.MD.C.4', '2.MD.D.10'],
  lack: 'no-three-does',
  candidates: graphGroups,
  touches: ([first]) => (first ? [`${first.date}|${first.milking}`] : []),
  make: (context, group) => graph(context, graphRows(context, group)),
});

function graph(context: TaskContext, rows: readonly Reading[]): Task {
  const cups = (one: Reading) => cupsOf(one, context.cups);
  const high = [...rows].sort((a, b) => cups(b) - cups(a))[0] as Reading;
  const low = context.chance.pick(rows.filter((one) => cups(one) < cups(high)));
  const others = rows.filter((one) => one !== high);
  const [a, b] = context.chance.shuffle(others) as [Reading, Reading];
  const difference = whole(cups(high) - cups(low));
  const sum = whole(cups(a) + cups(b));
  const first = rows[0] as Reading;
  return {
    kind: 'picture-graph',
    standards: [rows.length <= 3 ? '1.MD.C.4' : '2.MD.D.10'],
    lead: [msg('task.picture-graph.lead')],
    picture: {
      is: 'picture-graph',
      title: msg('task.picture-graph.title', { when: onOf(first.date, first.milking) }),
      rows: rows.map((one) => ({ label: one.doe.name, face: faceOf(one.doe), count: cups(one) })),
    },
    asks: [
      {
        prompt: msg('task.picture-graph.ask-more', { high: nameOf(high.doe), low: nameOf(low.doe) }),
        work: { is: 'boxes', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(difference, 'cup') }),
        values: [difference],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(cups(high)), '−', whole(cups(low)), '=', difference) })],
      },
      {
        prompt: msg('task.picture-graph.ask-both', { a: nameOf(a.doe), b: nameOf(b.doe) }),
        work: { is: 'boxes', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(sum, 'cup') }),
        values: [sum],
        accepted: [],
        steps: [
          msg('sheet.math', { line: math(...joined([whole(cups(a)), whole(cups(b))], '+'), '=', sum) }),
        ],
      },
    ],
    mistake: {
      what: msg('task.picture-graph.mistake', { wrong: qty(whole(cups(high)), 'cup') }),
      why: msg('task.picture-graph.why'),
    },
    fromBook: rows.flatMap((one) => readingFromBook(one, whole(cups(one)), context.cups)),
  };
}
