// A class's data sheet: every answer found a second, slow way from the numbers as they were typed, and the grade's
// limits held (shared/tasks/limits.ts names their source: the Common Core standards as education digests them).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Shown } from '../../../../shared/quantity/grade.ts';
import { GRADE_LIMITS, STANDARD_LIMITS } from '../../../../shared/tasks/limits.ts';
import { firstGrade, STANDARDS, type Grade } from '../../../../shared/tasks/standards.ts';
import type { Ask } from '../../../../shared/tasks/task.ts';
import type { SheetTask } from '../../../../shared/sheet/sheet.ts';
import { guessGroups } from '../../../../shared/trip/visits/after/guessGroups.ts';
import { measuredSheet } from '../../../../shared/trip/visits/after/measuredSheet.ts';
import { measuresFor, MEASURED_BY } from '../../../../shared/trip/visits/after/measures.ts';
import type { Message } from '../../../../shared/sheet/message.ts';
import { tellText } from '../../../../shared/sheet/tell.ts';
import { wordsOf } from '../../../../src/site/words.ts';
import { metOn } from '../../tasks/reads.ts';

const DOES = ['Juniper', 'Hester', 'Tansy', 'Maribel', 'Wren'].map((name) => ({ id: name.toLowerCase(), name, breed: 'Nubian' })); // prettier-ignore
const grades = fc.integer({ min: 0, max: 12 }) as fc.Arbitrary<Grade>;
const KEY = 'visits.after.task.ask.';
const asksOf = (tasks: readonly SheetTask[]) => tasks.flatMap((task) => task.asks);
const askOf = (tasks: readonly SheetTask[], name: string): Ask | undefined => asksOf(tasks).find(({ prompt }) => prompt.key === `${KEY}${name}`); // prettier-ignore
const num = (shown: Shown | string | undefined): number => typeof shown === 'object' ? shown.num / shown.den : Number.NaN; // prettier-ignore
const only = (ask: Ask | undefined): number | undefined => ask && num(ask.values[0]);

/** The middle, found by crossing out the least and the greatest, again and again. */
function middleOf(values: readonly number[]): number {
  const left = [...values];
  while (left.length > 2) {
    left.splice(left.indexOf(Math.min(...left)), 1);
    left.splice(left.indexOf(Math.max(...left)), 1);
  }
  return left.reduce((a, b) => a + b, 0) / left.length;
}

function held(tasks: readonly SheetTask[], grade: Grade): void {
  for (const task of tasks) {
    for (const code of task.standards) {
      expect(STANDARDS, code).toHaveProperty([code]);
      expect(firstGrade(code), `${code} in grade ${grade}`).toBeLessThanOrEqual(grade);
    }
    for (const limits of [GRADE_LIMITS[grade], ...task.standards.map((code) => STANDARD_LIMITS[code] ?? {})])
      for (const { shown, unit } of metOn(task)) {
        const value = shown.num / shown.den;
        expect(value).toBeGreaterThanOrEqual(0);
        if (limits.most !== undefined) expect(value, task.kind).toBeLessThanOrEqual(limits.most);
        if (limits.denominators && shown.places === undefined) expect(limits.denominators, task.kind).toContain(shown.den); // prettier-ignore
        if (limits.places !== undefined)
          expect(shown.places ?? 0, task.kind).toBeLessThanOrEqual(limits.places);
        if (unit) expect(limits.noUnits ?? []).not.toContain(unit);
      }
    const { picture } = task;
    const { categories = Infinity } = GRADE_LIMITS[grade];
    if (picture?.is === 'block-graph') expect(picture.rows.length).toBeLessThanOrEqual(categories);
    if (picture?.is === 'bars' && grade === 3) expect([2, 5, 10]).toContain(picture.scale);
  }
}

