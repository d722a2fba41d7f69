// What there is to do, from the herd's own week: the plan of each thing, and everything that it may say.
import type { Words } from '../../words/words.ts';
import type { ActivityName } from '../topics.ts';
import type { BoardInput } from '../types.ts';
import { pourSays, type PourPlan } from './pour.ts';
import { pourPlan } from './pourPlan.ts';
import { dayPlan } from './dayPlan.ts';
import type { DayPlan } from './doeDay.ts';
import { stepsSays } from './steps.ts';
import { guessSays, type GuessPlan } from './guess.ts';
import { guessPlan } from './guessPlan.ts';
import { cupsSays, type CupsPlan } from './cups.ts';
import { cupsPlan } from './cupsPlan.ts';
import { yearSays, type YearPlan } from './year.ts';
import { yearPlan } from './yearPlan.ts';
import { twoMilksSays, type TwoMilksPlan } from './twoMilks.ts';
import { twoMilksPlan } from './twoMilksPlan.ts';
import { facesSays, type FacesPlan } from './faces.ts';
import { facesPlan } from './facesPlan.ts';
import { menuPlan, menuSays, type MenuPlan } from './menu.ts';
import { squeezeSays } from './squeeze.ts';
import { washPlan, washSays, type WashPlan } from './wash.ts';
import { udderPartsSays } from './udderParts.ts';
import { whoseKidPlan, whoseKidSays, type WhoseKidPlan } from './whoseKid.ts';
import { grassSays } from './grass.ts';

/** The plans by the name of their activity. */
export interface Plans {
  readonly pour: PourPlan;
  readonly steps: DayPlan;
  readonly guess: GuessPlan;
  readonly cups: CupsPlan;
  readonly year: YearPlan;
  readonly 'two-milks': TwoMilksPlan;
  readonly faces: FacesPlan;
  readonly menu: MenuPlan;
  readonly squeeze: DayPlan;
  readonly wash: WashPlan;
  readonly 'udder-parts': DayPlan;
  readonly 'whose-kid': WhoseKidPlan;
  readonly grass: DayPlan;
}

/** A kind of thing to do. */
interface Doing<Plan> {
  /** Null where this week cannot carry it. */
  readonly plan: (input: BoardInput) => Plan | null;
  readonly says: (words: Words, plan: Plan) => string[];
}

const DOINGS: { readonly [Name in keyof Plans]: Doing<Plans[Name]> } = Object.freeze({
  pour: { plan: pourPlan, says: pourSays },
  steps: { plan: dayPlan, says: stepsSays },
  guess: { plan: guessPlan, says: guessSays },
  cups: { plan: cupsPlan, says: cupsSays },
  year: { plan: yearPlan, says: yearSays },
  'two-milks': { plan: twoMilksPlan, says: twoMilksSays },
  faces: { plan: facesPlan, says: facesSays },
  menu: { plan: menuPlan, says: menuSays },
  squeeze: { plan: dayPlan, says: squeezeSays },
  wash: { plan: washPlan, says: washSays },
  'udder-parts': { plan: dayPlan, says: udderPartsSays },
  'whose-kid': { plan: whoseKidPlan, says: whoseKidSays },
  grass: { plan: dayPlan, says: grassSays },
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
