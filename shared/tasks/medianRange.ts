// Median and range of one doe's milkings.
import { exactly, rounded, shownIn, valueOf, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, row } from '../sheet/message.ts';
import { distinctBy, type Reading, type TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { nameOf, touchesOf } from './phrases.ts';
import { medianOf, meanOf, sortedShown } from './spread.ts';
import { taskKind, type Task } from './task.ts';

const LEAST_VALUES = 5;

interface Run {
  readonly readings: readonly Reading[];
  readonly shown: readonly Shown[];
}

function runs(context: TaskContext): Run[] {
  return context.week.does.flatMap((doe) =>
    (['am', 'pm'] as const).flatMap((milking) => {
      const readings = context.readings.filter((one) => one.doe.id === doe.id && one.milking === milking);
      const shown = readings.map((one) => shownIn(one.amount_mL, context.measure));
      const sound = shown.every((one) => one.num > 0) && distinctBy(shown, valueOf).length >= 3;
      return shown.length >= LEAST_VALUES && sound ? [{ readings, shown }] : [];
    }),
  );
}

/** Median and range (6.SP.B.5.c); the milkings stand in the order of the days. */
export const medianRange = taskKind<Run>({
  name: 'median-range',
  bands: ['6-8'],
  standards: ['6.SP.B.5.c'],
  lack: 'no-week-of-one-doe',
  candidates: runs,
  touches: ({ readings }) => touchesOf(readings.slice(0, 1)),
  make(context, { readings, shown }) {
    const { unit, places = 1 } = context.measure;
    const first = readings[0] as Reading;
    const sorted = sortedShown(shown);
    const [low, high] = [sorted[0] as Shown, sorted.at(-1) as Shown];
    const even = shown.length % 2 === 0;
    const exact = medianOf(shown);
    const halfway = !exactly(rounded(exact, places)).equals(exact);
    const median = rounded(exact, halfway ? places + 1 : places);
    const range = rounded(exactly(high).sub(exactly(low)), places);
    const middle = sorted.slice(sorted.length / 2 - 1, sorted.length / 2 + 1) as [Shown, Shown];
    return {
      kind: 'median-range',
      standards: ['6.SP.B.5.c'],
      lead: [
        msg(`task.median-range.lead-${first.milking}`, { name: nameOf(first.doe) }),
        msg(`task.median-range.values-${unit}`, { values: row(shown.map(num)) }),
      ],
      picture: null,
      asks: [
        {
          prompt: msg('task.median-range.ask-median'),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(median, unit) }),
          values: [median],
          accepted: [],
          steps: [
            msg('task.median-range.step-order', { values: row(sorted.map(num)) }),
            even
              ? msg('sheet.math', {
                  line: math('(', middle[0], '+', middle[1], ')', '÷', { num: 2, den: 1 }, '=', median),
                })
              : msg('task.median-range.step-middle', { median: num(median) }),
          ],
        },
        {
          prompt: msg('task.median-range.ask-range'),
          work: { is: 'boxes', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(range, unit) }),
          values: [range],
          accepted: [],
          steps: [msg('sheet.math', { line: math(high, '−', low, '=', range) })],
        },
      ],
      mistake: slip(shown, median, unit, places),
      fromBook: readings.flatMap((one, index) =>
        readingFromBook(one, shown[index] as Shown, context.measure),
      ),
    };
  },
});

/** The middle of the list as it stands is the usual slip, the mean another; each only where it is wrong. */
function slip(shown: readonly Shown[], median: Shown, unit: 'cup' | 'L', places: number): Task['mistake'] {
  const middle = shown[Math.floor(shown.length / 2)] as Shown;
  const why = msg('task.median-range.why');
  if (valueOf(middle) !== valueOf(median))
    return { what: msg('task.median-range.mistake', { wrong: qty(middle, unit) }), why };
  const mean = rounded(meanOf(shown), places);
  if (valueOf(mean) === valueOf(median)) return { what: msg('task.median-range.mistake-order'), why };
  return {
    what: msg('task.median-range.mistake', { wrong: qty(mean, unit) }),
    why: msg('task.median-range.why-mean'),
  };
}
