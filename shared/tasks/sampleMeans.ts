// Three samples of one week by lot: how far their means lie from each other and from the mean of all.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, joined, list, math, msg, qty } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import { total, type TaskContext } from './context.ts';
import { amountHeading } from './dayTable.ts';
import { doeMilkings, milkingsFromBook, type DoeMilkings } from './doeMilkings.ts';
import { drawLots, lotTable } from './lots.ts';
import { nameOf } from './phrases.ts';
import { meanOf, sortedShown } from './spread.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const LEAST_MILKINGS = 10;
const SAMPLE = 4;
const SAMPLES = ['A', 'B', 'C'] as const;

/** Three samples whose means are not all alike. */
function samplesOf(context: TaskContext, shown: readonly Shown[], places: number): number[][] {
  const draw = () => SAMPLES.map(() => drawLots(context, shown.length, SAMPLE));
  const meansOf = (samples: readonly number[][]) =>
    new Set(
      samples.map((lots) => valueOf(rounded(meanOf(lots.map((lot) => shown[lot - 1] as Shown)), places))),
    );
  for (let tries = 0; tries < 6; tries += 1) {
    const samples = draw();
    if (meansOf(samples).size > 1) return samples;
  }
  return draw();
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, run: DoeMilkings) {
  const { unit, places = 1 } = context.measure;
  const { shown } = run;
  const samples = samplesOf(context, shown, places + 1);
  const picked = samples.map((lots) => lots.map((lot) => shown[lot - 1] as Shown));
  const means = picked.map((some) => rounded(meanOf(some), places + 1));
  const sorted = sortedShown(means);
  const range = rounded(exactly(sorted.at(-1) as Shown).sub(exactly(sorted[0] as Shown)), places + 1);
  const sum = rounded(total(shown.map(exactly)), places);
  const all = rounded(meanOf(shown), places + 1);
  return { unit, places, shown, samples, picked, means, sorted, range, sum, all, run };
}

function asksOf({
  unit,
  places,
  shown,
  picked,
  means,
  sorted,
  range,
  sum,
  all,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg(`task.sample-means.ask-means-${places + 1}`),
      work: { is: 'boxes', after: [null, null, null], signs: [...SAMPLES] },
      answer: msg(
        'task.sample-means.answer-means',
        Object.fromEntries(means.map((mean, index) => ['abc'.charAt(index), qty(mean, unit)])),
      ),
      values: means,
      accepted: [],
      steps: picked.map((some, index) =>
        msg('task.outlier-fence.step-mean', {
          line: math('(', ...joined(some, '+'), ')', '÷', whole(SAMPLE)),
          mean: qty(means[index] as Shown, unit),
        }),
      ),
    },
    {
      prompt: msg('task.sample-means.ask-range', { n: count(shown.length), sum: qty(sum, unit) }),
      work: { is: 'boxes', after: [unit, unit] },
      answer: msg('task.sample-means.answer-range', { all: qty(all, unit), range: qty(range, unit) }),
      values: [all, range],
      accepted: [],
      steps: [
        msg('task.outlier-fence.step-mean', {
          line: math(sum, '÷', whole(shown.length)),
          mean: qty(all, unit),
        }),
        msg('sheet.math', { line: math(sorted.at(-1) as Shown, '−', sorted[0] as Shown, '=', range) }),
      ],
    },
    askInWords(
      msg('task.sample-means.ask-larger', { size: count(SAMPLE) }),
      msg('task.sample-means.answer-larger'),
      3,
      [msg('task.sample-means.accept-larger')],
    ),
  ];
}

function task(context: TaskContext, from: DoeMilkings): Task {
  const worked = workOut(context, from);
  const { unit, shown, samples, run } = worked;
  return {
    kind: 'sample-means',
    standards: ['HSS-IC.A.1', 'HSS-IC.B.4'],
    lead: [
      msg(`task.sample-means.lead-${unit}`, { name: nameOf(run.doe), most: count(shown.length) }),
      msg(
        'task.sample-means.values',
        Object.fromEntries(samples.map((lots, index) => ['abc'.charAt(index), list(lots.map(count))])),
      ),
    ],
    picture: lotTable(shown, amountHeading(context)),
    asks: asksOf(worked),
    mistake: { what: msg('task.sample-means.mistake'), why: msg('task.sample-means.why') },
    fromBook: milkingsFromBook(context, run),
  };
}

/** A sample as a way to speak of a whole (HSS-IC.A.1), and how far its mean may lie off (HSS-IC.B.4). */
export const sampleMeans = taskKind<DoeMilkings>({
  name: 'sample-means',
  bands: ['9-12'],
  standards: ['HSS-IC.A.1', 'HSS-IC.B.4'],
  lack: 'no-week-of-one-doe',
  candidates: (context) => doeMilkings(context, LEAST_MILKINGS, 4),
  touches: ({ doe }) => [doe.id, `${doe.id}|lots`],
  make: task,
});
