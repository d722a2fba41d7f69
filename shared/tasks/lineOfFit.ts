// Read a line of best fit: what its slope means, and what it says of the next day.
import { exactly, rounded, valueOf } from '../quantity/grade.ts';
import { count, math, msg, num, qty } from '../sheet/message.ts';
import { taskKind } from './task.ts';
import { lineSlots, predicted, trends, type Trend } from './trend.ts';
import { trendPicture } from './trendPicture.ts';

/** Fit a line and use it (HSS-ID.B.6.a), interpret its slope (HSS-ID.C.7). */
export const lineOfFit = taskKind<Trend>({
  name: 'line-of-fit',
  bands: ['9-12'],
  standards: ['HSS-ID.B.6.a', 'HSS-ID.C.7'],
  lack: 'no-five-days',
  // A line whose two numbers are the same could not tell slope from intercept.
  candidates: (context) =>
    trends(context).filter(({ slope, intercept }) => valueOf(slope) !== valueOf(intercept)),
  touches: ({ id }) => [`trend|${id}`],
  make(context, trend) {
    const { unit } = context.measure;
    const next = (trend.points.at(-1)?.x ?? 0) + 1;
    const ahead = predicted(trend, next);
    const flipped = rounded(exactly(trend.intercept).mul(next).add(exactly(trend.slope)), trend.places + 1);
    const rises = trend.slope.num > 0;
    const size = { ...trend.slope, num: Math.abs(trend.slope.num) };
    return {
      kind: 'line-of-fit',
      standards: ['HSS-ID.B.6.a', 'HSS-ID.C.7'],
      lead: [
        msg(`task.line-of-fit.lead-${unit}`, { who: trend.who, n: count(trend.points.length) }),
        msg('task.line-of-fit.line', lineSlots(trend)),
      ],
      picture: trendPicture(context, trend, true),
      asks: [
        {
          prompt: msg('task.line-of-fit.ask-slope'),
          work: { is: 'lines', lines: 2 },
          answer: msg(`task.line-of-fit.answer-${rises ? 'rises' : 'falls'}`, { amount: qty(size, unit) }),
          values: [trend.slope],
          accepted: [],
          steps: [],
        },
        {
          prompt: msg('task.line-of-fit.ask-next', { x: count(next) }),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(ahead, unit) }),
          values: [ahead],
          accepted: [
            msg('sheet.accept.rounded', { amount: qty(rounded(exactly(ahead), trend.places), unit) }),
          ],
          steps: [
            msg('sheet.math', {
              line: math(trend.intercept, '+', trend.slope, '×', { num: next, den: 1 }, '=', ahead),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.line-of-fit.mistake', { wrong: qty(flipped, unit) }),
        why: msg('task.line-of-fit.why', { intercept: num(trend.intercept), slope: num(trend.slope) }),
      },
      fromBook: [],
    };
  },
});
