// What a child of a grade may be asked, held over random weeks, farms, seeds and grades: the limits are data, and every
// task is read back number by number. Limits: shared/tasks/limits.ts, which names its source.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UNIT_ML, type AmountUnit } from '../../../shared/quantity/units.ts';
import { makeSheet, type Sheet } from '../../../shared/sheet/sheet.ts';
import { kindNamed } from '../../../shared/tasks/kinds.ts';
import {
  GRADE_LIMITS,
  STANDARD_LIMITS,
  type Conversion,
  type NumberLimits,
} from '../../../shared/tasks/limits.ts';
import { firstGrade, GRADES_OF, STANDARDS } from '../../../shared/tasks/standards.ts';
import type { Task } from '../../../shared/tasks/task.ts';
import { requestArb } from './randomWeek.ts';
import { metOn, type Met } from './reads.ts';

const gradedArb = fc.tuple(requestArb, fc.nat(3)).map(([request, place]) => {
  const grades = GRADES_OF[request.band];
  return { ...request, grade: grades[place % grades.length] };
});

const overTasks = (runs: number, check: (task: Task, sheet: Sheet) => void): void =>
  fc.assert(
    fc.property(gradedArb, (request) => {
      const sheet = makeSheet(request);
      for (const task of sheet.tasks)
        try {
          check(task, sheet);
        } catch (fault) {
          const told = `${task.kind}, grade ${sheet.grade}, ${sheet.units}: ${(fault as Error).message}\n${JSON.stringify(task)}`;
          throw new Error(told, { cause: fault });
        }
    }),
    { numRuns: runs },
  );

const METRIC: readonly string[] = ['mL', 'L', 'g', 'kg'];
const isMeasure = (unit: string | null): unit is AmountUnit => unit !== null && unit in UNIT_ML;
// A conversion turns given amounts into another unit; which are given and which are asked for follows from where they stand.
function conversionOf(met: readonly Met[]): Conversion {
  const given = met
    .filter(({ where }) => where !== 'answer')
    .flatMap(({ unit }) => (isMeasure(unit) ? [unit] : []));
  const asked = met
    .filter(({ where }) => where === 'answer')
    .flatMap(({ unit }) => (isMeasure(unit) ? [unit] : []));
  const all = new Set([...given, ...asked]);
  if (all.size <= 1) return 'none';
  const systems = new Set([...all].map((unit) => METRIC.includes(unit)));
  if (systems.size > 1) return 'any';
  const size = (unit: AmountUnit) => UNIT_ML[unit].valueOf();
  const largest = Math.max(...given.map(size));
  return asked.every((unit) => size(unit) < largest) ? 'larger-to-smaller' : 'one-system';
}
const REACH: readonly Conversion[] = ['none', 'larger-to-smaller', 'one-system', 'any'];

function holdNumber(limits: NumberLimits, { shown, unit }: Met): void {
  const value = shown.num / shown.den;
  if (limits.most !== undefined)
    expect(Math.abs(value), 'the largest number').toBeLessThanOrEqual(limits.most);
  if (limits.negative === false) expect(value, 'no number below zero').toBeGreaterThanOrEqual(0);
  if (shown.places === undefined && limits.denominators)
    expect(limits.denominators, 'denominators').toContain(shown.den);
  if (shown.places !== undefined && limits.places !== undefined)
    expect(shown.places, 'decimal places').toBeLessThanOrEqual(limits.places);
  if (unit !== null) expect(limits.noUnits ?? [], 'units not met yet').not.toContain(unit);
}

function faultOf(check: () => void): string | null {
  try {
    check();
    return null;
  } catch (fault) {
    return (fault as Error).message;
  }
}

function holdFigure(limits: NumberLimits, task: Task, met: readonly Met[]): void {
  const { picture } = task;
  const categories =
    picture?.is === 'picture-graph' ? picture.rows.length : picture?.is === 'bars' ? picture.bars.length : 0;
  if (limits.categories !== undefined)
    expect(categories, 'categories').toBeLessThanOrEqual(limits.categories);
  if (limits.scales && picture?.is === 'bars') expect(limits.scales, 'scale').toContain(picture.scale);
  if (limits.conversion)
    expect(REACH.indexOf(conversionOf(met)), `conversion ${conversionOf(met)}`).toBeLessThanOrEqual(
      REACH.indexOf(limits.conversion),
    );
}

