// A sheet as a coordinator writes it: when it is for, its tasks in order, and in each language its title and texts.
import type { Band } from '../quantity/grade.ts';

/** When a sheet or a lesson is for: before the visit, at the farm, after it. */
export type When = 'before' | 'at' | 'after';
/** All of them, in the order of a visit. */
export const WHENS: readonly When[] = Object.freeze(['before', 'at', 'after']);

/** What is the same in every language. */
export interface SheetPlan {
  /** The name of its file, which is also its address. */
  readonly name: string;
  readonly band: Band;
  readonly when: When;
  /** Time that a class takes, minutes. */
  readonly minutes: number;
  /** Names of the kinds of tasks, in order. */
  readonly tasks: readonly string[];
  /** Standards that the coordinator names herself, beside those of the tasks. */
  readonly standards: readonly string[];
}

/** A paragraph that stands before a task, by the task's place; past the last task it ends the sheet. */
export interface SheetText {
  readonly before: number;
  readonly text: string;
}

/** What a language adds. In `texts` every figure is filled in already. */
export interface SheetFront {
  readonly title: string;
  /** One or two sentences for the teacher who chooses. */
  readonly about: string;
  /** What each child needs, beside the paper. */
  readonly materials: readonly string[];
  readonly texts: readonly SheetText[];
}