describe('a sheet of guesses for those who draw no line plots', () => {
  const parts = fc.array(fc.integer({ min: 0, max: 24 }), { minLength: 1, maxLength: 30 });
  it('sorts them by the milk, or by the commonest, within the limits of kindergarten and grade 1', () => {
    let made = 0;
    fc.assert(
      fc.property(fc.constantFrom<Grade>(0, 1), parts, fc.option(fc.integer({ min: 0, max: 24 })), fc.constantFrom('cup' as const, 'half-L' as const), (grade, guesses, truth, part) => {
        const tasks = guessGroups({ guesses, truth, part }, grade);
        if (tasks.length === 0) return;
        made += 1;
        held(tasks, grade);
        expect(tasks.map(({ picture }) => picture?.is)).toEqual(['table']);
        const told = JSON.stringify(tasks.map(({ lead }) => lead));
        expect(told.includes('after.task.gave')).toBe(truth !== null && part === 'cup');
        if (truth === null) return;
        const ways = [guesses.filter((one) => one < truth), guesses.filter((one) => one === truth), guesses.filter((one) => one > truth)]; // prettier-ignore
        const rows = tasks[0]?.picture?.is === 'table' ? tasks[0].picture.rows : [];
        expect(rows.map(([, n]) => num(n as Shown))).toEqual(ways.map(({ length }) => length).filter((n) => n > 0));
      }),
      { numRuns: 500 },
    ); // prettier-ignore
    expect(made).toBeGreaterThan(200);
  });
});

describe('a sheet of one thing measured by many', () => {
  const quarters = fc.integer({ min: 4, max: 60 }).map((n) => n / 4);
  it('has the answers that a slow count gives', () => {
    fc.assert(
      fc.property(grades, fc.array(fc.tuple(quarters, fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 8 }), (grade, typed) => {
        const text = typed.map(([value, times]) => (times === 1 ? String(value) : `${value} x ${times}`)).join('\n');
        const { tasks, wrong, isRounded } = measuredSheet({ measure: 'height', typed: text, grade, units: 'us' }, DOES);
        expect(wrong).toEqual([]);
        if (tasks.length === 0) {
          expect(grade).toBeLessThan(2);
          return;
        }
        held(tasks, grade);
        const all = typed.flatMap(([value, times]) => Array<number>(times).fill(isRounded ? Math.floor(value + 0.5) : value)); // prettier-ignore
        const times = (one: number) => all.filter((other) => other === one).length;
        const often = Math.max(...all.map(times));
        if (grade >= 1) expect(only(askOf(tasks, 'all'))).toBe(all.length);
        if (grade < 2) return;
        const modes = [...new Set(all)].filter((one) => times(one) === often).sort((a, b) => a - b);
        expect(askOf(tasks, 'most')?.values.map(num)).toEqual(modes);
        const span = Math.max(...all) - Math.min(...all);
        if (grade > 2) expect(only(askOf(tasks, grade >= 6 ? 'range' : 'apart'))).toBeCloseTo(span, 9);
        const dots = askOf(tasks, 'draw');
        if (dots) expect(dots.values.map(num).sort((a, b) => a - b)).toEqual(all.toSorted((a, b) => a - b));
        const mean = all.reduce((a, b) => a + b, 0) / all.length;
        const even = only(askOf(tasks, 'even'));
        if (even !== undefined) expect(even).toBeCloseTo(mean, 9);
        if (grade >= 6) {
          expect(only(askOf(tasks, 'median'))).toBeCloseTo(middleOf(all), 9);
          expect(Math.abs((only(askOf(tasks, 'mean')) ?? 0) - mean)).toBeLessThanOrEqual(0.05 + 1e-9);
        }
        const sd = only(askOf(tasks, 'sd'));
        if (sd === undefined) return;
        const squares = all.reduce((sum, one) => sum + (one - mean) ** 2, 0);
        expect(Math.abs(sd - Math.sqrt(squares / (all.length - 1)))).toBeLessThanOrEqual(0.005 + 1e-9);
      }),
      { numRuns: 600 },
    );
  }); // prettier-ignore

  it('warns of a mistake that can be made with what is asked', () => {
    const warned = (grade: 5 | 6) =>
      measuredSheet({ measure: 'barn', typed: '30 x 4\n31\n33 x 2', grade, units: 'us' }, DOES).tasks.find((task) => askOf([task], grade === 5 ? 'even' : 'median'))?.mistake.what.key;
    expect([warned(5), warned(6)]).toEqual(['visits.after.task.mistake.even', 'visits.after.task.mistake.middle']);
  }); // prettier-ignore

  it('sorts into three groups where children do not draw line plots yet', () => {
    const sheet = measuredSheet({ measure: 'height', typed: '4 x 3\n5 x 9\n6 x 4\n7 x 2', grade: 1, units: 'us' }, DOES);
    expect(sheet.tasks).toHaveLength(1);
    expect(sheet.tasks[0]?.picture).toMatchObject({ rows: [[{}, { num: 3 }], [{}, { num: 9 }], [{}, { num: 6 }]] });
    expect(only(askOf(sheet.tasks, 'group-more'))).toBe(6);
  }); // prettier-ignore
});

