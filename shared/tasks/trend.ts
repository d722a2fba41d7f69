// Milk over days and the least-squares line through it, with the coefficients that the sheet prints.
import Fraction from 'fraction.js';
import { dayNumber } from '../calendar/day.ts';
import { exactly, rounded, shownIn, valueOf, type Shown } from '../quantity/grade.ts';
import { msg, sub, text, type Slot } from '../sheet/message.ts';
import { distinctBy, doesWithDays, total, type TaskContext } from './context.ts';

/** A point of a trend: day 1 is the first day of the series. */
export interface TrendPoint {
  readonly x: number;
  readonly date: string;
  readonly y: Shown;
}

/** A series over days and its line. `slope` and `intercept` are the printed, rounded ones. */
export interface Trend {
  readonly id: string;
  /** "the herd" or a doe's name. */
  readonly who: Slot;
  readonly points: readonly TrendPoint[];
  readonly slope: Shown;
  readonly intercept: Shown;
  /** Places of the amounts; the line's numbers have one more. */
  readonly places: number;
}

const LEAST_POINTS = 5;
const MOST_POINTS = 8;
const LIVELY_VALUES = 4;

/**
 * The least-squares line of y on x, exact. `null` where all x are alike.
 * Slope = (n Σxy - Σx Σy) / (n Σx² - (Σx)²), from memory; any text on statistics has it.
 */
export function leastSquares(
  points: readonly { x: number; y: Fraction }[],
): { slope: Fraction; intercept: Fraction } | null {
  const n = points.length;
  const sumX = new Fraction(points.reduce((sum, { x }) => sum + x, 0));
  const sumY = total(points.map(({ y }) => y));
  const sumXY = total(points.map(({ x, y }) => y.mul(x)));
  const sumXX = new Fraction(points.reduce((sum, { x }) => sum + x * x, 0));
  const spread = sumXX.mul(n).sub(sumX.mul(sumX));
  if (n === 0 || spread.equals(0)) return null;
  const slope = sumXY.mul(n).sub(sumX.mul(sumY)).div(spread);
  return { slope, intercept: sumY.sub(slope.mul(sumX)).div(n) };
}

function trendOf(
  context: TaskContext,
  id: string,
  who: Slot,
  days: readonly { date: string; total_mL: number }[],
): Trend[] {
  const { places = 1 } = context.measure;
  const taken = days.slice(-MOST_POINTS);
  const first = dayNumber(taken[0]?.date ?? '');
  if (taken.length < LEAST_POINTS || first === null) return [];
  const points = taken.map(({ date, total_mL }) => ({
    x: (dayNumber(date) ?? first) - first + 1,
    date,
    y: shownIn(total_mL, context.measure),
  }));
  const line = leastSquares(points.map(({ x, y }) => ({ x, y: exactly(y) })));
  if (!line || points.some(({ y }) => y.num <= 0) || distinctBy(points, ({ y }) => valueOf(y)).length < 2)
    return [];
  const [slope, intercept] = [rounded(line.slope, places + 1), rounded(line.intercept, places + 1)];
  return slope.num === 0 ? [] : [{ id, who, points, slope, intercept, places }];
}

/** Every series of the week that a line can be drawn through: the herd's whole days, each doe's full days. */
export function trends(context: TaskContext): Trend[] {
  const milked = context.week.does.filter((doe) => (doe.total_mL ?? 0) > 0).length;
  // The herd of one doe is that doe: her days would be told twice.
  const herd = context.week.recentDays.filter((day) => milked > 1 && day.whole && day.total_mL > 0);
  const all = [
    ...trendOf(context, 'herd', sub(msg('sheet.the-herd')), herd),
    ...doesWithDays(context, LEAST_POINTS).flatMap(({ doe, days }) =>
      trendOf(context, doe.id, text(doe.name), days),
    ),
  ];
  // Amounts that hardly differ make a dull plot; they are taken where there is nothing better.
  const lively = all.filter(
    ({ points }) => distinctBy(points, ({ y }) => valueOf(y)).length >= LIVELY_VALUES,
  );
  return lively.length >= 2 ? lively : all;
}

/** What the printed line says for a day: exact, one place finer than the amounts. */
export function predicted(trend: Trend, x: number): Shown {
  return rounded(exactly(trend.slope).mul(x).add(exactly(trend.intercept)), trend.places + 1);
}

/** Observed less predicted. */
export function residual(trend: Trend, point: TrendPoint): Shown {
  return rounded(exactly(point.y).sub(exactly(predicted(trend, point.x))), trend.places + 1);
}

/** Slots for the printed line: `y = intercept + slope x`, with the sign in its own place. */
export function lineSlots(trend: Trend): { equation: Slot } {
  const { slope, intercept } = trend;
  const sign = slope.num < 0 ? '−' : '+';
  return {
    equation: { is: 'math', line: ['y', '=', intercept, sign, { ...slope, num: Math.abs(slope.num) }, 'x'] },
  };
}

/** How many times the residuals change sign from one day to the next; a zero keeps the sign before it. */
export function signChanges(residuals: readonly Shown[]): number {
  const signs = residuals.map(({ num }) => Math.sign(num)).filter((sign) => sign !== 0);
  return signs.filter((sign, index) => index > 0 && sign !== signs[index - 1]).length;
}
