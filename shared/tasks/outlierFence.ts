// Quartiles and fences of a week's milkings, and what a slip of the pen does to mean and median.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { list, math, msg, num, qty, row } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import { total, type TaskContext } from './context.ts';
import { doeMilkings, fiveNumbers, milkingsFromBook, withHalves, type DoeMilkings } from './doeMilkings.ts';
import { nameOf } from './phrases.ts';
import { meanOf, medianOf, sortedShown } from './spread.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const LEAST_MILKINGS = 8;

function fencesOf(run: DoeMilkings, places: number) {
  const { q1, q3, median } = fiveNumbers(run.shown, places);
  const width = rounded(exactly(q3).sub(exactly(q1)), places + 1);
  const reach = exactly(width).mul(3).div(2);
  const [low, high] = [
    rounded(exactly(q1).sub(reach), places + 2),
    rounded(exactly(q3).add(reach), places + 2),
  ];
  const outside = sortedShown(run.shown).filter(
    (one) => valueOf(one) < valueOf(low) || valueOf(one) > valueOf(high),
  );
  return { q1, q3, median, width, low, high, outside };
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, run: DoeMilkings) {
  const { unit, places = 1 } = context.measure;
  const sorted = sortedShown(run.shown);
  const { q1, q3, width, low, high, outside } = fencesOf(run, places);
  const most = sorted.at(-1) as Shown;
  const slip = rounded(exactly(most).mul(10), places);
  const slipped = [...sorted.slice(0, -1), slip];
  const [before, after] = [sorted, slipped].map((some) => rounded(meanOf(some), places + 1)) as [
    Shown,
    Shown,
  ];
  const [sum, sumAfter] = [sorted, slipped].map((some) => rounded(total(some.map(exactly)), places)) as [
    Shown,
    Shown,
  ];
  const median = withHalves(medianOf(slipped), places);
  return {
    unit,
    places,
    sorted,
    q1,
    q3,
    width,
    low,
    high,
    outside,
    most,
    slip,
    before,
    after,
    sum,
    sumAfter,
    median,
    run,
  };
}

function firstAsks({ unit, q1, q3, width, low, high, outside }: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.outlier-fence.ask-quartiles'),
      work: { is: 'boxes', after: [unit, unit, unit] },
      answer: msg('task.outlier-fence.answer-quartiles', {
        q1: qty(q1, unit),
        q3: qty(q3, unit),
        width: qty(width, unit),
      }),
      values: [q1, q3, width],
      accepted: [],
      steps: [
        msg('task.outlier-fence.step-halves'),
        msg('sheet.math', { line: math(q3, '−', q1, '=', width) }),
      ],
    },
    {
      prompt: msg('task.outlier-fence.ask-fences'),
      work: { is: 'boxes', after: [unit, unit] },
      answer: msg(`task.outlier-fence.answer-${outside.length === 0 ? 'inside' : 'outside'}`, {
        low: qty(low, unit),
        high: qty(high, unit),
        ...(outside.length === 0 ? {} : { outside: list(outside.map(num)) }),
      }),
      values: [low, high],
      accepted: [],
      steps: [
        msg('sheet.math', { line: math(q1, '−', { num: 3, den: 2, places: 1 }, '×', width, '=', low) }),
        msg('sheet.math', { line: math(q3, '+', { num: 3, den: 2, places: 1 }, '×', width, '=', high) }),
      ],
    },
  ];
}

function lastAsks({
  unit,
  places,
  sorted,
  most,
  slip,
  before,
  after,
  sum,
  sumAfter,
  median,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg(`task.outlier-fence.ask-slip-${places + 1}`, { slip: num(slip), most: num(most) }),
      work: { is: 'boxes', after: [unit, unit, unit] },
      answer: msg('task.outlier-fence.answer-slip', {
        before: qty(before, unit),
        after: qty(after, unit),
        median: qty(median, unit),
      }),
      values: [before, after, median],
      accepted: [],
      steps: [
        msg('task.outlier-fence.step-mean', {
          line: math(sum, '÷', whole(sorted.length)),
          mean: num(before),
        }),
        msg('task.outlier-fence.step-mean', {
          line: math(sumAfter, '÷', whole(sorted.length)),
          mean: num(after),
        }),
      ],
    },
    askInWords(msg('task.outlier-fence.ask-strike'), msg('task.outlier-fence.answer-strike'), 3, [
      msg('task.outlier-fence.accept-strike'),
    ]),
  ];
}

function task(context: TaskContext, from: DoeMilkings): Task {
  const worked = workOut(context, from);
  const { unit, sorted, run } = worked;
  return {
    kind: 'outlier-fence',
    standards: ['HSS-ID.A.3'],
    lead: [
      msg(`task.outlier-fence.lead-${unit}`, { name: nameOf(run.doe) }),
      msg('task.outlier-fence.values', { values: row(sorted.map(num)) }),
      msg('task.outlier-fence.rule', { times: num({ num: 3, den: 2, places: 1 }) }),
    ],
    picture: null,
    asks: [...firstAsks(worked), ...lastAsks(worked)],
    mistake: { what: msg('task.outlier-fence.mistake'), why: msg('task.outlier-fence.why') },
    fromBook: milkingsFromBook(context, run),
  };
}

/** Shape, centre and spread, and what an outlier does to them (HSS-ID.A.3). */
export const outlierFence = taskKind<DoeMilkings>({
  name: 'outlier-fence',
  bands: ['9-12'],
  standards: ['HSS-ID.A.3'],
  lack: 'no-week-of-one-doe',
  candidates: (context) =>
    doeMilkings(context, LEAST_MILKINGS, 4).filter(
      (run) => fencesOf(run, context.measure.places ?? 1).width.num > 0,
    ),
  touches: ({ doe }) => [doe.id, `${doe.id}|fence`],
  make: task,
});
