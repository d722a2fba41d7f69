// What there is to do, from the herd's own week: the plan of each thing, and everything that it may say.
import type { Words } from '../../words/words.ts';
import type { ActivityName } from '../topics.ts';
import type { BoardInput } from '../types.ts';
import { pourPlan, pourSays, type PourPlan } from './pour.ts';
import { stepsPlan, stepsSays, type StepsPlan } from './steps.ts';

/** The plans by the name of their activity. */
export interface Plans {
  readonly pour: PourPlan;
  readonly steps: StepsPlan;
}

/** A kind of thing to do. */
interface Doing<Plan> {
  /** Null where this week cannot carry it. */
  readonly plan: (input: BoardInput) => Plan | null;
  readonly says: (words: Words, plan: Plan) => string[];
}

const DOINGS: { readonly [Name in keyof Plans]: Doing<Plans[Name]> } = Object.freeze({
  pour: { plan: pourPlan, says: pourSays },
  steps: { plan: stepsPlan, says: stepsSays },
});

/** Names of what there is to do, in the board's order. */
export const ACTIVITIES: readonly (keyof Plans & ActivityName)[] = Object.freeze(
  Object.keys(DOINGS) as (keyof Plans)[],
);

/** The plan of a thing to do and what it may say; a plan is null where this week cannot carry it. */
export function doingOf<Name extends keyof Plans>(
  name: Name,
  input: BoardInput,
  words: Words,
): { readonly plan: Plans[Name] | null; readonly says: readonly string[] } {
  const doing: Doing<Plans[Name]> = DOINGS[name];
  const plan = doing.plan(input);
  return { plan, says: plan === null ? [] : doing.says(words, plan) };
}
