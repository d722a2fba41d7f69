// Follow the line far past the days it was made from: when is a line a bad model?
import { exactly, rounded, valueOf, type Shown } from '../quantity/grade.ts';
import { count, math, msg, qty } from '../sheet/message.ts';
import type { TaskContext } from './context.ts';
import { taskKind } from './task.ts';
import { lineSlots, predicted, trends, type Trend } from './trend.ts';

/** A goat's lactation lasts some 300 days; these days lie well past any week. */
const FAR_DAYS = [90, 120, 150, 180] as const;

/** Less than nothing, or more than double: no doe follows the line there. */
function verdict(trend: Trend, far: Shown): 'negative' | 'double' | 'unknown' {
  const most = Math.max(...trend.points.map(({ y }) => valueOf(y)));
  if (valueOf(far) < 0) return 'negative';
  return valueOf(far) > 2 * most ? 'double' : 'unknown';
}

function task(context: TaskContext, trend: Trend) {
  const { unit } = context.measure;
  const x = context.chance.pick(FAR_DAYS);
  const far = predicted(trend, x);
  const last = trend.points.at(-1)?.x ?? 0;
  const kind = verdict(trend, far);
  return {
    kind: 'far-forecast',
    standards: ['HSS-ID.B.6.a', 'HSF-LE.B.5'],
    lead: [msg('task.far-forecast.lead', { who: trend.who, last: count(last), ...lineSlots(trend) })],
    picture: null,
    asks: [
      {
        prompt: msg(`task.far-forecast.ask-${unit}`, { x: count(x) }),
        work: { is: 'working' as const, after: [unit] },
        answer: msg('sheet.answer', { amount: qty(far, unit) }),
        values: [far],
        accepted: [msg('sheet.accept.rounded', { amount: qty(rounded(exactly(far), trend.places), unit) })],
        steps: [
          msg('sheet.math', {
            line: math(trend.intercept, '+', trend.slope, '×', { num: x, den: 1 }, '=', far),
          }),
        ],
      },
      {
        prompt: msg('task.far-forecast.ask-trust'),
        work: { is: 'lines' as const, lines: 4 },
        answer: msg(`task.far-forecast.answer-${kind}`, { x: count(x), last: count(last) }),
        values: [kind],
        accepted: [msg('task.far-forecast.accept')],
        steps: [],
      },
    ],
    mistake: { what: msg('task.far-forecast.mistake'), why: msg('task.far-forecast.why') },
    fromBook: [],
  };
}

/** Using a fitted line, and its limits (HSS-ID.B.6.a, HSF-LE.B.5). */
export const farForecast = taskKind<Trend>({
  name: 'far-forecast',
  bands: ['9-12'],
  standards: ['HSS-ID.B.6.a', 'HSF-LE.B.5'],
  lack: 'no-five-days',
  candidates: trends,
  touches: ({ id }) => [`trend|${id}`],
  make: task,
});
