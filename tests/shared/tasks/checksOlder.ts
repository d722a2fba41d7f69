// A second way to every answer of 6-8 and 9-12, from the numbers that the sheet prints.
import { expect } from 'vitest';
import type { Task } from '../../../shared/tasks/task.ts';
import {
  answers,
  expectAnswers,
  figure,
  num,
  rowValues,
  slot,
  slotLine,
  slotList,
  sum,
  written,
} from './slots.ts';

type Check = (task: Task) => void;

const placesOf = (task: Task, ask: number): number => {
  const [value] = task.asks[ask]?.values ?? [];
  return typeof value === 'object' ? (value.places ?? 0) : 0;
};
const mean = (values: readonly number[]) => sum(values) / values.length;

/** Standard deviation by the pairs' differences: no mean is taken. */
function sdByPairs(values: readonly number[]): number {
  let squares = 0;
  for (const a of values) for (const b of values) squares += (a - b) ** 2;
  return Math.sqrt(squares / (2 * values.length * (values.length - 1)));
}

/** Slope and intercept from the centred sums. */
function fit(points: readonly { x: number; y: number }[]): { slope: number; intercept: number } {
  const [mx, my] = [mean(points.map(({ x }) => x)), mean(points.map(({ y }) => y))];
  const slope =
    sum(points.map(({ x, y }) => (x - mx) * (y - my))) / sum(points.map(({ x }) => (x - mx) ** 2));
  return { slope, intercept: my - slope * mx };
}

/** A percent or other rounded number: within half of its last place. */
function expectNear(given: number | string | undefined, want: number, places: number): void {
  expect(Math.abs(Number(given) - want)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-9);
}

/** Checks by kind, 6-8. */
export const CHECKS_68: Readonly<Record<string, Check>> = {
  'mean-week'(task) {
    const values = rowValues(figure(task, 'table'), 0);
    const [given] = answers(task, 0);
    expectNear(given, mean(values), placesOf(task, 0));
    const [date, apart] = answers(task, 1);
    const far = values.map((value) => Math.abs(value - Number(given)));
    expect(Number(apart)).toBeCloseTo(Math.max(...far), 7);
    const dates = figure(task, 'table').columns.slice(1).map((column) => (column.slots['day'] as { iso: string }).iso);
    expect(far[dates.indexOf(String(date))]).toBeCloseTo(Math.max(...far), 7);
  },
  'median-range'(task) {
    const values = slotList(task.lead[1], 'values');
    const [median = 0] = answers(task, 0).map(Number);
    const [below, above] = [values.filter((one) => one < median - 1e-9).length, values.filter((one) => one > median + 1e-9).length];
    expect(Math.max(below, above)).toBeLessThanOrEqual(values.length / 2);
    if (values.length % 2 === 1) expect(values).toContain(median);
    expectAnswers(task, 1, [Math.max(...values) - Math.min(...values)]);
  },
  'dot-plot'(task) {
    const values = slotList(task.lead[1], 'values');
    const axis = figure(task, 'dot-plot');
    const half = slot(task.asks[1]?.prompt, 'half');
    expect(half).toBeCloseTo((Math.max(...values) + Math.min(...values)) / 2, 9);
    expect(values.some((one) => one > half) && values.some((one) => one < half)).toBe(true);
    expectAnswers(task, 0, [...values].sort((a, b) => a - b));
    expectAnswers(task, 1, [values.filter((one) => one > half).length]);
    for (const value of values) expect(((value - num(axis.from)) / num(axis.step)) % 1).toSatisfy((rest: number) => Math.min(Math.abs(rest), Math.abs(1 - rest)) < 1e-6);
    expect(axis.values).toEqual([]);
  },
  'share-of-week'(task) {
    const values = rowValues(figure(task, 'table'), 0);
    expectAnswers(task, 0, [sum(values)]);
    const names = figure(task, 'table').columns.slice(1).map((column) => (column.slots['name'] as { text: string }).text);
    const part = values[names.indexOf((task.asks[1]?.prompt.slots['name'] as { text: string }).text)] ?? Number.NaN;
    const [percent] = answers(task, 1);
    expectNear(percent, (100 * part) / sum(values), 0);
    expect(percent).toBeGreaterThan(0);
    expect(percent).toBeLessThan(100);
  },
  'kept-percent'(task) {
    const values = rowValues(figure(task, 'table'), 0);
    const at = figure(task, 'table').columns.findIndex(({ key }) => key === 'sheet.use.kept') - 1;
    expectNear(answers(task, 0)[0], (100 * (values[at] ?? Number.NaN)) / sum(values), 0);
  },
  'rate-ahead'(task) {
    const [amount, days] = [slot(task.lead[0], 'amount'), slot(task.lead[0], 'days')];
    const [rate] = answers(task, 0);
    expectNear(rate, amount / days, placesOf(task, 0));
    expectAnswers(task, 1, [Number(rate) * slot(task.asks[1]?.prompt, 'days')]);
  },
  'other-system'(task) {
    const [amount, factor] = [slot(task.lead[0], 'amount'), slot(task.lead[1], 'factor')];
    const [changed] = answers(task, 0);
    expectNear(changed, amount * factor, 1);
    const us = task.lead[1]?.key.endsWith('-L');
    expectNear(answers(task, 1)[0], (us ? Number(changed) : amount) * slot(task.asks[1]?.prompt, 'density'), 1);
    // The printed factors are those of the world outside: 1 US cup = 0.2366 L, 1 L = 1.0567 US quarts (NIST Handbook 44, App. C).
    expect(factor).toBeCloseTo(us ? 0.2365882365 : 1 / 0.946352946, 3);
  },
  'am-pm-ratio'(task) {
    const [am, pm] = [slot(task.lead[0], 'am'), slot(task.lead[0], 'pm')];
    expectAnswers(task, 0, [am, pm]);
    expectNear(answers(task, 1)[0], am / pm, 2);
  },
  'what-changes-milk'(task) {
    const [more, less] = [slot(task.lead[0], 'more'), slot(task.lead[0], 'less')];
    expectAnswers(task, 0, [more - less]);
    expect(more).toBeGreaterThan(less);
  },
}; // prettier-ignore