describe('limits', () => {
  it('stand for standards that are known, and never reach past their grade', () => {
    for (const code of Object.keys(STANDARD_LIMITS)) expect(STANDARDS[code] ?? 'listed', code).toBeDefined();
    for (const [code, limits] of Object.entries(STANDARD_LIMITS)) {
      const grade = GRADE_LIMITS[firstGrade(code) as keyof typeof GRADE_LIMITS];
      if (limits.most !== undefined && grade.most !== undefined)
        expect(limits.most, code).toBeLessThanOrEqual(grade.most);
      for (const scale of limits.scales ?? []) expect(grade.scales ?? [scale], code).toContain(scale);
    }
  });

  it('hold every task of every grade: numbers, fractions, decimals, graphs, direction of conversion', () => {
    overTasks(2500, (task, { grade }) => {
      const met = metOn(task);
      for (const one of met) holdNumber(GRADE_LIMITS[grade], one);
      holdFigure(GRADE_LIMITS[grade], task, met);
      // Of a task with two standards each number keeps to one of them at least; a graph keeps to both.
      const narrowed = task.standards.map((code) => STANDARD_LIMITS[code] ?? {});
      for (const one of met) {
        const faults = narrowed.map((limits) => faultOf(() => holdNumber(limits, one)));
        if (faults.every((fault) => fault !== null)) throw new Error(faults.join(' and '));
      }
      for (const limits of narrowed) holdFigure(limits, task, met);
    });
  });

  it('let no task pass the grade, nor name a standard that its kind does not', () => {
    overTasks(1500, (task, { grade }) => {
      for (const code of task.standards) {
        expect(firstGrade(code), code).toBeLessThanOrEqual(grade);
        expect(kindNamed(task.kind)?.standards).toContain(code);
      }
    });
  });
});

describe('a question', () => {
  it('is never empty: no amount of zero is told, drawn to be compared or asked for below grade 6', () => {
    overTasks(2500, (task, { grade }) => {
      if (grade >= 6) return;
      // An axis begins at zero: a place on it, or between two of its marks, is no amount. A time may have 0 minutes.
      const counted = metOn(task).filter(({ where, unit }) => unit !== 'minute' && (where === 'told' || (where === 'answer' && unit !== null)));
      for (const { shown } of counted) expect(shown.num).toBeGreaterThan(0);
    });
  });

  it('offers at least two different things to choose from, the right one among them', () => {
    overTasks(1500, (task) => {
      for (const ask of task.asks) {
        if (ask.work.is !== 'ring') continue;
        const offered = ask.work.of.map((one) => JSON.stringify(one));
        expect(new Set(offered).size).toBe(offered.length);
        expect(offered.length).toBeGreaterThanOrEqual(2);
      }
    });
  });

  it('does not give its answer away, and no two on a sheet ask the same', () => {
    overTasks(1500, (task, sheet) => {
      for (const ask of task.asks) {
        if (ask.work.is !== 'boxes' && ask.work.is !== 'working') continue;
        const answer = JSON.stringify(ask.answer.slots);
        // The very amount that is asked for, with its unit, does not stand in the question that asks for it.
        if (answer !== '{}') for (const slot of Object.values(ask.prompt.slots)) expect(answer).not.toBe(JSON.stringify({ amount: slot }));
      }
      const prompts = task.asks.map(({ prompt }) => JSON.stringify(prompt));
      expect(new Set(prompts).size).toBe(prompts.length);
      // Once a sheet: what each task asks, as one text.
      if (task !== sheet.tasks[0]) return;
      const asked = sheet.tasks.map(({ lead, picture, asks }) => JSON.stringify([lead, picture, asks]));
      expect(new Set(asked).size).toBe(asked.length);
    });
  });
}); // prettier-ignore
