// On which of two days one doe gave more, and how many cups more.
import { whole } from '../quantity/grade.ts';
import { math, msg, qty, sub } from '../sheet/message.ts';
import type { Reading, TaskContext } from './context.ts';
import { mostToCompare } from './countable.ts';
import { readingFromBook } from './fromBook.ts';
import { cupsOf, dayLabel, nameOf, touchesOf } from './phrases.ts';
import { taskKind, type Ask } from './task.ts';

function pairs(context: TaskContext): [Reading, Reading][] {
  const able = context.readings.filter((one) => {
    const cups = cupsOf(one, context.cups);
    return cups >= 1 && cups <= mostToCompare(context);
  });
  return able.flatMap((a) =>
    able
      .filter((b) => b.doe.id === a.doe.id && b.milking === a.milking && b.date > a.date)
      .filter((b) => cupsOf(a, context.cups) !== cupsOf(b, context.cups))
      .map((b): [Reading, Reading] => [a, b]),
  );
}

/** Comparing to ten (K.CC.C.6), taking away within twenty (1.OA.A.1). */
export const twoDays = taskKind<[Reading, Reading]>({
  name: 'two-days',
  bands: ['k-2'],
  standards: ['K.CC.C.6', '1.OA.A.1'],
  lack: 'no-two-days',
  candidates: pairs,
  touches: touchesOf,
  make(context, [a, b]) {
    const cups = (one: Reading) => cupsOf(one, context.cups);
    const more = cups(a) > cups(b) ? a : b;
    const [high, low] = [whole(Math.max(cups(a), cups(b))), whole(Math.min(cups(a), cups(b)))];
    const difference = whole(high.num - low.num);
    const kindergarten = context.grade === 0;
    const askMore: Ask = {
      prompt: msg('task.two-days.ask-more'),
      work: { is: 'boxes', after: ['cup'] },
      answer: msg('sheet.answer', { amount: qty(difference, 'cup') }),
      values: [difference],
      accepted: [],
      steps: [msg('sheet.math', { line: math(high, '−', low, '=', difference) })],
    };
    return {
      kind: 'two-days',
      // To say which is more is for kindergarten; how many more is asked from grade 1.
      standards: [kindergarten ? 'K.CC.C.6' : '1.OA.A.1'],
      lead: [msg(`task.two-days.lead-${a.milking}`, { name: nameOf(a.doe) })],
      picture: {
        is: 'cups',
        groups: [a, b].map((one) => ({ label: dayLabel(one.date), face: null, count: cups(one) })),
        perRow: 10,
      },
      asks: [
        {
          prompt: msg('task.two-days.ask-day'),
          work: { is: 'ring', of: [sub(dayLabel(a.date)), sub(dayLabel(b.date))] },
          answer: msg('sheet.answer-name', { name: sub(dayLabel(more.date)) }),
          values: [more.date],
          accepted: [],
          steps: [msg('task.two-days.step', { high: qty(high, 'cup'), low: qty(low, 'cup') })],
        },
        ...(kindergarten ? [] : [askMore]),
      ],
      mistake: kindergarten
        ? { what: msg('task.more-or-less.mistake-look'), why: msg('task.more-or-less.why-look') }
        : {
            what: msg('task.two-days.mistake', { wrong: qty(high, 'cup') }),
            why: msg('task.two-days.why'),
          },
      fromBook: [a, b].flatMap((one) => readingFromBook(one, whole(cups(one)), context.cups)),
    };
  },
});
