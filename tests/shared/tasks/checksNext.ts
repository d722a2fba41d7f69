// A second way to the answers of 3-5 that came after the first: jugs, clocks, circles, tables, parts.
import { expect } from 'vitest';
import type { Task } from '../../../shared/tasks/task.ts';
import type { Message, Slot } from '../../../shared/sheet/message.ts';
import { lastWord, offered, turned } from './checksFirst.ts';
import { answers, expectAnswers, figure, num, slot, slotText, sum } from './slots.ts';

type Check = (task: Task) => void;

const timeIn = (message: Message | undefined, name: string): string => {
  const found = message?.slots[name];
  if (found?.is !== 'time') throw new Error(`no time in {${name}}`);
  return found.time;
};
/** The greatest that divides both, by trying. */
function common(a: number, b: number): number {
  let best = 1;
  for (let one = 1; one <= Math.min(a, b); one += 1) if (a % one === 0 && b % one === 0) best = one;
  return best;
}
/** The nearest multiple, halves up, by walking both ways. */
function nearest(n: number, place: number): number {
  let [down, up] = [n, n];
  while (down % place !== 0) down -= 1;
  while (up % place !== 0) up += 1;
  return n - down < up - n ? down : up;
}
const fractionIn = (message: Message | undefined, name: string) =>
  message?.slots[name] as Slot & { num: number; den: number };
/** A wheel's numbers by following the steps in their order. */
function wheelOrder(task: Task, order: readonly string[]): void {
  const { given, cards } = figure(task, 'wheel');
  expect(lastWord(given.key)).toBe(order[0]);
  const names = cards.map(({ words }) => lastWord(words.key));
  expectAnswers(task, 0, order.slice(1).map((step) => names.indexOf(step) + 1));
  expect(names).not.toEqual(order.slice(1));
  cards.forEach(({ words, place }) => expect(order[place]).toBe(lastWord(words.key)));
} // prettier-ignore