describe('a sheet of a number for each doe', () => {
  const amounts = fc.uniqueArray(fc.integer({ min: 0, max: 4 }), { minLength: 2, maxLength: 5 }).chain((who) => fc.tuple(fc.constant(who), fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 5, maxLength: 5 }))); // prettier-ignore
  it('has the answers that a slow count gives, and no more does than the grade has bars', () => {
    fc.assert(
      fc.property(grades, amounts, fc.constantFrom('milk', 'hay', 'minutes'), (grade, [who, values], measure) => {
        const typed = who.map((doe, index) => `${DOES[doe]?.name} ${values[index]}`).join('\n');
        const { tasks, leftOut, of } = measuredSheet({ measure, typed, grade, units: 'us' }, DOES);
        held(tasks, grade);
        if (of === null || of.by !== 'doe') return;
        const told = of.rows.map(({ name, steps }) => ({ name, value: steps / of.den }));
        expect(told.length + leftOut).toBe(who.length);
        expect(told.length).toBeLessThanOrEqual(GRADE_LIMITS[grade].categories ?? 10);
        for (const { name, value } of told) expect(typed).toContain(`${name} ${value}`);
        let high = told[0]?.value ?? 0;
        let low = high;
        let sum = 0;
        for (const { value } of told) {
          if (value > high) high = value;
          if (value < low) low = value;
          sum += value;
        }
        const most = askOf(tasks, `who-most.${measure}`);
        if (most) expect(most.values).toEqual(told.filter(({ value }) => value === high).map(({ name }) => name));
        const more = only(askOf(tasks, `more.${measure}`));
        if (more !== undefined) expect(more).toBeCloseTo(high - low, 9);
        else expect(high === low || grade < 2).toBe(true);
        const all = only(askOf(tasks, 'sum'));
        if (all !== undefined) expect(all).toBeCloseTo(sum, 9);
        for (const ask of asksOf(tasks).filter(({ prompt }) => /ask\.(color|bars)$/.test(prompt.key)))
          expect(ask.values.map(num)).toEqual(told.map(({ value }) => value));
        if (grade >= 6) expect(only(askOf(tasks, 'median'))).toBeCloseTo(middleOf(told.map(({ value }) => value)), 9);
      }),
      { numRuns: 600 },
    );
  }); // prettier-ignore

  it('names only does of the farm', () => {
    const sheet = measuredSheet({ measure: 'milk', typed: 'Juniper 6\nhester: 7\nAna 5\nWren 2\nWREN 3', grade: 2, units: 'us' }, DOES); // prettier-ignore
    expect(sheet.wrong).toEqual(['Ana 5', 'WREN 3']);
    expect(JSON.stringify(sheet.tasks)).not.toContain('Ana');
  });
});

it('measures with a ruler from grade 2 on (2.MD.A.1)', () => {
  expect(measuresFor(1)).not.toContain('ears');
  expect(measuresFor(2)).toContain('ears');
  expect(measuresFor(0).some((one) => MEASURED_BY[one] === 'count')).toBe(true);
});

/** Every message in an object, however deep it lies. */
function messagesIn(value: unknown): Message[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'key' in value && 'slots' in value ? [value as Message] : [];
  return [...own, ...Object.values(value).flatMap(messagesIn)];
}

it.each(['en', 'es'])('has words in %s for everything that it may say', (lang) => {
  const words = wordsOf(lang);
  for (let grade = 0; grade <= 12; grade += 1)
    for (const units of ['us', 'metric'] as const)
      for (const measure of measuresFor(grade as Grade)) {
        const typed = MEASURED_BY[measure] === 'doe' ? 'Juniper 6\nHester 7\nTansy 4.5' : '3 x 2\n4 x 6\n5.5\n6 x 3';
        const { tasks } = measuredSheet({ measure, typed, grade: grade as Grade, units }, DOES);
        expect(tasks.length).toBeGreaterThan(0);
        for (const message of messagesIn(tasks)) expect(tellText(words, message)).not.toMatch(/undefined|\{/);
      }
  for (const part of ['cup', 'half-L'] as const)
    for (const truth of [null, 6]) {
      const tasks = guessGroups({ guesses: [5, 6, 6, 7], truth, part }, 1);
      expect(tasks).toHaveLength(part === 'half-L' && truth === null ? 0 : 1);
      for (const message of messagesIn(tasks)) expect(tellText(words, message)).not.toMatch(/undefined|\{/);
    }
}); // prettier-ignore
