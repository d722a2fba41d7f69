// A second way to the answers of the later tasks of 9-12.
import { expect } from 'vitest';
import type { Shown } from '../../../shared/quantity/grade.ts';
import type { Task } from '../../../shared/tasks/task.ts';
import { expectNear, gridOf, lotsIn, middle, quartiles } from './listsOlder.ts';
import { answers, expectAnswers, figure, num, slot, slotLine, slotList, slotText, sum } from './slots.ts';

type Check = (task: Task) => void;

const placesOf = (task: Task, ask: number, value = 0): number =>
  (task.asks[ask]?.values[value] as Shown).places ?? 0;
const last = (message: { key: string } | undefined): string => message?.key.split('.').at(-1) ?? '';
/** x^b by repeated square roots and a product: no power function is asked. */
function power(x: number, b: number): number {
  let [result, root, rest] = [1, x, b];
  while (rest >= 1) [result, rest] = [result * x, rest - 1];
  for (let bit = 0; bit < 60; bit += 1) {
    root = Math.sqrt(root);
    rest *= 2;
    if (rest >= 1) [result, rest] = [result * root, rest - 1];
  }
  return result;
}
/** e^(−z) as (1 − z/2^k)^(2^k) with its first correction, squared up. */
function decay(z: number): number {
  const steps = 24;
  const small = z / 2 ** steps;
  let value = 1 - small + (small * small) / 2;
  for (let step = 0; step < steps; step += 1) value *= value;
  return value;
}

