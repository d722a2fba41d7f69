// The data sheet of what a class measured: its numbers as its grade reads them, and the tasks made from them.
import type { UnitSystem } from '../../../herd/types.ts';
import type { SheetTask } from '../../../sheet/sheet.ts';
import { GRADE_LIMITS } from '../../../tasks/limits.ts';
import type { Grade } from '../../../tasks/grades.ts';
import { doeTasks } from './doeTasks.ts';
import { fineness, stepsOf } from './fineness.ts';
import type { MeasuredDoes, MeasuredMany } from './madeTask.ts';
import { manyTasks } from './manyTasks.ts';
import { MEASURED_BY, measureUnit, type Measure } from './measures.ts';
import { readCounts, readOfDoes } from './typed.ts';

/** A doe of the farm. */
export interface SheetDoe {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
}

/** What somebody filled in. */
export interface MeasuredWish {
  readonly measure: Measure;
  /** As typed or pasted. */
  readonly typed: string;
  readonly grade: Grade;
  readonly units: UnitSystem;
}

/** The sheet, and what its maker should hear. */
export interface MeasuredSheet {
  /** Null where there is too little for a sheet. */
  readonly of: MeasuredMany | MeasuredDoes | null;
  readonly tasks: readonly SheetTask[];
  /** Lines that could not be read. */
  readonly wrong: readonly string[];
  /** Whether some numbers were rounded to what the grade reads. */
  readonly isRounded: boolean;
  /** Does that did not fit the grade's graphs, and numbers above what the grade reads. */
  readonly leftOut: number;
}

// Names below bars and in tables that a page holds.
const MOST_DOES = 10;

/** Makes the sheet. */
export function measuredSheet(wish: MeasuredWish, does: readonly SheetDoe[]): MeasuredSheet {
  const made = MEASURED_BY[wish.measure] === 'doe' ? ofDoes(wish, does) : ofMany(wish);
  const { of } = made;
  const tasks = of === null ? [] : of.by === 'doe' ? doeTasks(of) : manyTasks(of);
  return {
    ...made,
    of: tasks.length === 0 ? null : of,
    tasks: tasks.map((task, place): SheetTask => ({ ...task, place, earlier: null })),
  };
}

function ofMany({ measure, typed, grade, units }: MeasuredWish): Omit<MeasuredSheet, 'tasks'> {
  const { rows, wrong } = readCounts(typed);
  const { most = Infinity } = GRADE_LIMITS[grade];
  const told = rows.filter(({ value }) => value.compare(Math.min(most, 1e6)) <= 0);
  const leftOut = rows.reduce((sum, { times }) => sum + times, 0) - told.reduce((sum, { times }) => sum + times, 0);
  const { den, isRounded } = fineness(told.map(({ value }) => value), grade);
  const steps = told.flatMap(({ value, times }) => Array<number>(times).fill(stepsOf(value, den)));
  const unit = measureUnit(measure, units, grade);
  const of: MeasuredMany | null = steps.length === 0 ? null : { by: 'count', measure, unit, grade, den, steps };
  return { of, wrong, isRounded, leftOut };
} // prettier-ignore

function ofDoes(
  { measure, typed, grade, units }: MeasuredWish,
  does: readonly SheetDoe[],
): Omit<MeasuredSheet, 'tasks'> {
  const { rows, wrong } = readOfDoes(typed, does);
  const { most = Infinity, categories = MOST_DOES } = GRADE_LIMITS[grade];
  const told = rows.filter(({ value }) => value.compare(Math.min(most, 1e6)) <= 0).slice(0, categories);
  const { den, isRounded } = fineness(told.map(({ value }) => value), grade);
  const own = told.flatMap(({ doe, value }) => {
    const known = does.find(({ id }) => id === doe);
    return known ? [{ id: known.id, name: known.name, breed: known.breed, steps: stepsOf(value, den) }] : [];
  });
  const unit = measureUnit(measure, units, grade);
  const of: MeasuredDoes | null = own.length < 2 ? null : { by: 'doe', measure, unit, grade, den, rows: own };
  return { of, wrong, isRounded, leftOut: rows.length - told.length };
} // prettier-ignore
