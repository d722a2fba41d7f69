// The farm's own steps of milking, as its content file has them, and the facts that stand behind each.
import { MILKING_STEPS, type MilkingStepName } from '../board/howToMilk.ts';

/** A drawing of a step; a step without one is shown by its number. */
export type StepPicture = MilkingStepName | 'none';

/** All drawings that a step may name. */
export const STEP_PICTURES: readonly StepPicture[] = Object.freeze([
  ...MILKING_STEPS.map(({ name }) => name),
  'none',
]);

/** One step in one language. */
export interface RoutineStep {
  readonly picture: StepPicture;
  /** Done again for every doe, or once for a milking. */
  readonly each: 'doe' | 'milking';
  /** Two or three words. */
  readonly name: string;
  readonly do: string;
  /** Why, for adults. */
  readonly why: string;
  /** Why, for a child. */
  readonly child: string;
}

/** The steps in their order. */
export interface Routine {
  readonly title: string;
  readonly steps: readonly RoutineStep[];
}

/** Steps that follow one another and are taken equally often. `first` is the number of the first one, from 1. */
export interface StepRun {
  readonly each: RoutineStep['each'];
  readonly first: number;
  readonly steps: readonly RoutineStep[];
}

/** The steps parted into runs. */
export function stepRuns(steps: readonly RoutineStep[]): StepRun[] {
  const runs: { each: RoutineStep['each']; first: number; steps: RoutineStep[] }[] = [];
  for (const [index, step] of steps.entries()) {
    const last = runs.at(-1);
    if (last?.each === step.each) last.steps.push(step);
    else runs.push({ each: step.each, first: index + 1, steps: [step] });
  }
  return runs;
}

/** Ids of the facts behind the steps, each once, in the order of the steps. */
export const ROUTINE_FACTS: readonly string[] = Object.freeze([
  'milking-order',
  'not-sterile',
  'one-cloth',
  'own-side',
  'strip-cup',
  'teat-dip',
  'teat-stays-open',
  'milking-gentle',
  'jars-labeled',
  'wash-order',
]);

/** Ids of the facts that warn: when to stop, what stings, what burns, whose milk is kept apart. */
export const ROUTINE_CAUTIONS: readonly string[] = Object.freeze([
  'strip-signs',
  'treated-apart',
  'dip-care',
  'hot-wash',
  'raw-milk',
]);
