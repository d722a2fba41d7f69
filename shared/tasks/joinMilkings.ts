// Join the morning's cups and the evening's cups of one doe.
import { whole } from '../quantity/grade.ts';
import { count, math, msg, qty } from '../sheet/message.ts';
import type { DoeDay, Reading, TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { cupsOf, faceOf, nameOf, onDay, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

/** Addition within twenty: grade 1. */
const MOST_SUM = 20;

/** A doe's day in whole cups: both milkings 1 cup or more, together no more than `most`. */
export interface CupDay {
  readonly am: Reading;
  readonly pm: Reading;
  readonly morning: number;
  readonly evening: number;
}

/** The days of does whose two milkings can be added. */
export function cupDays(context: TaskContext, most: number): CupDay[] {
  return context.doeDays.flatMap(({ am, pm }: DoeDay) => {
    if (!am || !pm) return [];
    const [morning, evening] = [cupsOf(am, context.cups), cupsOf(pm, context.cups)];
    return morning >= 1 && evening >= 1 && morning + evening <= most ? [{ am, pm, morning, evening }] : [];
  });
}

/** Adding to twenty (1.OA.A.1), to ten in kindergarten (K.OA.A.2). */
export const joinMilkings = taskKind<CupDay>({
  name: 'join-milkings',
  bands: ['k-2'],
  standards: ['K.OA.A.2', '1.OA.A.1'],
  lack: 'no-two-milkings',
  candidates: (context) => cupDays(context, MOST_SUM),
  touches: ({ am, pm }) => touchesOf([am, pm]),
  make(context, { am, pm, morning, evening }) {
    const sum = whole(morning + evening);
    return {
      kind: 'join-milkings',
      standards: [sum.num <= 10 ? 'K.OA.A.2' : '1.OA.A.1'],
      lead: [msg('task.join-milkings.lead', { name: nameOf(am.doe), on: onDay(am.date) })],
      picture: {
        is: 'cups',
        groups: [
          { label: msg('sheet.label.am'), face: faceOf(am.doe), count: morning },
          { label: msg('sheet.label.pm'), face: null, count: evening },
        ],
        perRow: 10,
      },
      asks: [
        {
          prompt: msg('task.join-milkings.ask'),
          work: { is: 'boxes', after: [null, null, 'cup'], signs: ['+', '='], room: true },
          answer: msg('sheet.math', { line: math(whole(morning), '+', whole(evening), '=', sum) }),
          values: [whole(morning), whole(evening), sum],
          accepted: [msg('sheet.math', { line: math(whole(evening), '+', whole(morning), '=', sum) })],
          steps: [
            msg('task.join-milkings.step', {
              a: qty(whole(morning), 'cup'),
              n: count(evening),
              sum: qty(sum, 'cup'),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.join-milkings.mistake', { wrong: qty(whole(morning + evening - 1), 'cup') }),
        why: msg('task.join-milkings.why'),
      },
      fromBook: [
        ...readingFromBook(am, whole(morning), context.cups),
        ...readingFromBook(pm, whole(evening), context.cups),
      ],
    };
  },
});
