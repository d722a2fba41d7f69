// Are days and the milk so far in proportion? The quotient of each pair tells.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, math, msg, num, qty, row } from '../sheet/message.ts';
import type { TablePicture } from '../sheet/picture.ts';
import { askInWords } from './askInWords.ts';
import { total, type TaskContext } from './context.ts';
import { dayRuns, type DayRun } from './dayTable.ts';
import { nameOf } from './phrases.ts';
import { fromBook } from './fromBook.ts';
import { sub } from '../sheet/message.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const LEAST_DAYS = 4;
const MOST_DAYS = 6;
const AHEAD_DAYS = 10;

/** Milk of the first day, of the first two, and so on. */
function soFar(shown: readonly Shown[], places: number): Shown[] {
  return shown.map((_, index) => rounded(total(shown.slice(0, index + 1).map(exactly)), places));
}

const cut = (run: DayRun): DayRun => ({
  ...run,
  days: run.days.slice(0, MOST_DAYS),
  shown: run.shown.slice(0, MOST_DAYS),
});

function tableOf(totals: readonly Shown[], quotients: readonly Shown[], unit: 'cup' | 'L'): TablePicture {
  return {
    is: 'table',
    columns: [
      msg('task.direct-or-not.column-x'),
      ...totals.map((_, index) => msg('sheet.label.number', { number: count(index + 1) })),
    ],
    rows: [
      [msg(`task.direct-or-not.column-${unit}`), ...totals],
      [msg('task.direct-or-not.column-quotient'), ...quotients.map((blank) => ({ blank }))],
    ],
  };
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, whole_run: DayRun) {
  const { unit, places = 1 } = context.measure;
  const run = cut(whole_run);
  const n = run.shown.length;
  const totals = soFar(run.shown, places);
  const quotients = totals.map((one, index) => rounded(exactly(one).div(index + 1), 2));
  const same =
    new Set(
      totals.map((one, index) =>
        exactly(one)
          .div(index + 1)
          .toFraction(),
      ),
    ).size === 1;
  const last = totals.at(-1) as Shown;
  const k = quotients.at(-1) as Shown;
  const ahead = rounded(exactly(k).mul(AHEAD_DAYS), 2);
  const [first, second] = quotients as [Shown, Shown];
  return { unit, run, n, totals, quotients, same, last, k, ahead, first, second };
}

function asksOf({
  unit,
  n,
  quotients,
  same,
  last,
  k,
  ahead,
  first,
  second,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.direct-or-not.ask-table'),
      work: { is: 'picture' },
      answer: msg('task.direct-or-not.answer-table', { values: row(quotients.map(num)) }),
      values: quotients,
      accepted: [],
      steps: [msg('task.direct-or-not.step', { line: math(last, '÷', whole(n)), result: num(k) })],
    },
    {
      ...askInWords(
        msg('task.direct-or-not.ask-direct'),
        same
          ? msg('task.direct-or-not.answer-yes')
          : msg('task.direct-or-not.answer-no', {
              a: num(first),
              b: num(quotients.find((one) => valueOf(one) !== valueOf(first)) ?? second),
            }),
        2,
        [msg('task.direct-or-not.accept-direct')],
      ),
      values: [same ? 'yes' : 'no'],
    },
    {
      prompt: msg('task.direct-or-not.ask-equation', {
        k: qty(k, unit),
        days: qty(whole(AHEAD_DAYS), 'day'),
      }),
      work: { is: 'working', after: [unit] },
      answer: msg('task.direct-or-not.answer-equation', { k: num(k), ahead: qty(ahead, unit) }),
      values: [ahead],
      accepted: [],
      steps: [msg('sheet.math', { line: math(k, '×', whole(AHEAD_DAYS), '=', ahead) })],
    },
  ];
}

function task(context: TaskContext, from: DayRun): Task {
  const worked = workOut(context, from);
  const { unit, run, totals, quotients } = worked;
  return {
    kind: 'direct-or-not',
    standards: ['7.RP.A.2'],
    lead: [msg(`task.direct-or-not.lead-${unit}`, { name: nameOf(run.doe) }), msg('task.direct-or-not.rule')],
    picture: tableOf(totals, quotients, unit),
    asks: asksOf(worked),
    mistake: { what: msg('task.direct-or-not.mistake'), why: msg('task.direct-or-not.why') },
    fromBook: run.days.flatMap((_, index) =>
      fromBook(
        sub(msg('task.direct-or-not.up-to', { x: count(index + 1) })),
        run.days.slice(0, index + 1).flatMap(({ readings }) => readings),
        totals[index] as Shown,
        context.measure,
      ).filter(() => index === 0),
    ),
  };
}

/** Telling proportional pairs from others, and y = kx (7.RP.A.2). */
export const directOrNot = taskKind<DayRun>({
  name: 'direct-or-not',
  bands: ['6-8'],
  standards: ['7.RP.A.2'],
  lack: 'no-week-of-one-doe',
  // Quotients that all print alike though they differ would make a false "yes".
  candidates: (context) =>
    dayRuns(context, LEAST_DAYS).filter((run) => {
      const totals = soFar(cut(run).shown, context.measure.places ?? 1);
      return new Set(totals.map((one, index) => valueOf(rounded(exactly(one).div(index + 1), 2)))).size > 1;
    }),
  touches: ({ doe }) => [doe.id, `${doe.id}|so-far`],
  make: task,
});
