// A sample of a week's milkings by lot: its mean beside the mean of them all.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, joined, list, math, msg, num, qty } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import { total, type TaskContext } from './context.ts';
import { amountHeading } from './dayTable.ts';
import { doeMilkings, milkingsFromBook, type DoeMilkings } from './doeMilkings.ts';
import { drawLots, lotTable } from './lots.ts';
import { nameOf } from './phrases.ts';
import { meanOf } from './spread.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const LEAST_MILKINGS = 9;
const SAMPLE = 4;

/** Lots whose sample does not have the very mean of all: there must be something to compare. */
function lotsOf(context: TaskContext, shown: readonly Shown[], places: number): number[] {
  const all = valueOf(rounded(meanOf(shown), places));
  for (let tries = 0; tries < 6; tries += 1) {
    const lots = drawLots(context, shown.length, SAMPLE);
    if (valueOf(rounded(meanOf(lots.map((lot) => shown[lot - 1] as Shown)), places)) !== all) return lots;
  }
  return drawLots(context, shown.length, SAMPLE);
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, run: DoeMilkings) {
  const { unit, places = 1 } = context.measure;
  const { shown } = run;
  const lots = lotsOf(context, shown, places);
  const picked = lots.map((lot) => shown[lot - 1] as Shown);
  const [sampleSum, sum] = [picked, shown].map((some) => rounded(total(some.map(exactly)), places)) as [
    Shown,
    Shown,
  ];
  const [mean, all] = [rounded(meanOf(picked), places), rounded(meanOf(shown), places)];
  const off = rounded(exactly(mean).sub(exactly(all)).abs(), places);
  const lotMean = rounded(meanOf(lots.map(whole)), places);
  const wrongDiffers = valueOf(lotMean) !== valueOf(mean);
  return { unit, places, shown, lots, picked, sampleSum, sum, mean, all, off, lotMean, wrongDiffers, run };
}

function asksOf({
  unit,
  places,
  shown,
  picked,
  sampleSum,
  sum,
  mean,
  all,
  off,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg(`task.sample-the-week.ask-mean-${places}`),
      work: { is: 'working', after: [unit] },
      answer: msg('sheet.answer', { amount: qty(mean, unit) }),
      values: [mean],
      accepted: [],
      steps: [
        msg('sheet.math', { line: math(...joined(picked, '+'), '=', sampleSum) }),
        msg('task.mean-week.step', { line: math(sampleSum, '÷', whole(SAMPLE)), mean: qty(mean, unit) }),
      ],
    },
    {
      prompt: msg('task.sample-the-week.ask-all', { n: count(shown.length), sum: qty(sum, unit) }),
      work: { is: 'boxes', after: [unit, unit] },
      answer: msg('task.sample-the-week.answer-all', { all: qty(all, unit), off: qty(off, unit) }),
      values: [all, off],
      accepted: [],
      steps: [
        msg('task.mean-week.step', { line: math(sum, '÷', whole(shown.length)), mean: qty(all, unit) }),
      ],
    },
    askInWords(
      msg('task.sample-the-week.ask-first', { size: count(SAMPLE) }),
      msg('task.sample-the-week.answer-first'),
      3,
      [msg('task.sample-the-week.accept-first')],
    ),
  ];
}

function task(context: TaskContext, from: DoeMilkings): Task {
  const worked = workOut(context, from);
  const { unit, shown, lots, lotMean, wrongDiffers, run } = worked;
  return {
    kind: 'sample-the-week',
    standards: ['7.SP.A.1', '7.SP.A.2'],
    lead: [
      msg(`task.sample-the-week.lead-${unit}`, { name: nameOf(run.doe), most: count(shown.length) }),
      msg('task.sample-the-week.lots', { lots: list(lots.map(count)) }),
    ],
    picture: lotTable(shown, amountHeading(context)),
    asks: asksOf(worked),
    mistake: wrongDiffers
      ? {
          what: msg('task.sample-the-week.mistake', { wrong: qty(lotMean, unit) }),
          why: msg('task.sample-the-week.why'),
        }
      : {
          what: msg('task.sample-the-week.mistake-plain', { lot: num(whole(lots[0] as number)) }),
          why: msg('task.sample-the-week.why'),
        },
    fromBook: milkingsFromBook(context, run),
  };
}

/** A random sample speaks for the whole (7.SP.A.1), and how far off it may be (7.SP.A.2). */
export const sampleTheWeek = taskKind<DoeMilkings>({
  name: 'sample-the-week',
  bands: ['6-8'],
  standards: ['7.SP.A.1', '7.SP.A.2'],
  lack: 'no-week-of-one-doe',
  candidates: (context) => doeMilkings(context, LEAST_MILKINGS, 4),
  touches: ({ doe }) => [doe.id, `${doe.id}|lots`],
  make: task,
});
