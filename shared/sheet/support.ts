// Which standards a sheet may support, and from which grade on it has all of its own tasks.
import { kindNamed } from '../tasks/kinds.ts';
import { firstGrade, GRADES_OF, type Grade } from '../tasks/standards.ts';
import type { SheetPlan } from './plan.ts';

/**
 * Every standard that a sheet may support: those of its tasks in their order, then those that its head names, each once.
 * A made sheet takes of these what fits the grade and the week. Throws for a task that no kind has.
 */
export function standardsOf(plan: Pick<SheetPlan, 'tasks' | 'standards'>): readonly string[] {
  return [...new Set([...plan.tasks.flatMap((name) => kindOf(name).standards), ...plan.standards])];
}

/** The youngest grade of its band at which none of its tasks is for an older one. */
export function fullFrom(plan: Pick<SheetPlan, 'band' | 'tasks'>): Grade {
  const needed = plan.tasks.map((name) => Math.min(...kindOf(name).standards.map(firstGrade)));
  const grades = GRADES_OF[plan.band];
  return grades.find((grade) => needed.every((one) => one <= grade)) ?? (grades.at(-1) as Grade);
}

function kindOf(name: string) {
  const kind = kindNamed(name);
  if (!kind) throw new Error(`There is no kind of task called "${name}".`);
  return kind;
}
