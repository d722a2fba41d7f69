// The steps that a lesson may be put together from, and which of them do the same.
import { bandOfGrade, type Grade } from '../tasks/standards.ts';
import type { Lesson, LessonStep } from './types.ts';

/** A step with the lesson it comes from. */
export interface PoolStep {
  readonly lesson: Lesson;
  readonly step: LessonStep;
}

/** A step of a lesson on the bench, with its minutes there: `least` to `most` of the step. */
export interface PlannedStep extends PoolStep {
  readonly minutes: number;
}

/** All steps of the lessons for a grade's band, in the order of the lessons and of each lesson's steps. */
export function poolFor(lessons: readonly Lesson[], grade: Grade): PoolStep[] {
  const band = bandOfGrade(grade);
  return lessons
    .filter((lesson) => lesson.band === band)
    .flatMap((lesson) => lesson.steps.map((step) => ({ lesson, step })));
}

/**
 * What a step does, as a name: its kind and what it is mainly about, which is the topic named first. Openings
 * all do the same. A step without a topic does what no other does.
 */
export function doingOf({ step }: PoolStep): string {
  if (step.kind === 'open') return 'open';
  return step.topics[0] === undefined ? step.id : `${step.kind} ${step.topics[0]}`;
}

/** Whether two steps of different lessons do the same, so that one of them is enough. */
export function areAlike(a: PoolStep, b: PoolStep): boolean {
  return a.lesson !== b.lesson && doingOf(a) === doingOf(b);
}

/**
 * The `must` steps that are still wanting: those of each lesson of which a step is in, unless a `must` step of
 * another lesson that does the same is in (one washing of hands is enough).
 */
export function wantingMusts(steps: readonly PoolStep[]): PoolStep[] {
  const lessons = [...new Set(steps.map(({ lesson }) => lesson))];
  const wanting: PoolStep[] = [];
  for (const lesson of lessons)
    for (const step of lesson.steps) {
      if (!step.must) continue;
      const must = { lesson, step };
      const there = [...steps, ...wanting].some(
        (one) => one.step.must && (one.step.id === step.id || areAlike(one, must)),
      );
      if (!there) wanting.push(must);
    }
  return wanting;
}
