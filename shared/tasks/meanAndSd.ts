// Mean and sample standard deviation of one doe's days.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, joined, math, msg, num, qty, row } from '../sheet/message.ts';
import { total } from './context.ts';
import { amountHeading, dayRuns, dayTable, runFromBook, type DayRun } from './dayTable.ts';
import { nameOf } from './phrases.ts';
import { meanOf, rootOf, sampleSd, squareOf, squaresAbout } from './spread.ts';
import { taskKind } from './task.ts';

const LEAST_DAYS = 4;

/** The same sum of squares divided by n instead of n - 1. */
const wholeSd = (shown: readonly Shown[], places: number): Shown =>
  rootOf(squaresAbout(shown, meanOf(shown)).div(shown.length), places);

/** Centre and spread (HSS-ID.A.2), with the divisor of a sample. */
export const meanAndSd = taskKind<DayRun>({
  name: 'mean-and-sd',
  bands: ['9-12'],
  standards: ['HSS-ID.A.2'],
  lack: 'no-week-of-one-doe',
  // A spread too small to tell the two divisors apart makes no question.
  candidates: (context) =>
    dayRuns(context, LEAST_DAYS).filter(({ shown }) => {
      const places = (context.measure.places ?? 1) + 1;
      return valueOf(sampleSd(shown, places)) !== valueOf(wholeSd(shown, places));
    }),
  touches: ({ doe }) => [doe.id, `${doe.id}|days`],
  make(context, run) {
    const { unit, places = 1 } = context.measure;
    const n = run.shown.length;
    const sum = rounded(total(run.shown.map(exactly)), places);
    const mean = rounded(meanOf(run.shown), places + 1);
    const sd = sampleSd(run.shown, places + 1);
    const exactMean = meanOf(run.shown);
    const squares = run.shown.map((one) => rounded(squareOf(exactly(one).sub(exactMean)), places + 2));
    const squareSum = rounded(squaresAbout(run.shown, exactMean), places + 2);
    return {
      kind: 'mean-and-sd',
      standards: ['HSS-ID.A.2'],
      lead: [msg('task.mean-and-sd.lead', { name: nameOf(run.doe) })],
      picture: dayTable(run, amountHeading(context)),
      asks: [
        {
          prompt: msg(`task.mean-and-sd.ask-mean-${places + 1}`),
          work: { is: 'boxes', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(mean, unit) }),
          values: [mean],
          accepted: [],
          steps: [
            msg('sheet.math', { line: math(...joined(run.shown, '+'), '=', sum) }),
            msg('task.mean-week.step', { line: math(sum, '÷', whole(n)), mean: qty(mean, unit) }),
          ],
        },
        {
          prompt: msg('task.mean-and-sd.ask-sd', { n: count(n) }),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(sd, unit) }),
          values: [sd],
          accepted: [msg('task.mean-and-sd.accept')],
          steps: [
            msg('task.mean-and-sd.step-squares', { squares: row(squares.map(num)), sum: num(squareSum) }),
            msg('task.mean-and-sd.step-root', {
              line: math(squareSum, '÷', whole(n - 1)),
              sd: qty(sd, unit),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.mean-and-sd.mistake', { wrong: qty(wholeSd(run.shown, places + 1), unit) }),
        why: msg('task.mean-and-sd.why', { n: count(n) }),
      },
      fromBook: runFromBook(context, run),
    };
  },
});
