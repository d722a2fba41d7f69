// Morning milk to evening milk as a ratio, for one doe's week.
import { exactly, rounded, shownIn, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty } from '../sheet/message.ts';
import type { DoeWeek } from '../herd/week.ts';
import { doesWithDays, type Reading } from './context.ts';
import { fromBook } from './fromBook.ts';
import { nameOf } from './phrases.ts';
import { taskKind } from './task.ts';

const LEAST_DAYS = 3;

interface Halves {
  readonly doe: DoeWeek;
  readonly am: readonly Reading[];
  readonly pm: readonly Reading[];
}

const sum_mL = (readings: readonly Reading[]) => readings.reduce((sum, one) => sum + one.amount_mL, 0);

const rateOf = (a: Shown, b: Shown): Shown => rounded(exactly(a).div(exactly(b)), 2);

/** A ratio and its unit rate (6.RP.A.1, 6.RP.A.2), over the days that have both milkings. */
export const amPmRatio = taskKind<Halves>({
  name: 'am-pm-ratio',
  bands: ['6-8'],
  standards: ['6.RP.A.1', '6.RP.A.2'],
  lack: 'no-two-milkings',
  candidates: (context) =>
    doesWithDays(context, LEAST_DAYS).flatMap(({ doe, days }) => {
      const both = days.filter((one) => one.am && one.pm);
      if (both.length < LEAST_DAYS) return [];
      const halves = {
        doe,
        am: both.map((one) => one.am as Reading),
        pm: both.map((one) => one.pm as Reading),
      };
      const [a, p] = [
        shownIn(sum_mL(halves.am), context.measure),
        shownIn(sum_mL(halves.pm), context.measure),
      ];
      return a.num > 0 && p.num > 0 && valueOf(rateOf(a, p)) !== valueOf(rateOf(p, a)) ? [halves] : [];
    }),
  touches: ({ doe }) => [doe.id],
  make(context, { doe, am, pm }) {
    const { unit } = context.measure;
    const [morning, evening] = [shownIn(sum_mL(am), context.measure), shownIn(sum_mL(pm), context.measure)];
    const rate = rateOf(morning, evening);
    const wrong = rateOf(evening, morning);
    return {
      kind: 'am-pm-ratio',
      standards: ['6.RP.A.1', '6.RP.A.2'],
      lead: [
        msg('task.am-pm-ratio.lead', {
          name: nameOf(doe),
          days: qty(whole(am.length), 'day'),
          am: qty(morning, unit),
          pm: qty(evening, unit),
        }),
      ],
      picture: null,
      asks: [
        {
          prompt: msg('task.am-pm-ratio.ask-ratio'),
          work: { is: 'boxes', after: [null, null], signs: [':'] },
          answer: msg('task.am-pm-ratio.answer-ratio', { am: num(morning), pm: num(evening) }),
          values: [morning, evening],
          accepted: [msg('task.am-pm-ratio.accept')],
          steps: [],
        },
        {
          prompt: msg(`task.am-pm-ratio.ask-rate-${unit}`),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(rate, unit) }),
          values: [rate],
          accepted: [],
          steps: [
            msg('task.other-system.step', { line: math(morning, '÷', evening), result: qty(rate, unit) }),
          ],
        },
      ],
      mistake: {
        what: msg('task.am-pm-ratio.mistake', { wrong: qty(wrong, unit) }),
        why: msg('task.am-pm-ratio.why'),
      },
      fromBook: [
        ...fromBook(nameOf(doe), am, morning, context.measure),
        ...fromBook(nameOf(doe), pm, evening, context.measure),
      ],
    };
  },
});
