// The order of steps: openings, then lesson by lesson as each was written, closings last.
import { sumOf } from './score.ts';
import type { PoolStep } from './pool.ts';

/**
 * Puts steps in order. Between openings and closings each lesson's steps stay together and as written, so that a
 * sheet comes after the talk it belongs to; the lesson with the most usual minutes comes first, then the order given.
 */
export function inOrder<T extends PoolStep>(steps: readonly T[]): T[] {
  const lessons = [...new Set(steps.map(({ lesson }) => lesson))];
  const weight = new Map(lessons.map((one) => [one, sumOf(steps.filter(({ lesson }) => lesson === one), 'minutes')])); // prettier-ignore
  lessons.sort((a, b) => (weight.get(b) ?? 0) - (weight.get(a) ?? 0));
  const part = ({ step }: T) => (step.kind === 'open' ? 0 : step.kind === 'close' ? 2 : 1);
  const place = (one: T) => one.lesson.steps.findIndex(({ id }) => id === one.step.id);
  return [...steps].sort(
    (a, b) =>
      part(a) - part(b) || lessons.indexOf(a.lesson) - lessons.indexOf(b.lesson) || place(a) - place(b),
  );
}

/** Where among ordered (and perhaps moved) steps a new one belongs: the place it will have. */
export function placeFor(steps: readonly PoolStep[], wanted: PoolStep): number {
  const kind = wanted.step.kind;
  const firstClose = steps.findIndex(({ step }) => step.kind === 'close');
  const end = firstClose < 0 ? steps.length : firstClose;
  if (kind === 'open') return steps.findLastIndex(({ step }) => step.kind === 'open') + 1;
  const own = wanted.lesson.steps;
  const at = own.findIndex(({ id }) => id === wanted.step.id);
  const isOwn = (one: PoolStep, before: boolean) => {
    const place = own.findIndex(({ id }) => id === one.step.id);
    return place >= 0 && (before ? place < at : place > at);
  };
  const after = steps.findLastIndex((one) => isOwn(one, true) && one.step.kind !== 'open');
  if (kind === 'close') {
    if (after >= 0 && steps[after]?.step.kind === 'close') return after + 1;
    const next = steps.findIndex((one) => isOwn(one, false) && one.step.kind === 'close');
    return next >= 0 ? next : steps.length;
  }
  if (after >= 0 && steps[after]?.step.kind !== 'close') return after + 1;
  const next = steps.findIndex((one) => isOwn(one, false));
  return next >= 0 ? Math.min(next, end) : end;
}
