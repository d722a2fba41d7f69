// Milkings by time of day and by more or less than the median, in a two-way table.
import { rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import Fraction from 'fraction.js';
import { math, msg, num, qty, row } from '../sheet/message.ts';
import type { Cell, TablePicture } from '../sheet/picture.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { doeMilkings, milkingsFromBook, withHalves, type DoeMilkings } from './doeMilkings.ts';
import { nameOf } from './phrases.ts';
import { medianOf } from './spread.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const LEAST_MILKINGS = 9;
const LEAST_A_TIME = 4;
/** Shares that differ by so many percentage points go with the time of day in this week (common practice, no source). */
const APART_POINTS = 25;

interface Counts {
  readonly run: DoeMilkings;
  readonly median: Shown;
  readonly am: readonly Shown[];
  readonly pm: readonly Shown[];
}

const aboveOf = (values: readonly Shown[], median: Shown): number =>
  values.filter((one) => valueOf(one) > valueOf(median)).length;

function countsOf(context: TaskContext): Counts[] {
  const { places = 1 } = context.measure;
  return doeMilkings(context, LEAST_MILKINGS, 4).flatMap((run): Counts[] => {
    const median = withHalves(medianOf(run.shown), places);
    const of = (time: 'am' | 'pm') => run.shown.filter((_, index) => run.readings[index]?.milking === time);
    const [am, pm] = [of('am'), of('pm')];
    const above = aboveOf(run.shown, median);
    const fair = Math.min(am.length, pm.length) >= LEAST_A_TIME && above > 0;
    return fair ? [{ run, median, am, pm }] : [];
  });
}

function tableOf({ median, am, pm }: Counts): TablePicture {
  const line = (name: string, above: number, all: number): Cell[] => [
    msg(name),
    { blank: whole(above) },
    { blank: whole(all - above) },
    { blank: whole(all) },
  ];
  const [a, p] = [aboveOf(am, median), aboveOf(pm, median)];
  return {
    is: 'table',
    columns: ['time', 'above', 'not-above', 'total'].map((name) => msg(`task.two-way-table.${name}`)),
    rows: [
      line('sheet.label.am', a, am.length),
      line('sheet.label.pm', p, pm.length),
      line('task.two-way-table.total', a + p, am.length + pm.length),
    ],
  };
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, counts: Counts) {
  const { unit } = context.measure;
  const { run, median, am, pm } = counts;
  const [a, p] = [aboveOf(am, median), aboveOf(pm, median)];
  const share = (part: number, all: number): Shown => rounded(new Fraction(part, all).mul(100), 0);
  const [ofAm, ofPm, ofAbove] = [share(a, am.length), share(p, pm.length), share(a, a + p)];
  const apart = Math.abs(ofAm.num - ofPm.num);
  const table = tableOf(counts);
  return { unit, run, median, am, pm, a, p, ofAm, ofPm, ofAbove, apart, table };
}

function firstAsks({ am, pm, a, p, ofAm, ofPm, table }: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.two-way-table.ask-table'),
      work: { is: 'picture' },
      answer: msg('task.two-way-table.answer-table'),
      values: [
        a,
        am.length - a,
        am.length,
        p,
        pm.length - p,
        pm.length,
        a + p,
        am.length + pm.length - a - p,
        am.length + pm.length,
      ].map(whole),
      accepted: [],
      steps: [],
      picture: table,
    },
    {
      prompt: msg('task.two-way-table.ask-shares'),
      work: { is: 'boxes', after: ['percent', 'percent'] },
      answer: msg('sheet.answer-and', { a: qty(ofAm, 'percent'), b: qty(ofPm, 'percent') }),
      values: [ofAm, ofPm],
      accepted: [],
      steps: [
        msg('task.two-way-table.step', {
          line: math(whole(a), '÷', whole(am.length), '×', whole(100)),
          percent: qty(ofAm, 'percent'),
        }),
        msg('task.two-way-table.step', {
          line: math(whole(p), '÷', whole(pm.length), '×', whole(100)),
          percent: qty(ofPm, 'percent'),
        }),
      ],
    },
  ];
}

function lastAsks({ a, p, ofAbove, apart }: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.two-way-table.ask-given'),
      work: { is: 'boxes', after: ['percent'] },
      answer: msg('sheet.answer', { amount: qty(ofAbove, 'percent') }),
      values: [ofAbove],
      accepted: [],
      steps: [
        msg('task.two-way-table.step', {
          line: math(whole(a), '÷', whole(a + p), '×', whole(100)),
          percent: qty(ofAbove, 'percent'),
        }),
      ],
    },
    {
      ...askInWords(
        msg('task.two-way-table.ask-go'),
        msg(`task.two-way-table.answer-${apart >= APART_POINTS ? 'go' : 'not'}`),
        2,
        [msg('task.two-way-table.accept-go')],
      ),
      values: [apart >= APART_POINTS ? 'go' : 'not'],
    },
  ];
}

function task(context: TaskContext, from: Counts): Task {
  const worked = workOut(context, from);
  const { unit, run, median, am, pm, table } = worked;
  return {
    kind: 'two-way-table',
    standards: ['HSS-ID.B.5', 'HSS-CP.A.4'],
    lead: [
      msg(`task.two-way-table.lead-${unit}`, { name: nameOf(run.doe), median: qty(median, unit) }),
      msg('task.two-way-table.values-am', { values: row(am.map(num)) }),
      msg('task.two-way-table.values-pm', { values: row(pm.map(num)) }),
    ],
    picture: table,
    asks: [...firstAsks(worked), ...lastAsks(worked)],
    mistake: { what: msg('task.two-way-table.mistake'), why: msg('task.two-way-table.why') },
    fromBook: milkingsFromBook(context, run),
  };
}

/** Two-way tables (HSS-ID.B.5) and shares under a condition (HSS-CP.A.4). */
export const twoWayTable = taskKind<Counts>({
  name: 'two-way-table',
  bands: ['9-12'],
  standards: ['HSS-ID.B.5', 'HSS-CP.A.4'],
  lack: 'no-week-of-one-doe',
  // A table without an empty cell tells more; one with some is taken where there is nothing better.
  candidates(context) {
    const all = countsOf(context);
    const full = all.filter(({ am, pm, median }) => aboveOf(am, median) > 0 && aboveOf(pm, median) > 0);
    return full.length > 0 ? full : all;
  },
  touches: ({ run }) => [run.doe.id, `${run.doe.id}|two-way`],
  make: task,
});
