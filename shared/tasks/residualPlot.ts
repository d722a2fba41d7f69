// Draw a residual plot and judge from it whether a line is a good model.
import { whole, type Shown } from '../quantity/grade.ts';
import { count, msg, num } from '../sheet/message.ts';
import type { TablePicture } from '../sheet/picture.ts';
import { freshTrends } from './residualTable.ts';
import { taskKind } from './task.ts';
import { lineSlots, residual, signChanges, type Trend } from './trend.ts';
import { residualPicture } from './trendPicture.ts';

/**
 * Residuals of one sign in long runs say that the points bend away from the line. By chance half of
 * the steps change sign; the rule of thumb here calls it a pattern up to a third (common practice, no source).
 */
export function looksBent(residuals: readonly Shown[]): boolean {
  return signChanges(residuals) * 3 <= residuals.length - 1;
}

/** Plotting residuals and reading the pattern (HSS-ID.B.6.b). */
export const residualPlot = taskKind<Trend>({
  name: 'residual-plot',
  bands: ['9-12'],
  standards: ['HSS-ID.B.6.b'],
  lack: 'no-two-series',
  candidates: (context) => freshTrends(context, 'residual-plot'),
  touches: ({ id }) => [`trend|${id}`, `residual-plot|${id}`],
  make(context, trend) {
    const residuals = trend.points.map((point) => residual(trend, point));
    const bent = looksBent(residuals);
    const changes = signChanges(residuals);
    const table: TablePicture = {
      is: 'table',
      columns: [
        msg('sheet.column.day-x'),
        ...trend.points.map(({ x }) => msg('sheet.label.number', { number: count(x) })),
      ],
      rows: [[msg(`sheet.axis.residual-${context.measure.unit}`), ...residuals]],
    };
    return {
      kind: 'residual-plot',
      standards: ['HSS-ID.B.6.b'],
      lead: [msg('task.residual-plot.lead', { who: trend.who, ...lineSlots(trend) })],
      picture: table,
      asks: [
        {
          prompt: msg('task.residual-plot.ask-draw'),
          work: { is: 'picture' },
          answer: msg('task.residual-plot.answer-draw'),
          values: residuals,
          accepted: [],
          steps: [],
          picture: residualPicture(context, trend, false),
        },
        {
          prompt: msg('task.residual-plot.ask-judge'),
          work: { is: 'lines', lines: 3 },
          answer: msg(`task.residual-plot.answer-${bent ? 'bent' : 'mixed'}`, {
            n: count(changes),
            of: num(whole(residuals.length - 1)),
          }),
          values: [bent ? 'bent' : 'mixed', whole(changes)],
          accepted: [msg('task.residual-plot.accept')],
          steps: [msg('task.residual-plot.step', { of: num(whole(residuals.length - 1)) })],
        },
      ],
      mistake: { what: msg('task.residual-plot.mistake'), why: msg('task.residual-plot.why') },
      fromBook: [],
    };
  },
});
