// Add one doe's cups of three days.
import { whole, type Shown } from '../quantity/grade.ts';
import { joined, math, msg, qty } from '../sheet/message.ts';
import type { Reading, TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { cupsOf, dayLabel, nameOf, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

const MOST = 20;
const DAYS = 3;

/** Three of one doe's mornings (or evenings) in a row of entries, 1 to 20 cups each. */
export function threeInARow(context: TaskContext): Reading[][] {
  const runs: Reading[][] = [];
  for (const doe of context.week.does) {
    for (const milking of ['am', 'pm'] as const) {
      const own = context.readings.filter((one) => one.doe.id === doe.id && one.milking === milking);
      for (let first = 0; first + DAYS <= own.length; first += 1) runs.push(own.slice(first, first + DAYS));
    }
  }
  return runs.filter((run) =>
    run.every((one) => cupsOf(one, context.cups) >= 1 && cupsOf(one, context.cups) <= MOST),
  );
}

/** Three addends: to twenty in grade 1 (1.OA.A.2), two-digit ones in grade 2 (2.NBT.B.6). */
export const addDays = taskKind<Reading[]>({
  name: 'add-days',
  bands: ['k-2'],
  standards: ['1.OA.A.2', '2.NBT.B.6'],
  lack: 'no-three-days',
  candidates: threeInARow,
  touches: touchesOf,
  make(context, run) {
    const shown = run.map((one) => whole(cupsOf(one, context.cups)));
    const [a, b, c] = shown as [Shown, Shown, Shown];
    const two = whole(a.num + b.num);
    const sum = whole(two.num + c.num);
    const first = run[0] as Reading;
    return {
      kind: 'add-days',
      standards: [sum.num <= 20 ? '1.OA.A.2' : '2.NBT.B.6'],
      lead: [msg(`task.add-days.lead-${first.milking}`, { name: nameOf(first.doe) })],
      picture: {
        is: 'cards',
        cards: run.map((one, index) => ({
          label: dayLabel(one.date),
          face: null,
          value: shown[index] as Shown,
          unit: 'cup',
        })),
      },
      asks: [
        {
          prompt: msg('task.add-days.ask'),
          work: { is: 'boxes', after: [null, null, null, 'cup'], signs: ['+', '+', '='], room: true },
          answer: msg('sheet.math', { line: math(...joined(shown, '+'), '=', sum) }),
          values: [...shown, sum],
          accepted: [],
          steps: [
            msg('sheet.math', { line: math(a, '+', b, '=', two) }),
            msg('sheet.math', { line: math(two, '+', c, '=', sum) }),
          ],
        },
      ],
      mistake: {
        what: msg('task.add-days.mistake', { wrong: qty(two, 'cup') }),
        why: msg('task.add-days.why'),
      },
      fromBook: run.flatMap((one, index) => readingFromBook(one, shown[index] as Shown, context.cups)),
    };
  },
});
