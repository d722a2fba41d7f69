// What a task is: a question with its picture, its answer with the working, and what often goes wrong.
import type { Band, Shown, SheetUnit } from '../quantity/grade.ts';
import type { Message, Slot } from '../sheet/message.ts';
import type { Picture } from '../sheet/picture.ts';
import { chanceOf } from '../sheet/chance.ts';
import type { TaskContext } from './context.ts';
import { firstGrade } from './standards.ts';

/** Room for the answer. */
export type Work =
  /** Boxes for numbers, with the words that stand after each; `room` adds a frame to draw or count in. */
  | {
      readonly is: 'boxes';
      readonly after: readonly (SheetUnit | null)[];
      readonly signs?: readonly string[];
      readonly room?: true;
    }
  /** Ring one of these. */
  | { readonly is: 'ring'; readonly of: readonly Slot[] }
  /** Ruled lines to write on. */
  | { readonly is: 'lines'; readonly lines: number }
  /** A frame to draw in. */
  | { readonly is: 'drawing' }
  /** Open room to work, with a box for the result. */
  | { readonly is: 'working'; readonly after: readonly (SheetUnit | null)[] }
  /** The answer goes into the picture. */
  | { readonly is: 'picture' };

/** One question of a task. */
export interface Ask {
  readonly prompt: Message;
  readonly work: Work;
  /** The answer in words, with its numbers in the slots. */
  readonly answer: Message;
  /** The numbers of the answer in the order they are asked for; names and choices are texts. */
  readonly values: readonly (Shown | string)[];
  /** Other answers to count as right. */
  readonly accepted: readonly Message[];
  /** The working, line by line. */
  readonly steps: readonly Message[];
  /** The picture as it looks when it is done. */
  readonly picture?: Picture;
}

/** An amount of the book beside the number that the sheet prints for it. */
export interface FromBook {
  readonly what: Slot;
  readonly book: Shown & { readonly unit: SheetUnit };
  readonly here: Shown & { readonly unit: SheetUnit };
}

/** A task of a sheet, without a word of any language. */
export interface Task {
  readonly kind: string;
  /** Codes of the standards that it supports; `standards.ts` knows each. */
  readonly standards: readonly string[];
  readonly lead: readonly Message[];
  readonly picture: Picture | null;
  readonly asks: readonly Ask[];
  readonly mistake: { readonly what: Message; readonly why: Message };
  /** Amounts that were rounded or turned to another unit for the band. */
  readonly fromBook: readonly FromBook[];
}

/** A kind of task. Either it fits a week, or the key of what is missing (`sheet.lack.…`). */
export interface TaskKind {
  readonly name: string;
  readonly bands: readonly Band[];
  /** Every standard that a task of this kind may support. */
  readonly standards: readonly string[];
  /** True, or why not: `ABOVE_GRADE`, or a key under `sheet.lack`. */
  fits(context: TaskContext): true | string;
  /** Throws where the week does not carry it: ask `fits` first. */
  make(context: TaskContext): Task;
}

/** Why a kind does not fit where everything that it could be made from is for an older grade. */
export const ABOVE_GRADE = 'above-grade';

/** How a kind of task is written: what it can be made from, and how. */
export interface TaskPlan<C> {
  readonly name: string;
  readonly bands: readonly Band[];
  /** Every standard that the task may support; each made task names those that it does. */
  readonly standards: readonly string[];
  /** What the week lacks when there is no candidate: a key under `sheet.lack`. */
  readonly lack: string;
  /** Everything that it could be made from this week, in the book's order. */
  candidates(context: TaskContext): readonly C[];
  /** Names what a candidate uses (a doe, a milking), so that tasks of one sheet take turns. */
  touches(candidate: C): readonly string[];
  make(context: TaskContext, candidate: C): Task;
}

/** Makes a kind of task from its plan: the pick goes to what the sheet has used least. */
export function taskKind<C>(plan: TaskPlan<C>): TaskKind {
  const { name, bands, standards, lack } = plan;
  const within = (code: string, grade: number): boolean => firstGrade(code) <= grade;
  // Made with copies, so that a try leaves neither picks nor uses behind.
  const tried = (context: TaskContext, one: C): Task =>
    plan.make({ ...context, chance: chanceOf('try'), used: new Map(context.used) }, one);
  /** What it could be made from without passing the grade; made to see it only where the kind spans grades. */
  const rightFor = (context: TaskContext): readonly C[] => {
    const { grade } = context;
    if (!standards.some((code) => within(code, grade))) return [];
    const all = plan.candidates(context);
    if (standards.every((code) => within(code, grade))) return all;
    return all.filter((one) => tried(context, one).standards.every((code) => within(code, grade)));
  };
  return {
    name,
    bands,
    standards,
    fits(context) {
      if (rightFor(context).length > 0) return true;
      const tooOld = !standards.every((code) => within(code, context.grade));
      return tooOld && plan.candidates(context).length > 0 ? ABOVE_GRADE : lack;
    },
    make(context) {
      const mixed = context.chance.shuffle(rightFor(context));
      const uses = (one: C) => plan.touches(one).reduce((sum, key) => sum + (context.used.get(key) ?? 0), 0);
      const [first, ...others] = mixed;
      if (first === undefined)
        throw new Error(`"${name}" was asked for from a week that lacks ${lack}, or for too young a grade.`);
      const picked = others.reduce((best, one) => (uses(one) < uses(best) ? one : best), first);
      for (const key of plan.touches(picked)) context.used.set(key, (context.used.get(key) ?? 0) + 1);
      return plan.make(context, picked);
    },
  };
}
