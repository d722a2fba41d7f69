// A second way to the answers of K-2 that need no more than what is drawn or told.
import { expect } from 'vitest';
import { doeLook } from '../../../shared/drawing/doeLook.ts';
import type { Task } from '../../../shared/tasks/task.ts';
import { answers, cupCounts, expectAnswers, figure, slot, slotText } from './slots.ts';

type Check = (task: Task) => void;

/** The last word of a message's key. */
export const lastWord = (key: string): string => key.split('.').at(-1) ?? '';
/** What a ring offers, by the last words of its messages. */
export const offered = (task: Task, ask: number): string[] => {
  const work = task.asks[ask]?.work;
  if (work?.is !== 'ring') throw new Error(`${task.kind} rings nothing`);
  return work.of.map((one) =>
    one.is === 'message' ? lastWord(one.message.key) : one.is === 'text' ? one.text : '',
  );
};
/** Hour and minute of a clock some minutes later, by turning it on minute by minute. */
export function turned(time: string, by: number): [number, number] {
  let [hour, minute] = time.split(':').map(Number) as [number, number];
  for (let passed = 0; passed < by; passed += 1) {
    minute += 1;
    if (minute === 60) [hour, minute] = [(hour + 1) % 24, 0];
  }
  return [hour % 12 === 0 ? 12 : hour % 12, minute];
}
const slotNumber = (task: Task, place: number, name: string) => slot(task.lead[place], name);

