// What a lesson on the bench leaves out, and why.
import { areAlike, wantingMusts, type PlannedStep, type PoolStep } from './pool.ts';
import type { Place } from './types.ts';
import { isOn, type Wish } from './wish.ts';

/**
 * Why a step is left out; the first that is true is told.
 * `place`: it is held elsewhere. `topic`: it is on none of the chosen topics, and the time went to these.
 * `like`: a step of another lesson that does the same is in. `time`: with it the lesson would be too long.
 * `room`: nothing speaks against it.
 */
export type Why =
  | { readonly is: 'place'; readonly place: Place }
  | { readonly is: 'topic' }
  | { readonly is: 'like'; readonly like: PlannedStep }
  | { readonly is: 'time' }
  | { readonly is: 'room' };

/** A step that is left out. */
export interface LeftOut extends PoolStep {
  readonly why: Why;
  /** Steps that come along where it is put in: the musts of its lesson that are not in yet. */
  readonly along: readonly PoolStep[];
  /** Minutes that are wanting where it is put in with what comes along, all at their usual times; 0 with room enough. */
  readonly needs_min: number;
}

/** Every step of the pool that is not among the steps, in the order of the pool. */
export function leftOut(pool: readonly PoolStep[], steps: readonly PlannedStep[], wish: Wish): LeftOut[] {
  const total = steps.reduce((sum, { minutes }) => sum + minutes, 0);
  const isIn = (id: string) => steps.some(({ step }) => step.id === id);
  return pool
    .filter(({ step }) => !isIn(step.id))
    .map((one) => {
      const along = wantingMusts([...steps, one]).filter(({ step }) => step.id !== one.step.id);
      const more = along.reduce((sum, { step }) => sum + step.minutes, one.step.minutes);
      const needs_min = Math.max(0, total + more - wish.minutes);
      return { ...one, along, needs_min, why: whyOf(one, steps, wish, needs_min) };
    });
}

function whyOf(one: PoolStep, steps: readonly PlannedStep[], wish: Wish, needs_min: number): Why {
  if (one.lesson.place !== wish.place) return { is: 'place', place: one.lesson.place };
  if (wish.topics.length > 0 && needs_min > 0 && !isOn(one.step, wish.topics)) return { is: 'topic' };
  const like = steps.find((other) => areAlike(one, other));
  if (like) return { is: 'like', like };
  return needs_min > 0 ? { is: 'time' } : { is: 'room' };
}
