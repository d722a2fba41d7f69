// A line laid through a whole lactation: what its residuals say, and which model to take instead.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, math, msg, num, row, type Slot } from '../sheet/message.ts';
import type { CurvePicture, TablePicture } from '../sheet/picture.ts';
import { askInWords } from './askInWords.ts';
import { distinctBy, type TaskContext } from './context.ts';
import { cowSeries, ownSeries, spreadWeeks, type WeekSeries } from './lactationSeries.ts';
import { looksBent } from './residualPlot.ts';
import { taskKind, type Task } from './task.ts';
import { leastSquares, signChanges } from './trend.ts';

const POINTS = 7;

interface Fit {
  readonly series: WeekSeries;
  readonly points: readonly { readonly week: number; readonly y: Shown }[];
  readonly slope: Shown;
  readonly intercept: Shown;
}

function fitOf(series: WeekSeries): Fit[] {
  const points = spreadWeeks(series, POINTS);
  const line = leastSquares(points.map(({ week, y }) => ({ x: week, y: exactly(y) })));
  if (points.length < POINTS || !line || distinctBy(points, ({ y }) => valueOf(y)).length < 4) return [];
  const slope = rounded(line.slope, Math.min(4, series.places + 2));
  const fit = { series, points, slope, intercept: rounded(line.intercept, series.places + 1) };
  return slope.num !== 0 && residualsOf(fit).filter(({ num: size }) => size !== 0).length >= POINTS - 2
    ? [fit]
    : [];
}

/** The published cow up to the week in which her fall flattens: there the points bend about a line. */
const COW_WEEKS = 22;
function cowRiseAndFall(): WeekSeries {
  const cow = cowSeries();
  return { ...cow, weeks: cow.weeks.slice(0, COW_WEEKS) };
}

/** What the printed line says for a week, rounded to the places of the amounts. */
const predictedOf = ({ slope, intercept, series }: Fit, week: number): Shown =>
  rounded(exactly(slope).mul(week).add(exactly(intercept)), series.places);

const residualsOf = (fit: Fit): Shown[] =>
  fit.points.map(({ week, y }) =>
    rounded(exactly(y).sub(exactly(predictedOf(fit, week))), fit.series.places),
  );

function tableOf(fit: Fit, residuals: readonly Shown[]): TablePicture {
  const { unit } = fit.series;
  return {
    is: 'table',
    columns: ['week-x', `observed-${unit}`, 'predicted', 'residual'].map((name) =>
      msg(`sheet.column.${name}`),
    ),
    rows: fit.points.map(({ week, y }, index) => [
      whole(week),
      y,
      { blank: predictedOf(fit, week) },
      { blank: residuals[index] as Shown },
    ]),
  };
}

function drawn(fit: Fit): CurvePicture {
  return {
    is: 'curve',
    points: fit.points.map(({ week, y }) => ({ x: week, y })),
    wood: null,
    line: { slope: fit.slope, intercept: fit.intercept },
    last: Math.max(...fit.points.map(({ week }) => week)),
    xLabel: msg('sheet.axis.week'),
    yLabel: msg(`sheet.axis.a-day-${fit.series.unit}`),
  };
}

function equation({ slope, intercept }: Fit): Slot {
  const sign = slope.num < 0 ? '−' : '+';
  return { is: 'math', line: ['y', '=', intercept, sign, { ...slope, num: Math.abs(slope.num) }, 'x'] };
}

function task(_: TaskContext, fit: Fit): Task {
  const residuals = residualsOf(fit);
  const changes = signChanges(residuals);
  const bent = looksBent(residuals);
  const [first] = fit.points as [Fit['points'][number]];
  const says = predictedOf(fit, first.week);
  const table = tableOf(fit, residuals);
  return {
    kind: 'line-or-curve',
    standards: ['HSS-ID.B.6.a', 'HSS-ID.B.6.b'],
    lead: [
      msg(`task.line-or-curve.lead-${fit.series.own ? fit.series.unit : 'fat'}`, { who: fit.series.who }),
      msg(`task.line-or-curve.line-${fit.series.places}`, { equation: equation(fit) }),
    ],
    picture: table,
    asks: [
      {
        prompt: msg('task.line-or-curve.ask-table'),
        work: { is: 'picture' },
        answer: msg('task.line-or-curve.answer-table', { residuals: row(residuals.map(num)) }),
        values: residuals,
        accepted: [],
        steps: [
          msg('task.line-or-curve.step', {
            week: num(whole(first.week)),
            line: math(first.y, '−', says, '=', residuals[0] as Shown),
          }),
        ],
        picture: drawn(fit),
      },
      {
        ...askInWords(
          msg('task.line-or-curve.ask-judge'),
          msg(`task.line-or-curve.answer-${bent ? 'bent' : 'mixed'}`, { n: count(changes) }),
          2,
        ),
        values: [bent ? 'bent' : 'mixed', whole(changes)],
      },
      askInWords(msg('task.line-or-curve.ask-model'), msg('task.line-or-curve.answer-model'), 2, [
        msg('task.line-or-curve.accept-model'),
      ]),
    ],
    mistake: { what: msg('task.line-or-curve.mistake'), why: msg('task.line-or-curve.why') },
    fromBook: [],
  };
}

/** Fit a function (HSS-ID.B.6.a), judge it by its residuals (HSS-ID.B.6.b). */
export const lineOrCurve = taskKind<Fit>({
  name: 'line-or-curve',
  bands: ['9-12'],
  standards: ['HSS-ID.B.6.a', 'HSS-ID.B.6.b'],
  lack: 'nothing',
  candidates(context) {
    const own = ownSeries(context).flatMap(fitOf);
    return own.length > 0 ? own : fitOf(cowRiseAndFall());
  },
  touches: ({ series }) => [`curve|${series.id}`],
  make: task,
});
