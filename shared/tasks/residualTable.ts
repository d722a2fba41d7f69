// Predicted values, residuals and the sum of their squares.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { joined, math, msg, num, qty } from '../sheet/message.ts';
import type { Cell, TablePicture } from '../sheet/picture.ts';
import { total, type TaskContext } from './context.ts';
import { squareOf as square } from './spread.ts';
import { taskKind } from './task.ts';
import { lineSlots, predicted, residual, trends, type Trend, type TrendPoint } from './trend.ts';

const MOST_ROWS = 6;
const LEAST_MISSES = 3;

/** Series whose residuals are not printed elsewhere on this sheet. */
export function freshTrends(context: TaskContext, kind: string): Trend[] {
  const claimed = (id: string) =>
    ['residual-table', 'residual-plot'].some((other) => other !== kind && context.used.has(`${other}|${id}`));
  return trends(context).filter((trend) => !claimed(trend.id) && misses(trend) >= LEAST_MISSES);
}

/** Points of the table that lie off the line by more than its rounding: without them there is nothing to find. */
function misses(trend: Trend): number {
  return trend.points
    .slice(-MOST_ROWS)
    .filter((point) => Math.abs(valueOf(residual(trend, point))) >= 10 ** -trend.places).length;
}

const squareOf = (shown: Shown, places: number): Shown => rounded(square(exactly(shown)), places);

/** The squares that the table asks for, each rounded, and their sum. */
function squaresOf(trend: Trend, points: readonly TrendPoint[]): { squares: Shown[]; sum: Shown } {
  const places = trend.places + 2;
  const squares = points.map((point) => squareOf(residual(trend, point), places));
  return { squares, sum: rounded(total(squares.map(exactly)), places) };
}

/** The sum of the residuals themselves: the usual slip. */
function sumOf(trend: Trend, points: readonly TrendPoint[]): Shown {
  return rounded(total(points.map((point) => exactly(residual(trend, point)))), trend.places + 1);
}

/** Residuals and how far a line misses (HSS-ID.B.6.b). */
export const residualTable = taskKind<Trend>({
  name: 'residual-table',
  bands: ['9-12'],
  standards: ['HSS-ID.B.6.b'],
  lack: 'no-five-days',
  candidates: (context) =>
    freshTrends(context, 'residual-table').filter((trend) => {
      const points = trend.points.slice(-MOST_ROWS);
      return valueOf(squaresOf(trend, points).sum) !== valueOf(sumOf(trend, points));
    }),
  touches: ({ id }) => [`trend|${id}`, `residual-table|${id}`],
  make(context, trend) {
    const { unit } = context.measure;
    const points = trend.points.slice(-MOST_ROWS);
    const { squares, sum } = squaresOf(trend, points);
    const unrounded = sumUnrounded(trend, points, trend.places + 2);
    const [first] = points as [TrendPoint];
    const table = tableOf(trend, points, squares, unit);
    return {
      kind: 'residual-table',
      standards: ['HSS-ID.B.6.b'],
      lead: [
        msg(`task.residual-table.lead-${unit}`, { who: trend.who, ...lineSlots(trend) }),
        msg(`task.residual-table.rule-${trend.places + 2}`),
      ],
      picture: table,
      asks: [
        {
          prompt: msg('task.residual-table.ask-table'),
          work: { is: 'picture' },
          answer: msg('task.residual-table.answer-table'),
          values: points.flatMap((point, index) => [
            predicted(trend, point.x),
            residual(trend, point),
            squares[index] as Shown,
          ]),
          accepted: [],
          steps: [
            msg('task.residual-table.step', {
              x: num(whole(first.x)),
              line: math(first.y, '−', predicted(trend, first.x), '=', residual(trend, first)),
            }),
          ],
          picture: table,
        },
        {
          prompt: msg('task.residual-table.ask-sum'),
          work: { is: 'boxes', after: [null] },
          answer: msg('sheet.answer', { amount: num(sum) }),
          values: [sum],
          accepted:
            valueOf(unrounded) === valueOf(sum)
              ? []
              : [msg('task.residual-table.accept', { sum: num(unrounded) })],
          steps: [msg('sheet.math', { line: math(...joined(squares, '+'), '=', sum) })],
        },
      ],
      mistake: {
        what: msg('task.residual-table.mistake', {
          wrong: qty(sumOf(trend, points), unit),
        }),
        why: msg('task.residual-table.why'),
      },
      fromBook: [],
    };
  },
});

/** The sum without rounding each square first. */
function sumUnrounded(trend: Trend, points: readonly TrendPoint[], places: number): Shown {
  const squares = points.map((point) => square(exactly(residual(trend, point))));
  return rounded(total(squares), places);
}

/** Days and amounts, with empty cells for what the line predicts, the residual and its square. */
function tableOf(
  trend: Trend,
  points: readonly TrendPoint[],
  squares: readonly Shown[],
  unit: 'cup' | 'L',
): TablePicture {
  const columns = ['day-x', `observed-${unit}`, 'predicted', 'residual', 'square'];
  return {
    is: 'table',
    columns: columns.map((column) => msg(`sheet.column.${column}`)),
    rows: points.map((point, index): Cell[] => [
      whole(point.x),
      point.y,
      { blank: predicted(trend, point.x) },
      { blank: residual(trend, point) },
      { blank: squares[index] as Shown },
    ]),
  };
}
