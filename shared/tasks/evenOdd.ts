// Ring the cups two by two: even or odd.
import { whole } from '../quantity/grade.ts';
import { count, msg, sub } from '../sheet/message.ts';
import { readingFromBook } from './fromBook.ts';
import { faceOf, nameOf, onOf, touchesOf } from './phrases.ts';
import { countable, type Countable } from './countable.ts';
import { taskKind } from './task.ts';

const MOST = 20;
const LEAST = 4;

/** Even or odd by pairs, to twenty (2.OA.C.3). */
export const evenOdd = taskKind<Countable>({
  name: 'even-odd',
  bands: ['k-2'],
  standards: ['2.OA.C.3'],
  lack: 'no-countable-milking',
  candidates: (context) => countable(context, LEAST, MOST),
  touches: ({ reading }) => touchesOf([reading]),
  make(context, { reading, cups }) {
    const right = cups % 2 === 0 ? 'even' : 'odd';
    const wrong = right === 'even' ? 'odd' : 'even';
    return {
      kind: 'even-odd',
      standards: ['2.OA.C.3'],
      lead: [
        msg('task.even-odd.lead', { name: nameOf(reading.doe), on: onOf(reading.date, reading.milking) }),
      ],
      picture: { is: 'cups', groups: [{ label: null, face: faceOf(reading.doe), count: cups }], perRow: 10 },
      asks: [
        {
          prompt: msg('task.even-odd.ask'),
          work: { is: 'ring', of: [sub(msg('task.even-odd.even')), sub(msg('task.even-odd.odd'))] },
          answer: msg(`task.even-odd.answer-${right}`, { n: count(cups) }),
          values: [right, whole(cups)],
          accepted: [],
          steps: [msg(`task.even-odd.step-${right}`, { n: count(Math.floor(cups / 2)) })],
        },
      ],
      mistake: { what: msg(`task.even-odd.mistake-${wrong}`), why: msg('task.even-odd.why') },
      fromBook: readingFromBook(reading, whole(cups), context.cups),
    };
  },
});
