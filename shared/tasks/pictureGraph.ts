// A picture graph of three or four does, one cup to a picture.
import { whole } from '../quantity/grade.ts';
import { joined, math, msg, qty } from '../sheet/message.ts';
import { distinctBy, leastUsed, use, type Reading, type TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { sameMilking } from './moreOrLess.ts';
import { cupsOf, faceOf, nameOf, onOf, touchesOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

// A row of ten is still counted at a glance, and two rows add up to twenty.
const MOST_CUPS = 10;

const byName = (group: readonly Reading[]): Reading[] => distinctBy(group, ({ doe }) => doe.name);

/** Reads a graph of one milking: how many more, and how many together. */
export const pictureGraph = taskKind<Reading[]>({
  name: 'picture-graph',
  bands: ['k-2'],
  standards: ['1.MD.C.4', '2.MD.D.10'],
  lack: 'no-three-does',
  candidates: (context) =>
    sameMilking(context, MOST_CUPS)
      .map(byName)
      .filter(
        (group) => group.length >= 3 && distinctBy(group, (one) => cupsOf(one, context.cups)).length >= 2,
      ),
  touches: ([first]) => (first ? [`${first.date}|${first.milking}`] : []),
  make(context, group) {
    // Grade 2 graphs have up to four categories and a scale of one (2.MD.D.10), grade 1 three (1.MD.C.4).
    const size = Math.min(group.length, context.grade >= 2 ? 4 : 3);
    const least = (one: Reading) => one.doe.id;
    let rows = leastUsed(context, group, size, least);
    const cups = (one: Reading) => cupsOf(one, context.cups);
    if (distinctBy(rows, cups).length < 2) {
      const other = group.find((one) => cups(one) !== cups(rows[0] as Reading)) as Reading;
      rows = [...rows.slice(0, size - 1), other];
    }
    use(context, touchesOf(rows));
    return graph(context, rows);
  },
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
