// Which of two does milks more evenly for her amount: standard deviation against the mean.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, row, sub, text } from '../sheet/message.ts';
import { namesDiffer, type TaskContext } from './context.ts';
import { dayRuns, type DayRun } from './dayTable.ts';
import { nameOf } from './phrases.ts';
import { meanOf, sampleSd } from './spread.ts';
import { taskKind, type Task } from './task.ts';

const LEAST_DAYS = 5;
const MOST_DOES = 12;
const MOST_ROUNDING_percent = 1;

interface Pair {
  readonly a: DayRun;
  readonly b: DayRun;
}

interface Steadiness {
  readonly mean: Shown;
  readonly sd: Shown;
  readonly percent: Shown;
}

function steadiness(run: DayRun, places: number): Steadiness {
  const mean = rounded(meanOf(run.shown), places + 1);
  const sd = sampleSd(run.shown, places + 1);
  return { mean, sd, percent: rounded(exactly(sd).div(exactly(mean)).mul(100), 1) };
}

// Of a few spoonfuls a day the rounded mean and deviation give another percentage than the milk does.
function roundsWell(run: DayRun, places: number): boolean {
  const [shown, fine] = [places, places + 4].map((of) => valueOf(steadiness(run, of).percent));
  return Math.abs((shown ?? NaN) - (fine ?? NaN)) < MOST_ROUNDING_percent;
}

function pairs(context: TaskContext): Pair[] {
  const { places = 1 } = context.measure;
  const runs = dayRuns(context, LEAST_DAYS)
    .filter((run) => roundsWell(run, places))
    .slice(0, MOST_DOES);
  return runs.flatMap((a, index) =>
    runs
      .slice(index + 1)
      .filter((b) => namesDiffer([a.doe, b.doe]))
      .filter((b) => valueOf(steadiness(a, places).percent) !== valueOf(steadiness(b, places).percent))
      .map((b) => ({ a, b })),
  );
}

/** Comparing spread between two sets (HSS-ID.A.2), variation of a trait in a herd (HS-LS3-3). */
export const steadierDoe = taskKind<Pair>({
  name: 'steadier-doe',
  bands: ['9-12'],
  standards: ['HSS-ID.A.2', 'HS-LS3-3'],
  lack: 'no-two-does',
  candidates: pairs,
  touches: ({ a, b }) => [a.doe.id, b.doe.id],
  make: pairTask,
});

function pairTask(context: TaskContext, { a, b }: Pair): Task {
  const { unit, places = 1 } = context.measure;
  const [first, second] = [steadiness(a, places), steadiness(b, places)];
  const steadier = valueOf(first.percent) < valueOf(second.percent) ? a : b;
  const steps = [
    { run: a, of: first },
    { run: b, of: second },
  ].map(({ run, of }) =>
    msg('task.steadier-doe.step', {
      name: nameOf(run.doe),
      mean: qty(of.mean, unit),
      sd: qty(of.sd, unit),
      line: math(of.sd, '÷', of.mean, '×', whole(100)),
      percent: qty(of.percent, 'percent'),
    }),
  );
  return {
    kind: 'steadier-doe',
    standards: ['HSS-ID.A.2', 'HS-LS3-3'],
    lead: [
      msg(`task.steadier-doe.lead-${unit}`),
      ...[a, b].map((run) =>
        msg('task.steadier-doe.values', { name: nameOf(run.doe), values: row(run.shown.map(num)) }),
      ),
    ],
    picture: null,
    asks: [
      {
        prompt: msg('task.steadier-doe.ask-numbers'),
        work: { is: 'boxes', after: ['percent', 'percent'], signs: [a.doe.name, b.doe.name] },
        answer: msg('task.steadier-doe.answer-numbers', {
          a: nameOf(a.doe),
          first: qty(first.percent, 'percent'),
          b: nameOf(b.doe),
          second: qty(second.percent, 'percent'),
        }),
        values: [first.percent, second.percent],
        accepted: [msg('task.steadier-doe.accept')],
        steps,
      },
      {
        prompt: msg('task.steadier-doe.ask-who'),
        work: { is: 'lines', lines: 3 },
        answer: msg('task.steadier-doe.answer-who', {
          name: sub(msg('sheet.label.name', { name: text(steadier.doe.name) })),
        }),
        values: [steadier.doe.name],
        accepted: [msg('task.steadier-doe.accept-who')],
        steps: [],
      },
    ],
    mistake: { what: msg('task.steadier-doe.mistake'), why: msg('task.steadier-doe.why') },
    fromBook: [],
  };
}
