// The mean of one doe's days.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, joined, math, msg, qty, sub } from '../sheet/message.ts';
import { total } from './context.ts';
import { amountHeading, dayRuns, dayTable, runFromBook, type DayRun } from './dayTable.ts';
import { dayLabel, nameOf } from './phrases.ts';
import { meanOf, sortedShown } from './spread.ts';
import { taskKind } from './task.ts';

const LEAST_DAYS = 4;

/** Mean of a week and the distance of a day from it (6.SP.B.5.c). */
export const meanWeek = taskKind<DayRun>({
  name: 'mean-week',
  bands: ['6-8'],
  standards: ['6.SP.B.5.c'],
  lack: 'no-week-of-one-doe',
  candidates: (context) => dayRuns(context, LEAST_DAYS),
  touches: ({ doe }) => [doe.id, `${doe.id}|days`],
  make(context, run) {
    const { unit, places = 1 } = context.measure;
    const mean = rounded(meanOf(run.shown), places);
    const sum = rounded(total(run.shown.map(exactly)), places);
    const far = run.shown
      .map((one, index) => ({ one, index, apart: Math.abs(valueOf(one) - valueOf(mean)) }))
      .reduce((best, next) => (next.apart > best.apart + 1e-9 ? next : best));
    const apart = rounded(exactly(far.one).sub(exactly(mean)).abs(), places);
    const above = valueOf(far.one) > valueOf(mean);
    const farDay = dayLabel(run.days[far.index]?.date ?? '');
    const n = run.shown.length;
    const half = halfOfEnds(run.shown, places);
    const halfIsWrong = valueOf(half) !== valueOf(mean);
    return {
      kind: 'mean-week',
      standards: ['6.SP.B.5.c'],
      lead: [msg('task.mean-week.lead', { name: nameOf(run.doe) })],
      picture: dayTable(run, amountHeading(context)),
      asks: [
        {
          prompt: msg(`task.mean-week.ask-${places}`),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(mean, unit) }),
          values: [mean],
          accepted: [],
          steps: [
            msg('sheet.math', { line: math(...joined(run.shown, '+'), '=', sum) }),
            msg('task.mean-week.step', { line: math(sum, '÷', whole(n)), mean: qty(mean, unit) }),
          ],
        },
        {
          prompt: msg('task.mean-week.ask-far'),
          work: { is: 'working', after: [unit] },
          answer: msg(`task.mean-week.answer-${above ? 'above' : 'below'}`, {
            day: sub(farDay),
            amount: qty(apart, unit),
          }),
          values: [run.days[far.index]?.date ?? '', apart],
          accepted: [],
          steps: [
            msg('sheet.math', {
              line: above ? math(far.one, '−', mean, '=', apart) : math(mean, '−', far.one, '=', apart),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.mean-week.mistake', { wrong: qty(halfIsWrong ? half : sum, unit) }),
        why: halfIsWrong ? msg('task.mean-week.why', { n: count(n) }) : msg('task.mean-week.why-sum'),
      },
      fromBook: runFromBook(context, run),
    };
  },
});

/** Halfway between least and most: what comes out when only the ends are looked at. */
function halfOfEnds(shown: readonly Shown[], places: number): Shown {
  const sorted = sortedShown(shown);
  return rounded(
    exactly(sorted[0] as Shown)
      .add(exactly(sorted.at(-1) as Shown))
      .div(2),
    places,
  );
}
