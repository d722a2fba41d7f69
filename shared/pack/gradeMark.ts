// How a sheet suits a grade: whether it asks for that grade's own standards, and what it had to swap for it.
import type { Sheet } from '../sheet/sheet.ts';
import { firstGrade, type Grade } from '../tasks/standards.ts';

/** How a sheet suits the grade that it was made for. */
export interface GradeMark {
  /** Whether a task supports a standard of this very grade, or one that is written for a span of grades with it in. */
  readonly own: boolean;
  /** Tasks of the plan that give their place to another, at this grade or in this week. */
  readonly swapped: number;
}

// Standards that are written for a span of grades, such as `MS-LS1-6`, `K-2-ETS1-1`, `RST.6-8.7`, `HSS-ID.A.2`.
const SPAN = /^(?:MS|HS)|^K-2-|^3-5-|\.(?:6-8|9-10|11-12)\./;

/**
 * Whether a standard is one of a grade's own.
 * @example isOfGrade('2.MD.D.10', 2) // => true
 * @example isOfGrade('K.CC.B.5', 2) // => false
 * @example isOfGrade('MS-LS1-6', 8) // => true
 */
export function isOfGrade(code: string, grade: Grade): boolean {
  const first = firstGrade(code);
  return first === grade || (first < grade && SPAN.test(code));
}

/** How a sheet suits the grade that it was made for; `planned` are the tasks of its plan in order. */
export function gradeMark(sheet: Sheet, planned: readonly string[]): GradeMark {
  const kept = sheet.tasks.filter(({ kind, place }) => planned[place] === kind).length;
  return {
    own: sheet.tasks.some(({ standards }) => standards.some((code) => isOfGrade(code, sheet.grade))),
    swapped: planned.length - kept,
  };
}
