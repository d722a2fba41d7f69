// Put the steps of a milking in order, by tapping what comes next; each tap is explained.
// The order is common practice, no source; the sheets' shorter order (shared/tasks/milkingSteps.ts) is part of it.
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { daySlots, type DayPlan } from './doeDay.ts';
import { tellTap, textsOf, type Told } from './told.ts';

/** A step of a milking. */
export type MilkingStep = 'wash' | 'brush' | 'wipe' | 'strip' | 'milk' | 'dip' | 'strain' | 'chill';

/** The steps in their order. */
export const STEPS_IN_ORDER: readonly MilkingStep[] = Object.freeze([
  'wash',
  'brush',
  'wipe',
  'strip',
  'milk',
  'dip',
  'strain',
  'chill',
]);

/** The steps as they lie mixed before a child; never in their right order. Any seed gives a mix. */
export function stepsMixed(seed: number): MilkingStep[] {
  const mixed = chanceOf(`steps-${seed}`).shuffle(STEPS_IN_ORDER);
  const isInOrder = mixed.every((step, place) => step === STEPS_IN_ORDER[place]);
  return isInOrder ? [...mixed.slice(1), ...mixed.slice(0, 1)] : mixed;
}

/** What the board says when `tapped` is tapped and `done` steps are already in order. */
export function stepsVerdict(words: Words, plan: DayPlan, done: number, tapped: MilkingStep): Told {
  const next = STEPS_IN_ORDER[done];
  if (tapped !== next) return tellTap(words, `barn.do.steps.later.${laterKey(tapped, next)}`, false);
  if (tapped !== 'milk') return tellTap(words, `barn.do.steps.right.${tapped}`, true);
  const { key, slots } = daySlots(words, plan.day);
  return tellTap(words, `barn.do.steps.right.milk.${key}`, true, slots);
}

// What is done with the milk has another reason to wait before there is any, and after.
function laterKey(tapped: MilkingStep, next: MilkingStep | undefined): string {
  if (tapped !== 'strain' && tapped !== 'chill') return tapped;
  if (next === 'dip') return 'doeFirst';
  return next === 'strain' ? 'unstrained' : `${tapped}NoMilk`;
}

/** Everything that this page may say. */
export function stepsSays(words: Words, plan: DayPlan): string[] {
  const taps = STEPS_IN_ORDER.flatMap((_, done) =>
    STEPS_IN_ORDER.slice(done).map((step) => stepsVerdict(words, plan, done, step)),
  );
  return [
    say(words, 'barn.do.steps.ask'),
    say(words, 'barn.do.steps.done'),
    say(words, 'barn.do.steps.raw'),
    ...STEPS_IN_ORDER.map((step) => say(words, `barn.do.steps.name.${step}`)),
    ...textsOf(taps),
  ];
}
