// Even out several milkings: the same total, shared alike.
import { exactly, rounded, shownOf, whole, type Shown } from '../quantity/grade.ts';
import { count, joined, math, msg, num, qty } from '../sheet/message.ts';
import { distinctBy, total, type Reading, type TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { dayLabel, nameOf, readIn, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

interface Run {
  readonly readings: readonly Reading[];
  readonly shown: readonly Shown[];
  readonly share: Shown;
}

const onGrid = (den: number): boolean => den === 1 || den === 2 || den === 4;

function runs(context: TaskContext): Run[] {
  const found: Run[] = [];
  for (const doe of context.week.does) {
    for (const milking of ['am', 'pm'] as const) {
      const own = context.readings.filter((one) => one.doe.id === doe.id && one.milking === milking);
      for (const size of [2, 3, 4]) {
        for (let first = 0; first + size <= own.length; first += 1)
          found.push(...ready(context, own.slice(first, first + size)));
      }
    }
  }
  return found;
}

function ready(context: TaskContext, readings: readonly Reading[]): Run[] {
  const shown = readings.map((one) => readIn(one, context.measure));
  const share = shownOf(total(shown.map(exactly)).div(shown.length));
  const varied = distinctBy(shown, ({ num: n, den }) => n / den).length >= 2;
  return varied && onGrid(share.den) && shown.every(({ num: n }) => n > 0)
    ? [{ readings, shown, share }]
    : [];
}

/** Sharing liquid out evenly: the mean before the mean (5.MD.B.2). */
export const evenOut = taskKind<Run>({
  name: 'even-out',
  bands: ['3-5'],
  standards: ['5.MD.B.2'],
  lack: 'no-even-share',
  candidates(context) {
    const all = runs(context);
    const longer = all.filter(({ readings }) => readings.length > 2);
    return longer.length > 0 ? longer : all;
  },
  touches: ({ readings }) => touchesOf(readings),
  make(context, { readings, shown, share }) {
    const { unit } = context.measure;
    const first = readings[0] as Reading;
    const sum = shownOf(total(shown.map(exactly)));
    const n = readings.length;
    return {
      kind: 'even-out',
      standards: ['5.MD.B.2'],
      lead: [msg(`task.even-out.lead-${first.milking}`, { name: nameOf(first.doe) })],
      picture: {
        is: 'cards',
        cards: readings.map((one, index) => ({
          label: dayLabel(one.date),
          face: null,
          value: shown[index] as Shown,
          unit,
        })),
      },
      asks: [
        {
          prompt: msg('task.even-out.ask', { n: count(n) }),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(share, unit) }),
          values: [share],
          accepted:
            share.den > 1
              ? [
                  msg('sheet.accept.decimal', {
                    decimal: num(rounded(exactly(share), share.den === 2 ? 1 : 2)),
                  }),
                ]
              : [],
          steps: [
            msg('sheet.math', { line: math(...joined(shown, '+'), '=', sum) }),
            msg('sheet.math', { line: math(sum, '÷', whole(n), '=', share) }),
          ],
        },
      ],
      mistake: {
        what: msg('task.even-out.mistake', { wrong: qty(sum, unit) }),
        why: msg('task.even-out.why', { n: count(n) }),
      },
      fromBook: readings.flatMap((one, index) =>
        readingFromBook(one, shown[index] as Shown, context.measure),
      ),
    };
  },
});
