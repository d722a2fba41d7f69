// The same amount each day for a week, and what the book says the week came to.
import { shownIn, whole } from '../quantity/grade.ts';
import { math, msg, qty, sub } from '../sheet/message.ts';
import { doesWithDays, type DoeDay, type TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { nameOf, onDay, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

const DAYS = 7;

interface Rate {
  readonly days: readonly DoeDay[];
  readonly day: DoeDay;
  readonly cups: number;
  readonly weekCups: number;
}

function rates(context: TaskContext): Rate[] {
  return doesWithDays(context, DAYS).flatMap(({ days }) => {
    const weekCups = shownIn(
      days.reduce((sum, day) => sum + day.total_mL, 0),
      context.cups,
    ).num;
    return days
      .map((day) => ({ days, day, cups: shownIn(day.total_mL, context.cups).num, weekCups }))
      .filter(({ cups }) => cups >= 2 && cups <= 999 && cups * DAYS !== weekCups);
  });
}

/** Whole-number times (3.OA.A.3 to a hundred, 4.NBT.B.5 above) and how far the real week lies from it (3.NBT.A.2). */
export const weekAtThisRate = taskKind<Rate>({
  name: 'week-at-this-rate',
  bands: ['3-5'],
  standards: ['3.OA.A.3', '3.NBT.A.2', '4.NBT.B.5'],
  lack: 'no-full-week',
  candidates: rates,
  touches: ({ day }) => touchesOf(day.readings),
  make(context, { days, day, cups, weekCups }) {
    const product = whole(cups * DAYS);
    const [high, low] = product.num > weekCups ? [product, whole(weekCups)] : [whole(weekCups), product];
    const difference = whole(high.num - low.num);
    const more = weekCups > product.num ? 'more' : 'less';
    return {
      kind: 'week-at-this-rate',
      standards: product.num <= 100 ? ['3.OA.A.3', '3.NBT.A.2'] : ['4.NBT.B.5'],
      lead: [
        msg('task.week-at-this-rate.lead', {
          name: nameOf(day.doe),
          amount: qty(whole(cups), 'cup'),
          on: onDay(day.date),
        }),
      ],
      picture: null,
      asks: [
        {
          prompt: msg('task.week-at-this-rate.ask'),
          work: { is: 'working', after: ['cup'] },
          answer: msg('sheet.answer', { amount: qty(product, 'cup') }),
          values: [product],
          accepted: [],
          steps: [msg('sheet.math', { line: math(whole(cups), '×', whole(DAYS), '=', product) })],
        },
        {
          prompt: msg('task.week-at-this-rate.ask-book', { amount: qty(whole(weekCups), 'cup') }),
          work: { is: 'boxes', after: ['cup'] },
          answer: msg(`task.week-at-this-rate.answer-${more}`, { amount: qty(difference, 'cup') }),
          values: [difference],
          accepted: [],
          steps: [msg('sheet.math', { line: math(high, '−', low, '=', difference) })],
        },
      ],
      mistake: {
        what: msg('task.week-at-this-rate.mistake', { wrong: qty(whole(cups + DAYS), 'cup') }),
        why: msg('task.week-at-this-rate.why'),
      },
      fromBook: [
        ...fromBook(
          sub(msg('sheet.doe-on', { name: nameOf(day.doe), on: onDay(day.date) })),
          day.readings,
          whole(cups),
          context.cups,
        ),
        ...fromBook(
          nameOf(day.doe),
          days.flatMap(({ readings }) => readings),
          whole(weekCups),
          context.cups,
        ),
      ],
    };
  },
});
