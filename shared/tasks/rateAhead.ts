// Milk a day as a unit rate, and what it would come to in a month.
import { exactly, rounded, shownIn, whole } from '../quantity/grade.ts';
import { count, math, msg, qty } from '../sheet/message.ts';
import type { DoeWeek } from '../herd/week.ts';
import { doesWithDays } from './context.ts';
import { fromBook } from './fromBook.ts';
import { nameOf } from './phrases.ts';
import { taskKind } from './task.ts';

const LEAST_DAYS = 3;
const MONTH_DAYS = 30;

interface Rate {
  readonly doe: DoeWeek;
  readonly n: number;
  readonly total_mL: number;
}

/** Unit rate and its use (6.RP.A.3.b). */
export const rateAhead = taskKind<Rate>({
  name: 'rate-ahead',
  bands: ['6-8'],
  standards: ['6.RP.A.3.b'],
  lack: 'no-week-of-one-doe',
  candidates: (context) =>
    doesWithDays(context, LEAST_DAYS)
      .map(({ doe, days }) => ({
        doe,
        n: days.length,
        total_mL: days.reduce((sum, day) => sum + day.total_mL, 0),
      }))
      .filter(({ total_mL, n }) => shownIn(total_mL / n, context.measure).num > 0),
  touches: ({ doe }) => [doe.id],
  make(context, { doe, n, total_mL }) {
    const { unit, places = 1 } = context.measure;
    const sum = shownIn(total_mL, context.measure);
    const rate = rounded(exactly(sum).div(n), places);
    const ahead = rounded(exactly(rate).mul(MONTH_DAYS), places);
    const unrounded = rounded(exactly(sum).div(n).mul(MONTH_DAYS), places);
    const readings = doesWithDays(context, LEAST_DAYS)
      .filter((one) => one.doe.id === doe.id)
      .flatMap(({ days }) => days.flatMap((day) => day.readings));
    return {
      kind: 'rate-ahead',
      standards: ['6.RP.A.3.b'],
      lead: [
        msg('task.rate-ahead.lead', {
          name: nameOf(doe),
          amount: qty(sum, unit),
          days: qty(whole(n), 'day'),
        }),
      ],
      picture: null,
      asks: [
        {
          prompt: msg(`task.rate-ahead.ask-rate-${places}`),
          work: { is: 'working', after: [unit] },
          answer: msg('task.rate-ahead.answer-rate', { amount: qty(rate, unit) }),
          values: [rate],
          accepted: [],
          steps: [
            msg('task.rate-ahead.step-rate', { line: math(sum, '÷', whole(n)), rate: qty(rate, unit) }),
          ],
        },
        {
          prompt: msg('task.rate-ahead.ask-ahead', { days: qty(whole(MONTH_DAYS), 'day') }),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(ahead, unit) }),
          values: [ahead],
          accepted:
            unrounded.num * ahead.den === ahead.num * unrounded.den
              ? []
              : [msg('task.rate-ahead.accept', { amount: qty(unrounded, unit) })],
          steps: [msg('sheet.math', { line: math(rate, '×', whole(MONTH_DAYS), '=', ahead) })],
        },
        {
          prompt: msg('task.rate-ahead.ask-why'),
          work: { is: 'lines', lines: 2 },
          answer: msg('task.rate-ahead.answer-why'),
          values: [],
          accepted: [msg('task.rate-ahead.accept-why')],
          steps: [],
        },
      ],
      mistake: {
        what: msg('task.rate-ahead.mistake', {
          wrong: qty(rounded(exactly(sum).mul(MONTH_DAYS), places), unit),
        }),
        why: msg('task.rate-ahead.why', { n: count(n) }),
      },
      fromBook: fromBook(nameOf(doe), readings, sum, context.measure),
    };
  },
});
