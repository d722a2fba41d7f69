// Count the cups of one milking.
import { count, msg, num, qty } from '../sheet/message.ts';
import { whole } from '../quantity/grade.ts';
import { readingFromBook } from './fromBook.ts';
import { faceOf, nameOf, onOf, touchesOf } from './phrases.ts';
import { countable, type Countable } from './countable.ts';
import { taskKind } from './task.ts';

/** Most objects that K.CC.B.5 counts in rows. */
const MOST = 20;
const LEAST = 3;

/** Kindergarten counts up to twenty things in rows (K.CC.B.5). */
export const countCups = taskKind<Countable>({
  name: 'count-cups',
  bands: ['k-2'],
  standards: ['K.CC.B.5'],
  lack: 'no-countable-milking',
  candidates: (context) => countable(context, LEAST, MOST),
  touches: ({ reading }) => touchesOf([reading]),
  make(context, { reading, cups }) {
    const shown = whole(cups);
    return {
      kind: 'count-cups',
      standards: ['K.CC.B.5'],
      lead: [
        msg('task.count-cups.lead', { name: nameOf(reading.doe), on: onOf(reading.date, reading.milking) }),
      ],
      picture: {
        is: 'cups',
        groups: [{ label: null, face: faceOf(reading.doe), count: cups }],
        perRow: cups > 10 ? 10 : 5,
      },
      asks: [
        {
          prompt: msg('task.count-cups.ask'),
          work: { is: 'boxes', after: ['cup'] },
          answer: msg('sheet.answer', { amount: qty(shown, 'cup') }),
          values: [shown],
          accepted: [msg('sheet.accept.word', { n: num(shown) })],
          steps:
            cups > 10
              ? [msg('task.count-cups.step-ten', { n: count(cups - 10), all: num(shown) })]
              : cups > 5
                ? [msg('task.count-cups.step-five', { n: count(cups - 5), all: num(shown) })]
                : [msg('task.count-cups.step', { n: count(cups) })],
        },
      ],
      mistake: {
        what: msg('task.count-cups.mistake', { low: count(cups - 1), high: count(cups + 1) }),
        why: msg('task.count-cups.why'),
      },
      fromBook: readingFromBook(reading, shown, context.cups),
    };
  },
});