/** Checks by kind, 9-12. */
export const CHECKS_912: Readonly<Record<string, Check>> = {
  'line-of-fit'(task) {
    const { points, line } = figure(task, 'scatter');
    const own = fit(points.map(({ x, y }) => ({ x, y: num(y) })));
    if (!line) throw new Error('the plot has no line');
    expectNear(num(line.slope), own.slope, line.slope.places ?? 0);
    expectNear(num(line.intercept), own.intercept, line.intercept.places ?? 0);
    expect(slotLine(task.lead[1])).toEqual({ slope: num(line.slope), intercept: num(line.intercept) });
    expectAnswers(task, 0, [num(line.slope)]);
    expectAnswers(task, 1, [num(line.intercept) + num(line.slope) * slot(task.asks[1]?.prompt, 'x')]);
  },
  'residual-table'(task) {
    const { slope, intercept } = slotLine(task.lead[0]);
    const places = Number(task.lead[1]?.key.split('-').at(-1));
    const expected = figure(task, 'table').rows.flatMap(([x, y]) => {
      const predicted = intercept + slope * num(x as never);
      const residual = num(y as never) - predicted;
      return [predicted, residual, written(residual ** 2, places)];
    });
    const given = answers(task, 0).map(Number);
    expect(given.length).toBe(expected.length);
    given.forEach((value, index) => expect(Math.abs(value - (expected[index] ?? 0))).toBeLessThanOrEqual(1e-7));
    expectAnswers(task, 1, [sum(given.filter((_, index) => index % 3 === 2))]);
  },
  'residual-plot'(task) {
    const residuals = rowValues(figure(task, 'table'), 0);
    expectAnswers(task, 0, residuals);
    const signs = residuals.filter((one) => one !== 0).map((one) => one > 0);
    let changes = 0;
    for (let at = 1; at < signs.length; at += 1) if (signs[at] !== signs[at - 1]) changes += 1;
    expectAnswers(task, 1, [changes <= (residuals.length - 1) / 3 ? 'bent' : 'mixed', changes]);
    // Residuals of a least-squares line sum to nearly nothing: each is off by what the rounded line is off.
    const last = Math.max(...figure(task, 'table').columns.slice(1).map((column) => slot(column, 'number')));
    const places = (task.asks[0]?.values[0] as { places: number }).places;
    expect(Math.abs(mean(residuals))).toBeLessThanOrEqual(0.5 * 10 ** -places * (last + 1) + 1e-9);
  },
  'mean-and-sd'(task) {
    const values = rowValues(figure(task, 'table'), 0);
    expectNear(answers(task, 0)[0], mean(values), placesOf(task, 0));
    expectNear(answers(task, 1)[0], sdByPairs(values), placesOf(task, 1));
    expect(slot(task.asks[1]?.prompt, 'n')).toBe(values.length);
  },
  'claim-check'(task) {
    const [am, pm] = [rowValues(figure(task, 'table'), 0), rowValues(figure(task, 'table'), 1)];
    const key = task.lead[1]?.key ?? '';
    if (key.endsWith('every-morning')) {
      const against = am.filter((one, day) => !(one > (pm[day] ?? 0))).length;
      expectAnswers(task, 0, [against === 0 ? 'holds' : 'fails', against]);
      return;
    }
    const [a, p] = [sum(am), sum(pm)];
    const holds = key.endsWith('same') ? Math.abs(a - p) < 1e-9 : written((100 * (a - p)) / p, 1) >= 10;
    expectAnswers(task, 0, [holds ? 'holds' : 'fails', a, p]);
  },
  'far-forecast'(task) {
    const { slope, intercept } = slotLine(task.lead[0]);
    const far = intercept + slope * slot(task.asks[0]?.prompt, 'x');
    expectAnswers(task, 0, [far]);
    const [kind] = answers(task, 1);
    expect(kind === 'negative').toBe(far < -1e-9);
    expect(slot(task.asks[0]?.prompt, 'x')).toBeGreaterThan(slot(task.lead[0], 'last'));
  },
  'error-bound'(task) {
    const [n, all, step] = [slot(task.lead[0], 'n'), slot(task.lead[0], 'sum'), slot(task.lead[1], 'step')];
    expectAnswers(task, 0, [step / 2]);
    const [bound, percent] = answers(task, 1);
    expect(Number(bound)).toBeCloseTo((n * step) / 2, 7);
    expectNear(percent, (100 * n * step) / 2 / all, 1);
  },
  'steadier-doe'(task) {
    const percents = [1, 2].map((line) => {
      const values = slotList(task.lead[line], 'values');
      return (100 * sdByPairs(values)) / mean(values);
    });
    const [a, b] = answers(task, 0).map(Number) as [number, number];
    // Rounded mean and deviation on the way: a few tenths of a percent at most for small amounts.
    expect(Math.abs(a - (percents[0] ?? 0))).toBeLessThan(1.5);
    expect(Math.abs(b - (percents[1] ?? 0))).toBeLessThan(1.5);
    const names = [1, 2].map((line) => (task.lead[line]?.slots['name'] as { text: string }).text);
    expectAnswers(task, 1, [names[a < b ? 0 : 1] ?? '']);
  },
}; // prettier-ignore