/** Checks by kind, 3-5. */
export const CHECKS_NEXT: Readonly<Record<string, Check>> = {
  'read-jug'(task) {
    const { jugs, top } = figure(task, 'jugs');
    const [a = 0, b = 0] = jugs.map(({ litres }) => num(litres));
    expectAnswers(task, 0, [a, b]);
    expectAnswers(task, 1, [task.asks[1]?.prompt.key.endsWith('together') ? a + b : Math.max(a, b) - Math.min(a, b)]);
    expect(answers(task, 1)[0]).toBeGreaterThan(0);
    for (const one of [a, b]) expect(Number.isInteger(one) && one >= 1 && one <= top).toBe(true);
  },
  'round-amounts'(task) {
    const told = task.lead[0];
    const found = told?.slots['amount'] ? slot(told, 'amount') : { year: 365, lactation: 305, quart: 946, pint: 473, gallon: 3785, hours: 8760 }[lastWord(told?.key ?? '')] ?? Number.NaN;
    for (const [ask, { prompt }] of task.asks.entries()) {
      const place = Number(lastWord(prompt.key).replace('ask-', ''));
      expectAnswers(task, ask, [nearest(found, place)]);
      expect(answers(task, ask)[0]).not.toBe(found);
    }
    expect(answers(task, 0)).not.toEqual(answers(task, 1));
    expect(task.standards).toEqual([found > 1000 ? '4.NBT.A.3' : '3.NBT.A.1']);
  },
  'minutes-milking'(task) {
    const [start, end] = figure(task, 'dials').dials;
    const length = slot(task.lead[1], 'minutes');
    expectAnswers(task, 0, turned(start?.time ?? '', length));
    expect(turned(end?.time ?? '', 0)).toEqual(turned(start?.time ?? '', length));
    const prompt = task.asks[1]?.prompt;
    const [took] = answers(task, 1).map(Number) as [number];
    expect(turned(timeIn(prompt, 'start'), took)).toEqual(turned(timeIn(prompt, 'end'), 0));
    expect(took > 0 && took < 60 && length > 0 && length <= 60).toBe(true);
  },
  'check-claim'(task) {
    const { rows } = figure(task, 'table');
    const of = (name: string) => {
      const row = rows.find(([cell]) => cell && 'key' in cell && slotText(cell, 'name') === name);
      return num(row?.[1] as { num: number; den: number });
    };
    const claim = task.lead[1];
    const [best, a, b] = ['name', 'a', 'b'].map((name) => of(slotText(claim, name))) as [number, number, number];
    expectAnswers(task, 0, [a + b]);
    const holds = claim?.key.endsWith('more') ? best > a + b : best < a + b;
    expectAnswers(task, 1, [holds ? 'true' : 'not-true']);
    expect(best).toBeGreaterThanOrEqual(Math.max(a, b));
    expect(new Set(['name', 'a', 'b'].map((name) => slotText(claim, name))).size).toBe(3);
  },
  'life-circle'(task) {
    wheelOrder(task, ['birth', 'drinks', 'eats', 'grows', 'kids']);
    const part = lastWord(task.asks[1]?.prompt.key ?? '').replace('ask-', '');
    const right = { birth: 'sprouts', growth: 'leaves', reproduction: 'seeds' }[part] ?? '';
    expectAnswers(task, 1, [right]);
    expect(offered(task, 1)).toContain(`bean-${right}`);
  },
  'matter-loop'(task) {
    wheelOrder(task, ['plants', 'eat', 'manure', 'rot', 'soil']);
  },
  'traits-table'(task) {
    const { columns, rows } = figure(task, 'table');
    const cells = rows.map((row) => row.slice(1).map((cell) => ('key' in cell ? lastWord(cell.key) : '')));
    const traits = columns.slice(1).map(({ key }) => lastWord(key).replace('trait-', ''));
    const column = (place: number) => cells.map((row) => row[place] ?? '');
    const alike = traits.filter((_, place) => new Set(column(place)).size === 1);
    expectAnswers(task, 0, alike);
    expect(alike.length).toBe(1);
    const kids = traits.filter((trait, place) => !alike.includes(trait) && column(place)[2] === column(place)[3]);
    expectAnswers(task, 1, kids);
    const place = traits.indexOf(kids[0] ?? '');
    expectAnswers(task, 2, [column(place)[0] === column(place)[2] ? 'doe' : 'buck']);
    // Every trait of a kid is one of its parents'; no kid is just like a parent, nor like the other kid.
    for (const kid of [2, 3])
      traits.forEach((_, at) => expect(column(at).slice(0, 2)).toContain(column(at)[kid]));
    expect(new Set(cells.map((row) => row.join())).size).toBe(4);
  },
  'read-evidence'(task) {
    const sentences = task.lead.slice(1);
    sentences.forEach((line, index) => expect(slot(line, 'place')).toBe(index + 1));
    for (const ask of [0, 1]) {
      const place = Number(answers(task, ask)[0]);
      const shown = task.asks[ask]?.steps[0]?.slots['sentence'];
      expect(JSON.stringify(sentences[place - 1]?.slots['sentence'])).toBe(JSON.stringify(shown));
    }
    expect(answers(task, 0)).not.toEqual(answers(task, 1));
  },
  'farm-notes'(task) {
    const { heads, lines } = figure(task, 'notes');
    expect(heads.length).toBe(3);
    expect(lines).toBeGreaterThan(2);
    expect(task.asks.flatMap(({ values }) => values)).toEqual([]);
  },
  'goat-parts'(task) {
    const { parts, cards } = figure(task, 'doe-parts');
    const order = cards.map(({ words }) => parts.findIndex((part) => words.key.endsWith(`does-${part}`)) + 1);
    expectAnswers(task, 0, order);
    expect(cards.map(({ number }) => number)).toEqual(order);
    expect([...order].sort()).toEqual(parts.map((_, index) => index + 1));
    expect(order).not.toEqual([...order].sort());
  },
  'grain-cups'(task) {
    const { count, of } = figure(task, 'part-cups');
    const share = fractionIn(task.lead[0], 'amount');
    expect([share.num / share.den, slot(task.lead[0], 'n')]).toEqual([num(of), count]);
    // Poured cup by cup.
    const all = sum(Array.from({ length: count }, () => num(of)));
    expectAnswers(task, 0, [all]);
    const [below = 0, above = 0] = answers(task, 1).map(Number);
    expect(below < all && all < above && above - below === 1 && below > 0).toBe(true);
  },
  'times-as-many'(task) {
    const [large, small] = [slot(task.lead[0], 'large'), slot(task.lead[0], 'small')];
    let [times, all] = [0, 0];
    while (all < large) [times, all] = [times + 1, all + small];
    expect(all).toBe(large);
    expectAnswers(task, 0, [times]);
    expectAnswers(task, 1, [large - small]);
    expect(times).toBeGreaterThan(1);
  },
  'both-ways'(task) {
    const us = task.lead[0]?.key.endsWith('-us');
    const small = slot(task.lead[1], 'amount');
    const can = slot(task.asks[1]?.prompt, 'amount');
    expectAnswers(task, 0, [us ? small / 4 : small / 1000]);
    expectAnswers(task, 1, [us ? can * 16 : can * 1000]);
    expect(Number(answers(task, 0)[0]) % 1).not.toBe(0);
  },
  'recipe-parts'(task) {
    const [milk, oats] = [fractionIn(task.lead[0], 'milk'), fractionIn(task.lead[0], 'oats')];
    const batch = fractionIn(task.asks[1]?.prompt, 'batch');
    const reduced = (top: number, bottom: number) => ({ num: top / common(top, bottom), den: bottom / common(top, bottom) });
    expect(task.asks[0]?.values).toEqual([reduced(milk.num * oats.den + oats.num * milk.den, milk.den * oats.den)]);
    expect(task.asks[1]?.values).toEqual([reduced(milk.num * batch.num, milk.den * batch.den)]);
    expect(milk.den).not.toBe(oats.den);
  },
  'decimal-milkings'(task) {
    const [am, pm] = [slot(task.lead[0], 'am') * 100, slot(task.lead[1], 'pm') * 100].map(Math.round) as [number, number];
    expectAnswers(task, 0, [(am + pm) / 100]);
    expectAnswers(task, 1, [Math.abs(am - pm) / 100]);
    for (const { values } of task.asks) expect(values[0]).toMatchObject({ places: 2 });
    expect(am).not.toBe(pm);
  },
  'day-grid'(task) {
    const list = task.lead[1]?.slots['values'];
    if (list?.is !== 'list') throw new Error('no pairs');
    const pairs = list.of.map((one) => (one.is === 'message' ? [slot(one.message, 'x'), slot(one.message, 'y')] : [])) as [number, number][];
    // A day that is missing is explained.
    expect(task.lead.some(({ key }) => key.endsWith('gap'))).toBe(pairs.length < 7);
    expectAnswers(task, 0, pairs.flat());
    const most = Math.max(...pairs.map(([, y]) => y));
    expectAnswers(task, 1, pairs.filter(([, y]) => y === most).map(([x]) => x));
    expectAnswers(task, 2, [most - Math.min(...pairs.map(([, y]) => y))]);
    const grid = figure(task, 'grid');
    expect(grid.points).toEqual([]);
    for (const [x, y] of pairs) expect(x >= 1 && x <= grid.xTop && y >= 0 && y <= grid.yTop).toBe(true);
    const done = task.asks[0]?.picture;
    expect(done?.is === 'grid' ? done.points.map((point) => [point.x, num(point.y)]) : null).toEqual(pairs);
  },
}; // prettier-ignore
