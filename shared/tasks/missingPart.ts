// The evening's cups from the day's and the morning's: an unknown part.
import { whole } from '../quantity/grade.ts';
import { math, msg, qty } from '../sheet/message.ts';
import { readingFromBook } from './fromBook.ts';
import { cupDays, type CupDay } from './joinMilkings.ts';
import { faceOf, nameOf, onDay, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

const MOST_SUM = 20;

/** Subtraction within twenty, a part unknown (1.OA.A.1). */
export const missingPart = taskKind<CupDay>({
  name: 'missing-part',
  bands: ['k-2'],
  standards: ['1.OA.A.1'],
  lack: 'no-two-milkings',
  candidates: (context) => cupDays(context, MOST_SUM),
  touches: ({ am, pm }) => touchesOf([am, pm]),
  make(context, { am, pm, morning, evening }) {
    const sum = whole(morning + evening);
    return {
      kind: 'missing-part',
      standards: ['1.OA.A.1'],
      lead: [
        msg('task.missing-part.lead', { name: nameOf(am.doe), all: qty(sum, 'cup'), on: onDay(am.date) }),
        msg('task.missing-part.part', { part: qty(whole(morning), 'cup') }),
      ],
      picture: {
        is: 'cups',
        groups: [{ label: msg('sheet.label.am'), face: faceOf(am.doe), count: morning }],
        perRow: 10,
      },
      asks: [
        {
          prompt: msg('task.missing-part.ask'),
          work: { is: 'boxes', after: ['cup'] },
          answer: msg('sheet.answer', { amount: qty(whole(evening), 'cup') }),
          values: [whole(evening)],
          accepted: [],
          steps: [msg('sheet.math', { line: math(sum, '−', whole(morning), '=', whole(evening)) })],
        },
      ],
      mistake: {
        what: msg('task.missing-part.mistake', { wrong: qty(whole(sum.num + morning), 'cup') }),
        why: msg('task.missing-part.why'),
      },
      fromBook: [
        ...readingFromBook(am, whole(morning), context.cups),
        ...readingFromBook(pm, whole(evening), context.cups),
      ],
    };
  },
});
