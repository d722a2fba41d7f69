// How many more cups fill the jar.
import { whole } from '../quantity/grade.ts';
import { count, math, msg, qty } from '../sheet/message.ts';
import type { JarsPicture } from '../sheet/picture.ts';
import type { Reading } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { cupsOf, nameOf, onOf, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

/** Adding with an unknown part within ten (K.OA.A.2) for milkings that do not fill the jar. */
export const fillUp = taskKind<{ reading: Reading; cups: number; perJar: number }>({
  name: 'fill-up',
  bands: ['k-2'],
  standards: ['K.OA.A.2'],
  lack: 'no-less-than-a-jar',
  candidates(context) {
    const perJar = context.cupsPerJar;
    if (perJar === null) return [];
    return context.readings
      .map((reading) => ({ reading, cups: cupsOf(reading, context.cups), perJar }))
      .filter(({ cups }) => cups >= 1 && cups < perJar);
  },
  touches: ({ reading }) => touchesOf([reading]),
  make(context, { reading, cups, perJar }) {
    const jar: JarsPicture = { is: 'jars', cupsPerJar: perJar, jars: 1, filled: 0 };
    const more = whole(perJar - cups);
    return {
      kind: 'fill-up',
      standards: ['K.OA.A.2'],
      lead: [
        msg('task.fill-up.lead', {
          name: nameOf(reading.doe),
          amount: qty(whole(cups), 'cup'),
          on: onOf(reading.date, reading.milking),
        }),
        msg('task.fill-up.jar', { n: count(perJar) }),
      ],
      picture: jar,
      asks: [
        {
          prompt: msg('task.fill-up.ask'),
          work: { is: 'boxes', after: ['cup'] },
          answer: msg('sheet.answer', { amount: qty(more, 'cup') }),
          values: [more],
          accepted: [],
          steps: [msg('sheet.math', { line: math(whole(cups), '+', more, '=', whole(perJar)) })],
          picture: { ...jar, filled: cups },
        },
      ],
      mistake: {
        what: msg('task.fill-up.mistake', { wrong: qty(whole(perJar + cups), 'cup') }),
        why: msg('task.fill-up.why'),
      },
      fromBook: readingFromBook(reading, whole(cups), context.cups),
    };
  },
});
