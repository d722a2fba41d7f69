// Draw a dot plot of one doe's milkings, and say where they cluster.
import Fraction from 'fraction.js';
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, msg, num, qty, row, stepOf, type Message } from '../sheet/message.ts';
import type { DotPlotPicture } from '../sheet/picture.ts';
import { distinctBy, type Reading, type TaskContext } from './context.ts';
import { milkingsTold } from './fromBook.ts';
import { nameOf } from './phrases.ts';
import { sortedShown } from './spread.ts';
import { taskKind, type Task } from './task.ts';

const LEAST_VALUES = 6;
const MOST_STEPS = 24;
const STEPS = ['0.1', '0.5', '1', '2', '5'] as const;

interface Plot {
  readonly readings: readonly Reading[];
  readonly shown: readonly Shown[];
  readonly step: Fraction;
}

const roundTo = (amount_mL: number, unit_mL: number, step: Fraction): Shown => {
  const steps = Math.floor(amount_mL / unit_mL / step.valueOf() + 0.5 + 1e-9);
  return rounded(step.mul(steps), step.d === 1n ? 0 : 1);
};

function plotOf(context: TaskContext, readings: readonly Reading[]): Plot[] {
  for (const text of STEPS) {
    const step = new Fraction(text);
    const shown = readings.map((one) => roundTo(one.amount_mL, context.measure.unit_mL.valueOf(), step));
    const values = shown.map(valueOf);
    const span = Math.max(...values) - Math.min(...values);
    if (span / step.valueOf() > MOST_STEPS - 2) continue;
    const sound = shown.every((one) => one.num > 0) && distinctBy(values, (one) => one).length >= 3;
    return sound ? [{ readings, shown, step }] : [];
  }
  return [];
}

/** Displaying numbers in a dot plot and describing them (6.SP.B.4). */
export const dotPlot = taskKind<Plot>({
  name: 'dot-plot',
  bands: ['6-8'],
  standards: ['6.SP.B.4'],
  lack: 'no-week-of-one-doe',
  candidates: (context) =>
    context.week.does.flatMap((doe) => {
      const readings = context.readings.filter((one) => one.doe.id === doe.id);
      return readings.length >= LEAST_VALUES ? plotOf(context, readings) : [];
    }),
  touches: ({ readings }) => [readings[0]?.doe.id ?? '', `${readings[0]?.doe.id}|plot`],
  make: plotTask,
});

function axisOf(plot: Plot, unit: 'cup' | 'L'): DotPlotPicture {
  const sorted = sortedShown(plot.shown);
  const [low, high] = [exactly(sorted[0] as Shown), exactly(sorted.at(-1) as Shown)];
  const places = plot.step.d === 1n ? 0 : 1;
  // The axis starts and ends on a numbered tick.
  const every = plot.step.d === 10n ? 5 : plot.step.d === 2n ? 2 : 1;
  const block = plot.step.mul(every);
  const from = low.div(block).floor().mul(block);
  const to = high.div(block).ceil().mul(block);
  const counts = plot.shown.map(
    (one) => plot.shown.filter((other) => valueOf(other) === valueOf(one)).length,
  );
  return {
    is: 'dot-plot',
    from: rounded(from, places),
    to: rounded(to.equals(from) ? to.add(block) : to, places),
    step: rounded(plot.step, places),
    labelEvery: every,
    unit,
    values: [],
    most: Math.max(...counts),
  };
}

function plotTask(context: TaskContext, plot: Plot): Task {
  const { unit } = context.measure;
  const { readings, shown, step } = plot;
  const sorted = sortedShown(shown);
  const axis = axisOf(plot, unit);
  // Halfway between least and most: at least one milking lies above it, and one does not.
  const ends = exactly(sorted[0] as Shown).add(exactly(sorted.at(-1) as Shown));
  const half = rounded(ends.div(2), step.d === 1n ? 1 : 2);
  const above = shown.filter((one) => valueOf(one) > valueOf(half)).length;
  return {
    kind: 'dot-plot',
    standards: ['6.SP.B.4'],
    lead: leadOf(plot, unit),
    picture: axis,
    asks: [
      {
        prompt: msg('task.dot-plot.ask-draw'),
        work: { is: 'picture' },
        answer: msg('task.dot-plot.answer-draw', { n: count(shown.length) }),
        values: sorted,
        accepted: [],
        steps: [],
        picture: { ...axis, values: shown },
      },
      {
        prompt: msg('task.dot-plot.ask-above', { half: qty(half, unit) }),
        work: { is: 'boxes', after: ['milking'] },
        answer: msg('sheet.answer', { amount: qty(whole(above), 'milking') }),
        values: [whole(above)],
        accepted: [],
        steps: [
          msg('task.dot-plot.step-above', {
            values: row(sorted.filter((one) => valueOf(one) > valueOf(half)).map(num)),
          }),
        ],
      },
      {
        prompt: msg('task.dot-plot.ask-shape'),
        work: { is: 'lines', lines: 2 },
        answer: msg('task.dot-plot.answer-shape', {
          low: qty(sorted[0] as Shown, unit),
          high: qty(sorted.at(-1) as Shown, unit),
        }),
        values: [sorted[0] as Shown, sorted.at(-1) as Shown],
        accepted: [msg('task.dot-plot.accept')],
        steps: [],
      },
    ],
    mistake: {
      what: msg('task.dot-plot.mistake'),
      why: msg('task.dot-plot.why', { n: count(shown.length) }),
    },
    fromBook: milkingsTold(readings[0]?.doe.name ?? '', readings, shown, context.measure),
  };
}

function leadOf({ readings, shown, step }: Plot, unit: 'cup' | 'L'): Message[] {
  const name = nameOf((readings[0] as Reading).doe);
  return [
    msg('task.dot-plot.lead', { name, step: stepOf(rounded(step, step.d === 1n ? 0 : 1), unit) }),
    msg('task.dot-plot.values', { values: row(shown.map(num)) }),
  ];
}
