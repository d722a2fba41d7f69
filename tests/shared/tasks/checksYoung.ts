// A second way to every answer of K-2 and 3-5, from the numbers that the sheet prints.
import { expect } from 'vitest';
import type { Task } from '../../../shared/tasks/task.ts';
import { CHECKS_FIRST } from './checksFirst.ts';
import { CHECKS_NEXT } from './checksNext.ts';
import {
  answers,
  cardValues,
  cupCounts,
  expectAnswers,
  figure,
  num,
  slot,
  slotList,
  slotText,
  sum,
} from './slots.ts';

type Check = (task: Task) => void;

const nameWith = (counts: readonly { label: unknown; count: number }[], best: number) => counts.find(({ count }) => count === best)?.label; // prettier-ignore

/** Counts up one by one, as a child would. */
function countTo(n: number): number {
  let all = 0;
  while (all < n) all += 1;
  return all;
}

/** Checks by kind, K-2. */
export const CHECKS_K2: Readonly<Record<string, Check>> = {
  ...CHECKS_FIRST,
  'count-cups'(task) {
    const [cups = 0] = cupCounts(figure(task, 'cups'));
    expectAnswers(task, 0, [countTo(cups)]);
    expect(cups).toBeGreaterThan(1);
  },
  'more-or-less'(task) {
    const { groups } = figure(task, 'cups');
    const [a = 0, b = 0] = cupCounts(figure(task, 'cups'));
    expect(a).not.toBe(b);
    expectAnswers(task, 0, [nameWith(groups, Math.max(a, b)) as string]);
    // Take one from each until one row is empty; what is left is the difference.
    let [left, right, more] = [a, b, 0];
    while (left > 0 || right > 0) {
      if (left === 0 || right === 0) more += 1;
      [left, right] = [Math.max(0, left - 1), Math.max(0, right - 1)];
    }
    // How many more is a question from grade 1 on.
    if (task.standards[0] === 'K.CC.C.6') expect(task.asks.length).toBe(1);
    else expectAnswers(task, 1, [more]);
  },
  'join-milkings'(task) {
    const [am = 0, pm = 0] = cupCounts(figure(task, 'cups'));
    expectAnswers(task, 0, [am, pm, countTo(am + pm)]);
    expect(Math.min(am, pm)).toBeGreaterThan(0);
  },
  'picture-graph'(task) {
    const { rows } = figure(task, 'picture-graph');
    const of = (name: string) => rows.find(({ label }) => label === name)?.count ?? Number.NaN;
    const [more, both] = [task.asks[0]?.prompt, task.asks[1]?.prompt];
    expectAnswers(task, 0, [of(slotText(more, 'high')) - of(slotText(more, 'low'))]);
    expect(answers(task, 0)[0]).toBeGreaterThan(0);
    expectAnswers(task, 1, [of(slotText(both, 'a')) + of(slotText(both, 'b'))]);
    expect(slotText(both, 'a')).not.toBe(slotText(both, 'b'));
    expect(rows.length).toBeLessThanOrEqual(4);
    expect(rows.length).toBeGreaterThanOrEqual(3);
  },
  'fill-jars'(task) {
    const [cups, perJar] = [slot(task.lead[0], 'amount'), slot(task.lead[1], 'n')];
    let [full, left] = [0, cups];
    while (left >= perJar) [full, left] = [full + 1, left - perJar];
    expectAnswers(task, 0, [full]);
    expectAnswers(task, 1, [left]);
    const jars = figure(task, 'jars');
    expect([jars.cupsPerJar, jars.filled]).toEqual([perJar, 0]);
    expect(jars.jars).toBeGreaterThan(full);
    expect(task.asks[0]?.picture).toMatchObject({ is: 'jars', filled: cups });
  },
  'order-cups'(task) {
    const values = cardValues(figure(task, 'cards'));
    const order = [...values].sort((a, b) => a - b);
    expectAnswers(task, 0, order);
    expect(values).not.toEqual(order);
    expect(new Set(values).size).toBe(values.length);
  },
  'missing-part'(task) {
    const [all, part] = [slot(task.lead[0], 'all'), slot(task.lead[1], 'part')];
    let rest = 0;
    while (part + rest < all) rest += 1;
    expectAnswers(task, 0, [rest]);
    expect(rest).toBeGreaterThan(0);
  },
  'two-days'(task) {
    const [a = 0, b = 0] = cupCounts(figure(task, 'cups'));
    if (task.standards[0] === 'K.CC.C.6') expect(task.asks.length).toBe(1);
    else expectAnswers(task, 1, [Math.abs(a - b)]);
    expect(a).not.toBe(b);
    const days = figure(task, 'cups').groups.map(({ label }) => (label as unknown as { slots: { day: { iso: string } } }).slots.day.iso);
    expectAnswers(task, 0, [days[a > b ? 0 : 1] ?? '']);
  },
  'add-days'(task) {
    const values = cardValues(figure(task, 'cards'));
    expectAnswers(task, 0, [...values, sum(values)]);
  },
  'even-odd'(task) {
    const [cups = 0] = cupCounts(figure(task, 'cups'));
    let left = cups;
    while (left > 1) left -= 2;
    expectAnswers(task, 0, [left === 0 ? 'even' : 'odd', cups]);
  },
  'fill-up'(task) {
    const [cups, perJar] = [slot(task.lead[0], 'amount'), slot(task.lead[1], 'n')];
    const [more] = answers(task, 0);
    expect(cups + Number(more)).toBe(perJar);
    expect(Number(more)).toBeGreaterThan(0);
  },
  'kids-milk'(task) {
    expectAnswers(task, 0, [slot(task.lead[0], 'n')]);
    expect(slot(task.lead[0], 'n')).toBeGreaterThan(0);
  },
}; // prettier-ignore