/** Checks by kind, K-2: counting, clocks, shapes. */
export const CHECKS_FIRST: Readonly<Record<string, Check>> = {
  'clock-faces'(task) {
    const [now, later] = figure(task, 'dials').dials;
    if (!now || !later) throw new Error('two clocks');
    expectAnswers(task, 0, turned(now.time, 0));
    const { key, slots } = task.asks[1]?.prompt ?? { key: '', slots: {} };
    const by = key.endsWith('hour') ? 60 : key.endsWith('half') ? 30 : slots['n']?.is === 'number' ? slots['n'].num : Number.NaN;
    expectAnswers(task, 1, turned(now.time, by));
    expect([now.hands, later.hands]).toEqual([true, false]);
    const halves = [now.time, later.time].every((time) => /:(00|30)$/.test(time));
    expect(task.standards).toEqual([halves ? '1.MD.B.3' : '2.MD.C.7']);
    for (const { time } of [now, later]) expect(Number(time.split(':')[1]) % 5).toBe(0);
  },
  'block-graph'(task) {
    const { rows, most } = figure(task, 'block-graph');
    const of = (name: string) => rows.find(({ label }) => label === name)?.count ?? Number.NaN;
    expectAnswers(task, 0, rows.map(({ count }) => count));
    const prompt = task.asks[1]?.prompt;
    const high = of(slotText(prompt, 'high'));
    let [low, fewer] = [of(slotText(prompt, 'low')), 0];
    while (low < high) [low, fewer] = [low + 1, fewer + 1];
    expectAnswers(task, 1, [fewer]);
    expect(fewer).toBeGreaterThan(0);
    if (task.asks[2]) expectAnswers(task, 2, [rows.flatMap(({ count }) => Array.from({ length: count })).length]);
    expect(rows.length).toBeLessThanOrEqual(task.standards[0] === '1.MD.C.4' ? 3 : 4);
    for (const { count } of rows) expect(count >= 1 && count <= most).toBe(true);
    expect(new Set(rows.map(({ label }) => label)).size).toBe(rows.length);
  },
  'milking-steps'(task) {
    // The text tells the order; each picture takes the place of its sentence.
    const told = task.lead.map(({ key }) => lastWord(key).split('-').at(-1));
    const scenes = figure(task, 'scenes').scenes.map(({ scene }) => told.indexOf(scene) + 1);
    expectAnswers(task, 0, scenes);
    expect([...scenes].sort()).toEqual(scenes.map((_, index) => index + 1));
    expect(scenes).not.toEqual([...scenes].sort());
  },
  'goat-needs'(task) {
    const { picks } = figure(task, 'picks');
    // No living thing needs a toy, a hat or a book; plants eat no meals.
    const plant = task.lead[0]?.key.endsWith('plant');
    const idle = ['ball', 'hat', 'book', ...(plant ? ['meal', 'hay'] : [])];
    const right = picks.filter(({ thing }) => !idle.includes(thing)).map(({ thing }) => thing);
    expect([...answers(task, 0)].sort()).toEqual([...right].sort());
    expect(picks.filter((one) => one.right).map(({ thing }) => thing)).toEqual(right);
    expect(right.length).toBeLessThan(picks.length);
  },
  'like-parents'(task) {
    const looks = figure(task, 'faces').faces.map(({ face }) => doeLook(face.breed, face.id));
    const [doe, ...kids] = looks;
    if (!doe || kids.length !== 2) throw new Error('a mother and two kids');
    const like = kids.map(({ coat }) => (['pattern', 'base', 'marks', 'ears'] as const).every((part) => doe.coat[part] === coat[part]));
    expect([...like].sort()).toEqual([false, true]);
    expectAnswers(task, 0, [['kid-a', 'kid-b'][like.indexOf(true)] ?? '']);
    expect(offered(task, 0)).toEqual(['kid-a', 'kid-b']);
    expectAnswers(task, 1, [new Set(looks.map(({ ears }) => ears)).size === 1 ? 'same' : 'not-same']);
    // What differs can be told on a black-and-white copy.
    expect(kids[like.indexOf(false)]?.coat.base === 'milk').not.toBe(doe.coat.base === 'milk');
    for (const { horns, beard } of kids) expect([horns, beard]).toEqual([false, false]);
  },
  'farm-tally'(task) {
    const { rows } = figure(task, 'tally');
    expect(rows.length).toBe(3);
    expect(new Set(rows.map(({ key }) => key)).size).toBe(3);
    expect(task.asks.flatMap(({ values }) => values)).toEqual([]);
  },
  'watch-and-draw'(task) {
    const lines = task.asks[1]?.work;
    expect(task.asks[0]?.work.is).toBe('drawing');
    expect(lines).toMatchObject({ is: 'lines', lines: { 'W.K.2': 1, 'W.1.2': 2, 'W.2.8': 3 }[task.standards[0] ?? ''] });
  },
  'read-and-find'(task) {
    const proof = task.asks[1]?.answer.slots['sentence'];
    if (proof?.is !== 'message') throw new Error('no sentence');
    // The sentence is one of the text.
    expect(task.lead.map((one) => JSON.stringify(one))).toContain(JSON.stringify(proof.message));
    if (task.asks[0]?.work.is === 'ring') expect(offered(task, 0).sort()).toEqual(['a', 'b', 'c'].map((one) => lastWord(`x.${lastWord(task.asks[0]?.prompt.key ?? '').replace('ask', one)}`)));
    else expectAnswers(task, 0, [slot(proof.message, 'n')]);
  },
  'true-or-not'(task) {
    const [a = 0, b = 0] = cupCounts(figure(task, 'cups'));
    const { groups } = figure(task, 'cups');
    const of = (name: string) => groups.find(({ label }) => label === name)?.count ?? Number.NaN;
    const claim = task.asks[0]?.prompt;
    const by = of(slotText(claim, 'a')) - of(slotText(claim, 'b'));
    const holds = claim?.key.endsWith('-by') ? by === slot(claim, 'n') : by > 0;
    expectAnswers(task, 0, [holds ? 'true' : 'not-true']);
    expectAnswers(task, 1, [a, b]);
    expect(a).not.toBe(b);
    if (task.standards[0] === 'K.CC.C.6') expect(Math.max(a, b)).toBeLessThanOrEqual(10);
  },
  'equal-parts'(task) {
    const { parts } = figure(task, 'parts');
    expectAnswers(task, 0, [slotNumber(task, 0, 'n')]);
    expect(slot(task.asks[0]?.prompt, 'n')).toBe(parts);
    expectAnswers(task, 1, [{ 2: 'half', 3: 'third', 4: 'fourth' }[parts]]);
    expect([...offered(task, 1)].sort()).toEqual(['fourth', 'half', 'third']);
  },
  'goat-ears'(task) {
    const { faces } = figure(task, 'faces');
    let ears = 0;
    for (const { face } of faces) {
      expect(doeLook(face.breed, face.id).ears).not.toBe('tiny');
      ears += 2;
    }
    expectAnswers(task, 0, [ears]);
    expect(ears).toBeLessThanOrEqual(20);
  },
  'pen-story'(task) {
    const kids = task.lead.slice(1).map((line) => [lastWord(line.key), slot(line, 'kids')] as const);
    // A pen of pegs: one peg goes in or out for each kid.
    let pen: number[] = [];
    let came = 0;
    for (const [what, n] of kids) {
      if (what === 'there-are') pen = Array.from({ length: n }, (_, peg) => peg);
      else if (what === 'come') pen = [...pen, ...Array.from({ length: n }, (_, peg) => peg)];
      else if (what === 'now') while (pen.length < n) [came] = [came + 1, pen.push(0)];
      else pen = pen.slice(n);
    }
    expectAnswers(task, 0, [came > 0 ? came : pen.length]);
    const most = { 'K.OA.A.2': 10, '1.OA.A.1': 20, '2.OA.A.1': 100 }[task.standards[0] ?? ''] ?? 0;
    for (const [, n] of kids) expect(n > 1 && n <= most).toBe(true);
    expect(pen.length).toBeGreaterThan(1);
  },
}; // prettier-ignore
