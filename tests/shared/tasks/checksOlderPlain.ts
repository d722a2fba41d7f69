// A second way to the answers of tasks that need no milk in the book, 6-8.
import { expect } from 'vitest';
import type { Task } from '../../../shared/tasks/task.ts';
import { answers, expectAnswers, figure, rowValues, slot, slotText, sum, written } from './slots.ts';

type Check = (task: Task) => void;

// What carries matter and what carries energy, as a table of its own: school knowledge, from memory.
const CARRIES: Readonly<Record<string, string>> = {
  '0>1': 'energy', '3>1': 'matter', '1>2': 'both', '2>5': 'both', '2>4': 'both', '4>1': 'matter', '4>3': 'matter',
}; // prettier-ignore

/** Minutes of `HH:MM`. */
const clock = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

const timeSlot = (task: Task, name: string): string => {
  const found = task.asks[1]?.prompt.slots[name];
  if (found?.is !== 'time') throw new Error(`no time in {${name}}`);
  return found.time;
};

// Source: USDA SR28, food 01106 and 01077, per 100 g, typed off the printed table.
const USDA: Readonly<Record<string, readonly [goat: number, cow: number]>> = {
  protein: [3.56, 3.15], fat: [4.14, 3.25], carbohydrate: [4.45, 4.8], calcium: [134, 113], potassium: [204, 132], sodium: [50, 43],
}; // prettier-ignore

/** Checks by kind. */
export const CHECKS_68_PLAIN: Readonly<Record<string, Check>> = {
  'grass-to-milk'(task) {
    const { arrows } = figure(task, 'flow');
    const numbered = new Map(arrows.map(({ from, to, number }) => [number, `${from}>${to}`]));
    expect([...numbered.keys()].sort()).toEqual([1, 2, 3, 4, 5, 6, 7]);
    for (const ask of [0, 1]) expectAnswers(task, ask, [CARRIES[numbered.get(slot(task.asks[ask]?.prompt, 'arrow')) ?? ''] ?? '']);
    // The circle: each arrow begins where the one before it ended, from the plants (box 1) back to the plants.
    const way = answers(task, 2).map((number) => (numbered.get(Number(number)) ?? '').split('>').map(Number));
    expect([way[0]?.[0], way.at(-1)?.[1]]).toEqual([1, 1]);
    way.slice(1).forEach(([from], index) => expect(from).toBe(way[index]?.[1]));
    expect(answers(task, 0)).not.toEqual(answers(task, 1));
  },
  'model-square'(task) {
    const [doe, buck] = ['doe', 'buck'].map((name) => slotText(task.lead[1], name));
    const hides = slotText(task.lead[0], 'hides');
    // Every pair of letters drawn by hand: four ways, the hidden trait where no letter is a capital.
    const ways = [...(buck ?? '')].flatMap((b) => [...(doe ?? '')].map((a) => [a, b].sort().join('')));
    expect(figure(task, 'square').cells.flat()).toEqual(ways);
    expectAnswers(task, 0, ways);
    expectAnswers(task, 1, [(100 * ways.filter((pair) => pair === hides + hides).length) / 4]);
    expect(Number(answers(task, 1)[0])).toBeGreaterThan(0);
  },
  'clean-to-cold'(task) {
    const steps = figure(task, 'steps').steps;
    const order = [...steps].sort((a, b) => a.place - b.place).map(({ words }) => words.key.split('.').at(-1));
    expect(order).toEqual(['hands', 'teats', 'pail', 'weigh', 'strain', 'chill']);
    expectAnswers(task, 0, steps.map(({ place }) => place));
    const [warm, cold] = answers(task, 1).map((time) => clock(String(time)));
    expect(warm).toBe(clock(timeSlot(task, 'start')) + 240);
    expect(cold).toBe(clock(timeSlot(task, 'end')) + 120);
    expect(task.asks[1]?.steps[0]?.key.endsWith(Number(cold) < Number(warm) ? 'second' : 'first')).toBe(true);
  },
  'weigh-and-subtract'(task) {
    const [full = 0, empty = 0] = rowValues(figure(task, 'table'), 0);
    const [milk, volume] = answers(task, 0).map(Number);
    expect(milk).toBeCloseTo(full - empty, 9);
    expect(Math.abs(Number(volume) * slot(task.lead[1], 'density') - (full - empty))).toBeLessThanOrEqual(0.0052);
  },
  'chew-count'(task) {
    const counts = rowValues(figure(task, 'table'), 0);
    expect(Number(answers(task, 0)[0])).toBeCloseTo(written((60 / slot(task.lead[0], 'seconds')) * (sum(counts) / counts.length), 1), 9);
    expect(new Set(counts).size).toBeGreaterThan(1);
  },
  'read-and-prove'(task) {
    // The sentence that proves it, read out of the English text once more.
    const proof: Readonly<Record<string, number>> = {
      'stomach-proved1': 2, 'stomach-proved2': 3, 'stomach-proved3': 4, 'year-proved1': 1, 'year-proved2': 3, 'year-proved3': 4,
      'choosy-proved1': 1, 'choosy-proved2': 3, 'choosy-proved3': 5,
    };
    const statement = task.asks[0]?.prompt.slots['statement'];
    const key = statement?.is === 'message' ? statement.message.key.split('.').at(-1) : '';
    expectAnswers(task, 0, [proof[key ?? ''] ?? Number.NaN]);
    expect(task.lead.length).toBe(5);
  },
  'goat-or-cow'(task) {
    const what = task.lead[1]?.slots['what'];
    const name = what?.is === 'message' ? (what.message.key.split('of-').at(-1) ?? '') : '';
    const [goat, cow] = USDA[name] ?? [Number.NaN, Number.NaN];
    const row = figure(task, 'table').rows.findIndex(([head]) => head && 'key' in head && head.key.endsWith(`.${name}`));
    expect(rowValues(figure(task, 'table'), row)).toEqual([goat, cow]);
    expect(answers(task, 0)[0]).toBeCloseTo(written(100 * Math.abs(goat / cow - 1), 1), 9);
    const least = task.lead[1]?.key.includes('third') ? 4 / 3 : 1.1;
    const holds = task.lead[1]?.key.endsWith('less') ? goat <= 0.9 * cow : goat >= least * cow;
    expectAnswers(task, 1, [holds ? 'holds' : 'fails']);
  },
  'statistical-question'(task) {
    // Those that vary speak of several does, goats, kids or births.
    const varies = ['milk-a-day', 'milking-time', 'ages', 'weights', 'kids-a-birth'];
    const options = task.lead.map((line) => {
      const question = line.slots['question'];
      return question?.is === 'message' && varies.includes(question.message.key.split('.').at(-1) ?? '');
    });
    expect(options.filter(Boolean).length).toBe(1);
    expectAnswers(task, 0, ['ABCD'.charAt(options.indexOf(true))]);
    expect(slotText(task.asks[1]?.prompt, 'letter')).not.toBe(answers(task, 0)[0]);
  },
}; // prettier-ignore
