// A line plot of one doe's milkings in quarters, to be drawn and read.
import { exactly, shownOf, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, row } from '../sheet/message.ts';
import type { DotPlotPicture } from '../sheet/picture.ts';
import { distinctBy, type Reading, type TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { nameOf, readIn, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

const LEAST_VALUES = 5;
const MOST_STEPS = 16;

interface Plot {
  readonly readings: readonly Reading[];
  readonly shown: readonly Shown[];
}

function plots(context: TaskContext): Plot[] {
  const found: Plot[] = [];
  for (const doe of context.week.does) {
    for (const milking of ['am', 'pm'] as const) {
      const readings = context.readings.filter((one) => one.doe.id === doe.id && one.milking === milking);
      const shown = readings.map((one) => readIn(one, context.measure));
      const values = shown.map(valueOf);
      const span = Math.ceil(Math.max(...values)) - Math.floor(Math.min(...values));
      const varied = distinctBy(values, (one) => one).length >= 2;
      if (
        shown.length >= LEAST_VALUES &&
        varied &&
        span * 4 <= MOST_STEPS &&
        shown.every((one) => one.num > 0)
      )
        found.push({ readings, shown });
    }
  }
  return found;
}

/** Line plots in halves and quarters, and a difference read from them (4.MD.B.4). */
export const linePlot = taskKind<Plot>({
  name: 'line-plot',
  bands: ['3-5'],
  standards: ['4.MD.B.4'],
  lack: 'no-week-of-one-doe',
  candidates: plots,
  touches: ({ readings }) => [readings[0]?.doe.id ?? '', ...touchesOf(readings.slice(0, 1))],
  make(context, { readings, shown }) {
    const { unit } = context.measure;
    const first = readings[0] as Reading;
    const sorted = [...shown].sort((a, b) => valueOf(a) - valueOf(b));
    const [low, high] = [sorted[0] as Shown, sorted.at(-1) as Shown];
    const difference = shownOf(exactly(high).sub(exactly(low)));
    const counts = shown.map((one) => shown.filter((other) => valueOf(other) === valueOf(one)).length);
    const plot: DotPlotPicture = {
      is: 'dot-plot',
      from: whole(Math.floor(valueOf(low))),
      to: whole(Math.ceil(valueOf(high))),
      step: { num: 1, den: 4 },
      labelEvery: 4,
      unit,
      values: [],
      most: Math.max(...counts),
    };
    return {
      kind: 'line-plot',
      standards: ['4.MD.B.4'],
      lead: [
        msg(`task.line-plot.lead-${first.milking}`, { name: nameOf(first.doe) }),
        msg('task.line-plot.values', { values: row(shown.map(num)) }),
      ],
      picture: plot,
      asks: [
        {
          prompt: msg('task.line-plot.ask-draw'),
          work: { is: 'picture' },
          answer: msg('task.line-plot.answer-draw'),
          values: sorted,
          accepted: [],
          steps: [],
          picture: { ...plot, values: shown },
        },
        {
          prompt: msg('task.line-plot.ask-difference'),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(difference, unit) }),
          values: [difference],
          accepted: [],
          steps: [msg('sheet.math', { line: math(high, '−', low, '=', difference) })],
        },
      ],
      mistake: { what: msg('task.line-plot.mistake'), why: msg('task.line-plot.why') },
      fromBook: readings.flatMap((one, index) =>
        readingFromBook(one, shown[index] as Shown, context.measure),
      ),
    };
  },
});
