// A second way to the answers of the later tasks of 6-8 that are made from the milk book.
import { expect } from 'vitest';
import type { Shown } from '../../../shared/quantity/grade.ts';
import type { Task } from '../../../shared/tasks/task.ts';
import { expectNear, gridOf, lotsIn } from './listsOlder.ts';
import { answers, expectAnswers, figure, num, rowValues, slot, sum } from './slots.ts';

type Check = (task: Task) => void;

const placesOf = (value: unknown): number => (value as Shown).places ?? 0;

/** Checks by kind. */
export const CHECKS_68_MILK: Readonly<Record<string, Check>> = {
  'percent-change'(task) {
    const [before, after] = [slot(task.lead[0], 'before'), slot(task.lead[0], 'after')];
    const [percent] = answers(task, 0).map(Number);
    expectNear(percent, Math.abs(100 * (after / before) - 100), 1);
    expect(task.asks[0]?.prompt.key.endsWith(after > before ? 'rise' : 'fall')).toBe(true);
    // Once more by the printed percent: within half of the last place of each rounding.
    const next = after * (1 + ((after > before ? 1 : -1) * Number(percent)) / 100);
    expectNear(answers(task, 1)[0], next, placesOf(task.asks[1]?.values[0]));
    expect(Number(percent)).toBeGreaterThan(0);
  },
  'two-boxes'(task) {
    const { boxes, from, to, step } = figure(task, 'box-plots');
    boxes.forEach((box, index) => {
      const told = task.lead[index + 1];
      for (const name of ['low', 'q1', 'median', 'q3', 'high'] as const) expect(slot(told, name)).toBeCloseTo(num(box[name]), 9);
      const five = [box.low, box.q1, box.median, box.q3, box.high].map(num);
      expect([...five].sort((a, b) => a - b)).toEqual(five);
      expect(num(from)).toBeLessThanOrEqual(num(box.low) + 1e-9);
      expect(num(to)).toBeGreaterThanOrEqual(num(box.high) - 1e-9);
    });
    expect(Math.round((num(to) - num(from)) / num(step))).toBeLessThanOrEqual(12);
    const widths = boxes.map(({ q1, q3 }) => num(q3) - num(q1));
    expectAnswers(task, 0, widths);
    const apart = Math.abs(num(boxes[0]?.median as Shown) - num(boxes[1]?.median as Shown));
    const [given, times] = answers(task, 1);
    expect(given).toBeCloseTo(apart, 9);
    expectNear(times, apart / Math.max(...widths), 1);
    // One box lies wholly beside the other, shares an edge with it and no more, or overlaps it.
    const [a, b] = boxes.map(({ q1, q3 }) => [num(q1), num(q3)] as const) as [readonly [number, number], readonly [number, number]];
    const shared = Math.min(a[1], b[1]) - Math.max(a[0], b[0]);
    expectAnswers(task, 2, [Math.abs(shared) < 1e-9 ? 'touch' : shared < 0 ? 'apart' : 'overlap']);
    expect(apart).toBeGreaterThan(0);
  },
  'sample-the-week'(task) {
    const grid = gridOf(task);
    const lots = lotsIn(task.lead[1], 'lots');
    expect(new Set(lots).size).toBe(4);
    const picked = lots.map((lot) => grid.get(lot) ?? Number.NaN);
    const places = placesOf(task.asks[0]?.values[0]);
    expectNear(answers(task, 0)[0], sum(picked) / 4, places);
    const all = [...grid.values()];
    expect(slot(task.asks[1]?.prompt, 'n')).toBe(all.length);
    expect(slot(task.asks[1]?.prompt, 'sum')).toBeCloseTo(sum(all), 7);
    expectNear(answers(task, 1)[0], sum(all) / all.length, places);
    expect(answers(task, 1)[1]).toBeCloseTo(Math.abs(Number(answers(task, 0)[0]) - Number(answers(task, 1)[0])), 9);
  },
  'direct-or-not'(task) {
    const totals = rowValues(figure(task, 'table'), 0);
    answers(task, 0).forEach((given, index) => expectNear(given, (totals[index] ?? 0) / (index + 1), 2));
    expect(answers(task, 0).length).toBe(totals.length);
    // In proportion: every total is its day times the first.
    const direct = totals.every((one, index) => Math.abs(one - (totals[0] ?? 0) * (index + 1)) < 1e-9);
    expectAnswers(task, 1, [direct ? 'yes' : 'no']);
    expectAnswers(task, 2, [slot(task.asks[2]?.prompt, 'k') * slot(task.asks[2]?.prompt, 'days')]);
  },
  'line-by-eye'(task) {
    const { points } = figure(task, 'scatter');
    const equation = task.lead[1]?.slots['equation'];
    if (equation?.is !== 'math') throw new Error('no equation');
    const [, , slope, , , intercept] = equation.line as [string, string, Shown, string, string, Shown];
    const at = (x: number) => num(slope) * x + num(intercept);
    expectAnswers(task, 0, [at(1), at(slot(task.asks[0]?.prompt, 'last'))]);
    const misses = points.map(({ x, y }) => ({ x, miss: Math.abs(num(y) - at(x)) })).sort((a, b) => b.miss - a.miss);
    expectAnswers(task, 1, [misses[0]?.x ?? Number.NaN]);
    expect((misses[0]?.miss ?? 0) - (misses[1]?.miss ?? 0)).toBeGreaterThan(1e-9);
    expectAnswers(task, 2, [num(slope)]);
    expect(task.asks[2]?.answer.key.endsWith(num(slope) > 0 ? 'rises' : 'falls')).toBe(true);
    // Read off a ruler, but near the points: about as many above as below is too much to ask, a miss of all is too bad.
    expect(misses.some(({ miss }) => miss < (misses[0]?.miss ?? 0))).toBe(true);
  },
  'curve-in-words'(task) {
    const { points } = figure(task, 'curve');
    const top = points.reduce((best, one) => (num(one.y) > num(best.y) ? one : best));
    expectAnswers(task, 0, [top.x]);
    const { prompt } = task.asks[1] ?? {};
    expect(slot(prompt, 'last')).toBe(points.at(-1)?.x);
    // The week of the highest point is what the first question asks: the second must not tell it.
    expect(Object.keys(prompt?.slots ?? {}).sort()).toEqual(['high', 'last', 'low']);
    expect([slot(prompt, 'high'), slot(prompt, 'low')]).toEqual([num(top.y), num(points.at(-1)?.y as Shown)]);
    const weeks = slot(prompt, 'last') - top.x;
    const [rate] = task.asks[1]?.values ?? [];
    expectNear(answers(task, 1)[0], (slot(prompt, 'high') - slot(prompt, 'low')) / weeks, placesOf(rate));
    expect(weeks).toBeGreaterThanOrEqual(4);
  },
}; // prettier-ignore
