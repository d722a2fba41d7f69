// Mark an amount on a number line in quarters, and say which whole numbers it lies between.
import { valueOf, whole, type Shown } from '../quantity/grade.ts';
import { msg, num, qty } from '../sheet/message.ts';
import type { NumberLinePicture } from '../sheet/picture.ts';
import type { Reading } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { nameOf, onOf, readIn, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

const SPAN = 3;

/** Fractions on a number line, quarters and halves (3.NF.A.2.b). */
export const markNumberLine = taskKind<{ reading: Reading; shown: Shown }>({
  name: 'mark-number-line',
  bands: ['3-5'],
  standards: ['3.NF.A.2.b'],
  lack: 'no-fraction',
  candidates: (context) =>
    context.readings
      .map((reading) => ({ reading, shown: readIn(reading, context.measure) }))
      .filter(({ shown }) => shown.den > 1),
  touches: ({ reading }) => touchesOf([reading]),
  make(context, { reading, shown }) {
    const below = Math.floor(valueOf(shown));
    // One unit before and one after where there is room, so that the place is not given away.
    const from = Math.max(0, below - context.chance.int(0, SPAN - 1));
    const { unit } = context.measure;
    const line: NumberLinePicture = { is: 'number-line', from, to: from + SPAN, parts: 4, unit, marks: [] };
    const quarters = (shown.num * 4) / shown.den - below * 4;
    return {
      kind: 'mark-number-line',
      standards: ['3.NF.A.2.b'],
      lead: [
        msg('task.mark-number-line.lead', {
          name: nameOf(reading.doe),
          amount: qty(shown, unit),
          on: onOf(reading.date, reading.milking),
        }),
      ],
      picture: line,
      asks: [
        {
          prompt: msg('task.mark-number-line.ask-mark', { number: num(shown) }),
          work: { is: 'picture' },
          answer: msg('task.mark-number-line.answer', { number: num(shown) }),
          values: [shown],
          accepted: [],
          steps: [msg('task.mark-number-line.step', { n: num(whole(quarters)), below: num(whole(below)) })],
          picture: { ...line, marks: [shown] },
        },
        {
          prompt: msg('task.mark-number-line.ask-between'),
          work: { is: 'boxes', after: [null, null], signs: ['and'] },
          answer: msg('sheet.answer-and', { a: num(whole(below)), b: num(whole(below + 1)) }),
          values: [whole(below), whole(below + 1)],
          accepted: [],
          steps: [
            msg('task.mark-number-line.step-between', {
              number: num(shown),
              below: num(whole(below)),
              above: num(whole(below + 1)),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.mark-number-line.mistake', { n: num(whole(quarters)) }),
        why: msg('task.mark-number-line.why'),
      },
      fromBook: readingFromBook(reading, shown, context.measure),
    };
  },
});
