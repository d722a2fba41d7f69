// What a teacher does to a lesson on the bench: move, lengthen, take out, put in, exchange.
import { allot } from './allot.ts';
import { placeFor } from './order.ts';
import { areAlike, doingOf, wantingMusts, type PlannedStep, type PoolStep } from './pool.ts';

type Steps = readonly PlannedStep[];
const at = (steps: Steps, id: string) => steps.findIndex(({ step }) => step.id === id);

/** The step one place earlier (-1) or later (1); at either end the steps stay as they are. */
export function moved(steps: Steps, id: string, by: -1 | 1): PlannedStep[] {
  const from = at(steps, id);
  const to = from + by;
  const [one, other] = [steps[from], steps[to]];
  if (!one || !other) return [...steps];
  return steps.map((step, index) => (index === from ? other : index === to ? one : step));
}

/** The step at so many minutes, held within its shortest and longest time. */
export function lengthened(steps: Steps, id: string, minutes: number): PlannedStep[] {
  return steps.map((one) =>
    one.step.id === id
      ? { ...one, minutes: Math.min(one.step.most, Math.max(one.step.least, Math.round(minutes))) }
      : one,
  );
}

/** The step put in where it belongs (see `placeFor`) at its usual time, with the musts that come along. */
export function putIn(steps: Steps, wanted: PoolStep): PlannedStep[] {
  if (at(steps, wanted.step.id) >= 0) return [...steps];
  const place = placeFor(steps, wanted);
  const one = { ...wanted, minutes: wanted.step.minutes };
  return withMusts([...steps.slice(0, place), one, ...steps.slice(place)]);
}

/** The steps with every must that is wanting put in where it belongs. */
export function withMusts(steps: Steps): PlannedStep[] {
  return wantingMusts(steps).reduce<PlannedStep[]>(
    (so, must) => {
      const place = placeFor(so, must);
      return [...so.slice(0, place), { ...must, minutes: must.step.minutes }, ...so.slice(place)];
    },
    [...steps],
  );
}

/**
 * The steps without one. Where only musts of its lesson are left, which nothing asks for any more, they go too; a
 * must that other steps still ask for stays, or is stood in for by its own lesson's.
 */
export function dropped(steps: Steps, id: string): PlannedStep[] {
  const gone = steps[at(steps, id)];
  if (!gone || isHeld(steps, gone)) return [...steps];
  const rest = steps.filter((one) => one !== gone);
  const idle = !rest.some(({ lesson, step }) => lesson === gone.lesson && !step.must);
  return withMusts(idle ? rest.filter(({ lesson }) => lesson !== gone.lesson) : rest);
}

/** Whether a step cannot be taken out, since other steps of its lesson make no sense without it. */
export function isHeld(steps: Steps, one: PoolStep): boolean {
  if (!one.step.must) return false;
  if (steps.some((other) => other.step.must && areAlike(one, other))) return false;
  return steps.some(({ lesson, step }) => lesson === one.lesson && !step.must);
}

/** Steps that could stand in a step's place: of its kind and place, not in yet, those that do the same first. */
export function likesOf(pool: readonly PoolStep[], steps: Steps, one: PoolStep): PoolStep[] {
  const same = pool.filter(
    (other) =>
      other.step.kind === one.step.kind &&
      other.lesson.place === one.lesson.place &&
      at(steps, other.step.id) < 0,
  );
  const isLike = (other: PoolStep) => Number(doingOf(other) === doingOf(one));
  return same.sort((a, b) => isLike(b) - isLike(a));
}

/** Another step in a step's place, for as long as it can take of the same time, and what comes along with it. */
export function exchanged(steps: Steps, id: string, wanted: PoolStep): PlannedStep[] {
  const place = at(steps, id);
  const gone = steps[place];
  if (!gone || at(steps, wanted.step.id) >= 0) return [...steps];
  const fresh = lengthened([{ ...wanted, minutes: 0 }], wanted.step.id, gone.minutes);
  const swapped = steps.flatMap((one) => (one === gone ? fresh : [one]));
  const idle = !swapped.some(({ lesson, step }) => lesson === gone.lesson && !step.must);
  return withMusts(idle ? swapped.filter(({ lesson }) => lesson !== gone.lesson) : swapped);
}

/** The same steps with minutes that fill the time as near as they can. */
export function fitted(steps: Steps, minutes: number): PlannedStep[] {
  const times = allot(
    steps.map(({ step }) => step),
    minutes,
  );
  return steps.map((one, index) => ({ ...one, minutes: times[index] ?? one.minutes }));
}