/** Whole minutes from one clock time to another, by walking the clock. */
function walk(from: string, to: string): number {
  const [h = 0, m = 0] = from.split(':').map(Number);
  let [hour, minute, walked] = [h, m, 0];
  const at = () => `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
  do {
    minute += 1;
    if (minute === 60) [hour, minute] = [(hour + 1) % 24, 0];
    walked += 1;
  } while (at() !== to);
  return walked;
}

/** Checks by kind, 3-5. */
export const CHECKS_35: Readonly<Record<string, Check>> = {
  ...CHECKS_NEXT,
  'mark-number-line'(task) {
    const line = figure(task, 'number-line');
    const amount = slot(task.lead[0], 'amount');
    expectAnswers(task, 0, [amount]);
    expect(amount).toBeGreaterThan(line.from);
    expect(amount).toBeLessThan(line.to);
    expect((amount * line.parts) % 1).toBe(0);
    expect(amount % 1).not.toBe(0);
    const [below, above] = answers(task, 1).map(Number) as [number, number];
    expect(above - below).toBe(1);
    expect(below < amount && amount < above).toBe(true);
    expect(line.marks).toEqual([]);
  },
  'add-milkings'(task) {
    const [a, b] = [slot(task.lead[0], 'amount'), slot(task.lead[1], 'amount')];
    expectAnswers(task, 0, [(a * 4 + b * 4) / 4]);
  },
  'scaled-bars'(task) {
    const { bars, scale, top } = figure(task, 'bars');
    const of = (name: string) => num(bars.find(({ label }) => label === name)?.value ?? { num: Number.NaN, den: 1 });
    const [more, both] = [task.asks[0]?.prompt, task.asks[1]?.prompt];
    expectAnswers(task, 0, [of(slotText(more, 'high')) - of(slotText(more, 'low'))]);
    expect(answers(task, 0)[0]).toBeGreaterThan(0);
    expectAnswers(task, 1, [of(slotText(both, 'a')) + of(slotText(both, 'b'))]);
    expect([2, 5, 10]).toContain(scale);
    for (const { value } of bars) {
      expect(num(value)).toBeLessThanOrEqual(top);
      // On a line, or halfway between two of them.
      expect((num(value) * 2) % scale).toBe(0);
    }
  },
  'equal-jars'(task) {
    const [cups, perJar] = [slot(task.lead[0], 'amount'), slot(task.lead[1], 'n')];
    let [full, left] = [0, cups];
    while (left >= perJar) [full, left] = [full + 1, left - perJar];
    expectAnswers(task, 0, [full]);
    expectAnswers(task, 1, [left]);
    expectAnswers(task, 2, [full + 1]);
    expect(Math.min(full, left)).toBeGreaterThan(0);
  },
  'larger-to-smaller'(task) {
    const { rows } = figure(task, 'table');
    const pairs = rows.map(([large, small]) => [num(large as never), small as { num?: number; blank?: never }] as const);
    const factor = task.lead[0]?.key.endsWith('-qt') ? 4 : 1000;
    const blanks = pairs.filter(([, small]) => 'blank' in small).map(([large]) => large * factor);
    expectAnswers(task, 0, blanks);
    expectAnswers(task, 1, [slot(task.asks[1]?.prompt, 'amount') * factor]);
    expect(blanks.length).toBe(rows.length - 1);
  },
  'even-out'(task) {
    const values = cardValues(figure(task, 'cards'));
    const [share] = answers(task, 0).map(Number) as [number];
    // Pouring each milking up or down to the share leaves nothing over.
    expect(sum(values.map((value) => value - share))).toBeCloseTo(0, 9);
    expect((share * 4) % 1).toBe(0);
    expect(slot(task.asks[0]?.prompt, 'n')).toBe(values.length);
  },
  'between-milkings'(task) {
    const [am, pm] = figure(task, 'clocks').clocks.map(({ time }) => time) as [string, string];
    const [day, night] = [walk(am, pm), walk(pm, am)];
    expectAnswers(task, 0, [Math.floor(day / 60), day % 60]);
    expectAnswers(task, 1, [Math.floor(night / 60), night % 60]);
  },
  'line-plot'(task) {
    const values = slotList(task.lead[1], 'values');
    const order = [...values].sort((a, b) => a - b);
    expectAnswers(task, 0, order);
    expectAnswers(task, 1, [(order.at(-1) ?? 0) - (order[0] ?? 0)]);
    const done = task.asks[0]?.picture;
    if (done?.is !== 'dot-plot') throw new Error('the key has no plot');
    expect(done.values.map(num)).toEqual(values);
    expect(num(done.from)).toBeLessThanOrEqual(order[0] ?? 0);
    expect(num(done.to)).toBeGreaterThanOrEqual(order.at(-1) ?? 0);
  },
  'week-at-this-rate'(task) {
    const day = slot(task.lead[0], 'amount');
    let week = 0;
    for (let one = 0; one < 7; one += 1) week += day;
    expectAnswers(task, 0, [week]);
    expectAnswers(task, 1, [Math.abs(slot(task.asks[1]?.prompt, 'amount') - week)]);
    expect(answers(task, 1)[0]).toBeGreaterThan(0);
  },
  'sun-to-milk'(task) {
    const road = ['sun', 'plants', 'eats', 'milk', 'child'];
    const places = figure(task, 'steps').steps.map(({ words }) => road.indexOf(words.key.split('.').at(-1) ?? '') + 1);
    expectAnswers(task, 0, places);
    expect(places).not.toEqual([1, 2, 3, 4, 5]);
  },
}; // prettier-ignore