/** Checks by kind. */
export const CHECKS_912_LATER: Readonly<Record<string, Check>> = {
  'wood-peak'(task) {
    const { wood } = figure(task, 'curve');
    const [a, b, c] = ['a', 'b', 'c'].map((name) => slot(task.lead[1], name)) as [number, number, number];
    expect(wood && [num(wood.a), num(wood.b), num(wood.c)]).toEqual([a, b, c]);
    const at = (x: number) => a * power(x, b) * decay(c * x);
    const [peak] = answers(task, 0).map(Number) as [number];
    expectNear(peak, b / c, 1);
    // The whole day of the peak is no lower than its neighbours on either side of the peak.
    const day = slot(task.asks[1]?.prompt, 'day');
    expect(Math.abs(day - peak)).toBeLessThanOrEqual(0.5001);
    expect(at(peak)).toBeGreaterThanOrEqual(Math.max(at(peak - 1), at(peak + 1)) - 1e-9);
    const [high] = answers(task, 1).map(Number) as [number];
    expectNear(high, at(day), placesOf(task, 1));
    const { prompt } = task.asks[2] ?? {};
    const [far, low] = [slot(prompt, 'far'), slot(prompt, 'low')];
    expectNear(low, at(far), 2);
    expectNear(answers(task, 2)[0], (low - high) / (far - day), placesOf(task, 2));
    expect(Number(answers(task, 2)[0])).toBeLessThanOrEqual(0);
  },
  'line-or-curve'(task) {
    const table = figure(task, 'table');
    const [x, y] = [0, 1].map((place) => table.rows.map((row) => num(row[place] as Shown))) as [number[], number[]];
    const { slope, intercept } = slotLine(task.lead[1]);
    const [mx, my] = [sum(x) / x.length, sum(y) / y.length];
    const own = sum(x.map((one, index) => (one - mx) * ((y[index] ?? 0) - my))) / sum(x.map((one) => (one - mx) ** 2));
    expect(Math.abs(slope - own)).toBeLessThanOrEqual(0.00051);
    expect(Math.abs(intercept - (my - own * mx))).toBeLessThanOrEqual(0.0051);
    const given = answers(task, 0).map(Number);
    given.forEach((residual, index) => {
      // Observed less a prediction that was rounded once.
      const says = (y[index] ?? 0) - residual;
      expectNear(says, intercept + slope * (x[index] ?? 0), placesOf(task, 0));
    });
    const signs = given.map(Math.sign).filter((sign) => sign !== 0).join('');
    const changes = (signs.match(/(?<=^|1)1(?=-)|-1(?=1)/g) ?? []).length;
    expectAnswers(task, 1, [changes <= 2 ? 'bent' : 'mixed', changes]);
    expect(x.length).toBe(7);
  },
  'after-the-peak'(task) {
    const { slots } = task.lead[1] ?? { slots: {} };
    const [a, b] = [slot(task.lead[1], 'a'), slot(task.lead[1], 'b')];
    expect(Object.keys(slots).length).toBe(4);
    const [apart, factor] = answers(task, 0).map(Number) as [number, number];
    expect(apart).toBeCloseTo(a - b, 9);
    expectNear(factor, b / a, 3);
    const [linear, exponential] = answers(task, 1).map(Number) as [number, number];
    expect(linear).toBeCloseTo(2 * b - a, 9);
    expectNear(exponential, b * factor, placesOf(task, 1, 1));
    const observed = slot(task.asks[2]?.prompt, 'observed');
    expectAnswers(task, 2, [Math.abs(linear - observed) < Math.abs(exponential - observed) ? 'linear' : 'exponential']);
    expect(observed).toBeLessThan(b);
    // Where the line through the two amounts meets zero.
    const [first, second] = [slot(task.lead[1], 'first'), slot(task.lead[1], 'second')];
    expectNear(slot(task.asks[3]?.answer, 'zero'), first + (a * (second - first)) / (a - b), 0);
  },
  'energy-yield'(task) {
    const [weight, share, milk, fat] = ['weight', 'share', 'milk', 'fat'].map((name) => slot(task.lead[0], name)) as [number, number, number, number];
    const feed = (weight * share) / 100;
    expectNear(answers(task, 0)[0], feed * slot(task.lead[1], 'mj'), 1);
    // Energy of goat's milk: 4 percent fat holds 3.079 MJ a kg (Nsahlai and others 2004).
    const perKg = slot(task.lead[2], 'base') + slot(task.lead[2], 'fat') * fat;
    expect(slot(task.lead[2], 'base') + slot(task.lead[2], 'fat') * 4).toBeCloseTo(3.079, 3);
    const out = Number(answers(task, 1)[0]);
    expect(Math.abs(out - perKg * milk)).toBeLessThanOrEqual(0.05 + 0.0051 * milk);
    expectNear(answers(task, 2)[0], (100 * out) / Number(answers(task, 0)[0]), 0);
    expect(Number(answers(task, 2)[0])).toBeLessThan(60);
  },
  'carbon-path'(task) {
    const { arrows, boxes } = figure(task, 'flow');
    const name = (place: number) => last(boxes[place]?.label).replace('box-', '');
    const ways = new Map(arrows.map(({ from, to, number }) => [number, `${name(from)}>${name(to)}`]));
    const given = answers(task, 0).map((number) => ways.get(Number(number)));
    expect(given[0]).toBe('air>grass');
    expect(given.slice(1).sort()).toEqual(['doe>air', 'soil>air']);
    const { prompt } = task.asks[1] ?? {};
    expect(Number(answers(task, 1)[0]) + slot(prompt, 'milk') + slot(prompt, 'manure')).toBe(slot(prompt, 'eaten'));
    expect(Number(answers(task, 1)[0])).toBeGreaterThan(0);
  },
  'kid-odds'(task) {
    const [doe, buck] = ['doe', 'buck'].map((name) => slotText(task.lead[1], name)) as [string, string];
    const hides = slotText(task.lead[0], 'hides');
    const one = [...doe].flatMap((a) => [...buck].map((b) => a === hides && b === hides));
    expect(answers(task, 0)[0]).toBe(one.filter(Boolean).length / 4);
    // Every way in which the births can come, counted.
    const kids = slot(task.asks[1]?.prompt, 'kids');
    let births: boolean[][] = [[]];
    for (let kid = 0; kid < kids; kid += 1) births = births.flatMap((before) => one.map((has) => [...before, has]));
    expect(answers(task, 1)[0]).toBeCloseTo(births.filter((all) => all.every(Boolean)).length / births.length, 12);
    expect(answers(task, 2)[0]).toBeCloseTo(births.filter((all) => all.some(Boolean)).length / births.length, 12);
  },
  'let-down-evidence'(task) {
    const [rose, of] = [slot(task.lead[3], 'rose'), slot(task.lead[3], 'of')];
    // Sources: McNeilly 1972 (25 of 40 hand milkings), Salama and others 2004 (57 to 75 percent).
    expect([rose, of, slot(task.lead[2], 'low'), slot(task.lead[2], 'high')]).toEqual([25, 40, 57, 75]);
    const milk = slot(task.asks[0]?.prompt, 'milk');
    const [low, high] = answers(task, 0);
    expectNear(low, milk - milk * 0.43, 2);
    expectNear(high, milk - milk / 4, 2);
  },
  'watch-by-interval'(task) {
    const [lying, looks] = [slot(task.asks[1]?.prompt, 'lying'), slot(task.asks[1]?.prompt, 'looks')];
    const share = Number(answers(task, 1)[0]);
    expectNear(share, lying / (looks / 100), 1);
    const [margin, low, high] = answers(task, 2).map(Number) as [number, number, number];
    expectNear(margin, 100 / Math.sqrt(looks), 1);
    expect(high - share).toBeCloseTo(margin, 7);
    expect(share - low).toBeCloseTo(margin, 7);
    expect(low > 0 && high < 100).toBe(true);
  },
  'weighing-error'(task) {
    const [full, empty, milk] = ['full', 'empty', 'milk'].map((name) => slot(task.lead[0], name)) as [number, number, number];
    expect(full - empty).toBeCloseTo(milk, 9);
    const step = slot(task.lead[1], 'step');
    expectAnswers(task, 0, [step / 2]);
    // The largest and the least milk that round to what was written down.
    const [most, least] = [full + step / 2 - (empty - step / 2), full - step / 2 - (empty + step / 2)];
    const [both, percent] = answers(task, 1);
    expect(both).toBeCloseTo((most - least) / 2, 9);
    expectNear(percent, (100 * Number(both)) / milk, 1);
    expectNear(answers(task, 2)[0], (100 * Number(both)) / (3 * milk), 1);
    expect(Number(percent)).toBeGreaterThan(0);
  },
  'two-way-table'(task) {
    const [am, pm] = [slotList(task.lead[1], 'values'), slotList(task.lead[2], 'values')];
    const median = slot(task.lead[0], 'median');
    expect(median).toBeCloseTo(middle([...am, ...pm]), 7);
    const count = (values: readonly number[], keep: (one: number) => boolean) => values.filter(keep).length;
    const above = (one: number) => one > median + 1e-9;
    const cells = [am, pm, [...am, ...pm]].flatMap((some) => [count(some, above), count(some, (one) => !above(one)), some.length]);
    expectAnswers(task, 0, cells);
    const [a, p] = [count(am, above), count(pm, above)];
    const [ofAm, ofPm] = answers(task, 1).map(Number) as [number, number];
    expectNear(ofAm, a / (am.length / 100), 0);
    expectNear(ofPm, p / (pm.length / 100), 0);
    expectNear(answers(task, 2)[0], a / ((a + p) / 100), 0);
    expectAnswers(task, 3, [Math.abs(ofAm - ofPm) >= 25 ? 'go' : 'not']);
  },
  'outlier-fence'(task) {
    const values = slotList(task.lead[1], 'values');
    expect([...values].sort((a, b) => a - b)).toEqual(values);
    const own = quartiles(values);
    expectAnswers(task, 0, [own.q1, own.q3, own.q3 - own.q1]);
    const reach = 1.5 * (own.q3 - own.q1);
    const [low, high] = answers(task, 1).map(Number) as [number, number];
    expectNear(low, own.q1 - reach, placesOf(task, 1));
    expectNear(high, own.q3 + reach, placesOf(task, 1));
    const outside = values.filter((one) => one < low || one > high);
    expect(last(task.asks[1]?.answer)).toBe(outside.length === 0 ? 'answer-inside' : 'answer-outside');
    if (outside.length > 0) expect(slotList(task.asks[1]?.answer, 'outside')).toEqual(outside);
    const slipped = [...values.slice(0, -1), (values.at(-1) ?? 0) * 10];
    expect(slot(task.asks[2]?.prompt, 'slip')).toBeCloseTo(slipped.at(-1) ?? 0, 7);
    const [before, after, median] = answers(task, 2).map(Number) as [number, number, number];
    expectNear(before, sum(values) / values.length, placesOf(task, 2));
    expectNear(after, sum(slipped) / values.length, placesOf(task, 2));
    expect(median).toBeCloseTo(middle(values), 7);
  },
  'sample-means'(task) {
    const grid = gridOf(task);
    const samples = ['a', 'b', 'c'].map((name) => lotsIn(task.lead[1], name));
    const places = placesOf(task, 0);
    const means = answers(task, 0).map(Number);
    samples.forEach((lots, index) => {
      expect(new Set(lots).size).toBe(4);
      expectNear(means[index], sum(lots.map((lot) => grid.get(lot) ?? Number.NaN)) / 4, places);
    });
    const all = [...grid.values()];
    expect(slot(task.asks[1]?.prompt, 'sum')).toBeCloseTo(sum(all), 7);
    expectNear(answers(task, 1)[0], sum(all) / all.length, places);
    expect(answers(task, 1)[1]).toBeCloseTo(Math.max(...means) - Math.min(...means), 9);
  },
}; // prettier-ignore
