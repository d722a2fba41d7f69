// The scatter plot of a trend.
import { msg } from '../sheet/message.ts';
import type { ScatterPicture } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';
import { residual, type Trend } from './trend.ts';

/** The points of a trend, with its line or without. */
export function trendPicture(context: TaskContext, trend: Trend, withLine: boolean): ScatterPicture {
  return {
    is: 'scatter',
    points: trend.points.map(({ x, y }) => ({ x, y })),
    line: withLine ? { slope: trend.slope, intercept: trend.intercept } : null,
    xLabel: msg('sheet.axis.day'),
    yLabel: msg(`sheet.axis.${context.measure.unit}`),
    zeroLine: false,
    bare: false,
  };
}

/** The residuals of a trend about their zero line; bare for the sheet, drawn for the key. */
export function residualPicture(context: TaskContext, trend: Trend, bare: boolean): ScatterPicture {
  return {
    is: 'scatter',
    points: trend.points.map((point) => ({ x: point.x, y: residual(trend, point) })),
    line: null,
    xLabel: msg('sheet.axis.day'),
    yLabel: msg(`sheet.axis.residual-${context.measure.unit}`),
    zeroLine: true,
    bare,
  };
}
