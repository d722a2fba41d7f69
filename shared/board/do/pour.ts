// Pour a day's milk into jars: first a guess how many jars it takes, then cup by cup.
import { say, type Words } from '../../words/words.ts';
import { middleDoe } from '../howMuch.ts';
import { dayAmount, dayUnit, jarAmount } from '../shown.ts';
import { UNIT_ML } from '../../quantity/units.ts';
import type { BoardInput } from '../types.ts';

/** What is poured. */
export interface PourPlan {
  readonly name: string;
  readonly breed: string;
  readonly doe: string;
  /** Dips of the cup until the pail is empty, and the milk of one, mL. */
  readonly dips: number;
  readonly dip_mL: number;
  readonly jar_mL: number;
  /** The day's milk in its unit, and the unit's key under `barn.unit`. */
  readonly amount: string;
  readonly n: number;
  readonly unit: 'cup' | 'L';
  /** Jars that it fills, to the half, and how that is written. */
  readonly jars: number;
  readonly jarsText: string;
  /** Numbers of jars to guess from; the number of jars that are touched by milk is among them. */
  readonly choices: readonly number[];
  readonly needed: number;
}

const MOST_DIPS = 40;
const CHOICES = 4;

/** The middle doe's mean day, shared into dips of a cup or half a litre; null where no doe's day is known, or none is left to pour. */
export function pourPlan(input: BoardInput): PourPlan | null {
  const middle = middleDoe(input);
  if (!middle) return null;
  const { n, text } = dayAmount(input, middle.mean_mL);
  const unit = dayUnit(input) === 'L' ? 'L' : 'cup';
  const dip_mL = UNIT_ML[unit].valueOf() * (unit === 'L' ? 0.5 : 1);
  const dips = Math.round((n * UNIT_ML[unit].valueOf()) / dip_mL);
  if (dips < 1 || dips > MOST_DIPS) return null;
  // What is shown is poured: sixteen cups fill two jars of eight, whatever the exact mean.
  const jars = jarAmount(input, dips * dip_mL);
  const needed = Math.ceil((dips * dip_mL) / input.jar_mL - 1e-9);
  const first = Math.max(1, needed - (needed % 3));
  return {
    name: middle.doe.name,
    breed: middle.doe.breed,
    doe: middle.doe.id,
    dips,
    dip_mL,
    jar_mL: input.jar_mL,
    amount: text,
    n,
    unit,
    jars: jars.n,
    jarsText: jars.text,
    choices: Array.from({ length: CHOICES }, (_, place) => first + place),
    needed,
  };
}

/** What the board says after a guess: whether it was so, and why. */
export function pourVerdict(words: Words, plan: PourPlan, guess: number): string {
  const found = guess === plan.needed ? 'right' : guess < plan.needed ? 'more' : 'fewer';
  return say(words, `barn.do.pour.${found}`, slotsOf(words, plan));
}

/** Everything that this page may say, so that it can be recorded beforehand. */
export function pourSays(words: Words, plan: PourPlan): string[] {
  return [
    say(words, 'barn.do.pour.ask', slotsOf(words, plan)),
    say(words, 'barn.do.pour.pour', slotsOf(words, plan)),
    ...new Set(plan.choices.map((guess) => pourVerdict(words, plan, guess))),
  ];
}

/** The slots of this page's texts. */
export function slotsOf(words: Words, plan: PourPlan) {
  return {
    name: plan.name,
    n: plan.needed,
    amount: `${plan.amount} ${say(words, `barn.unit.${plan.unit}`, { n: plan.n })}`,
    jars: plan.jarsText,
  };
}
