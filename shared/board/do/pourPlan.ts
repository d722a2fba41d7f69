// Whose milk can be poured: computed at build time, so that no page carries it.
import { mixedText, wholeParts } from '../../quantity/show.ts';
import { UNIT_ML } from '../../quantity/units.ts';
import { middleDoe } from '../howMuch.ts';
import { dayAmount, dayUnit } from '../shown.ts';
import type { BoardInput } from '../types.ts';
import { dayMeans } from './dayMeans.ts';
import type { PourPlan } from './pour.ts';

const MOST_DIPS = 60;
const MOST_JARS = 24;
const ROUNDS = 4;

/** Mean days of the doe in the middle and of a few others; null where no doe's day is known, or none fits on the page. */
export function pourPlan(input: BoardInput): PourPlan | null {
  const middle = middleDoe(input);
  if (!middle) return null;
  const unit = dayUnit(input) === 'L' ? 'L' : 'cup';
  const dip_mL = UNIT_ML[unit].valueOf() * (unit === 'L' ? 0.5 : 1);
  const others = dayMeans(input).filter(({ doe }) => doe.id !== middle.doe.id);
  const rounds = [middle, ...others].flatMap(({ doe, mean_mL }) => {
    const { n, text } = dayAmount(input, mean_mL);
    const dips = Math.round((n * UNIT_ML[unit].valueOf()) / dip_mL);
    // What is shown is poured: sixteen cups fill two jars of eight, whatever the exact mean.
    const poured_mL = dips * dip_mL;
    const needed = Math.ceil(poured_mL / input.jar_mL - 1e-9);
    if (dips < 1 || dips > MOST_DIPS || needed > MOST_JARS) return [];
    const quarters = (poured_mL / input.jar_mL) * 4;
    // At least a quarter, so that no milk is told as none.
    const told = Math.max(1, wholeParts(quarters));
    const jarsText = mixedText(told, 4, input.lang);
    const exact = Math.abs(quarters - told) < 1e-9;
    return [{ name: doe.name, doe: doe.id, dips, amount: text, n, jarsText, exact, needed }];
  });
  if (rounds.length === 0) return null;
  return { dip_mL, jar_mL: input.jar_mL, unit, rounds: rounds.slice(0, ROUNDS) };
}
