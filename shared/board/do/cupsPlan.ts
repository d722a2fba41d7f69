// The milk that can be shared out among children: computed at build time.
import { childrenServed } from '../../drawing/childrenServed.ts';
import { UNIT_ML } from '../../quantity/units.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { dayAmount, dayUnit, jarAmount, jarScale, SERVING_ML, servings } from '../shown.ts';
import type { BoardInput } from '../types.ts';
import type { CupsPlan, CupsRound } from './cups.ts';
import { dayMeans } from './dayMeans.ts';

/** Most children that are drawn. */
export const MOST_FIGURES = 24;
const MOST_JARS = 12;
const MOST_DOES = 3;
// More than a farm of a thousand does: a slip in the book, and too wide for a block.
const MOST_CHILDREN = 9999;

/** The herd's newest full day and the days of a few does; null where no milk is left for a cup. */
export function cupsPlan(input: BoardInput): CupsPlan | null {
  const { week, jar_mL } = input;
  // The newest day with the most milkings, so that "all our does" is no half of them.
  const most = Math.max(1, ...week.days.map(({ rows }) => rows));
  const fullDay = week.days.findLast(({ rows }) => rows === most);
  const isHerd = week.does.filter(({ milkings }) => milkings.length > 0).length > 1;
  const alone = chanceOf(`cups/${week.window?.to ?? ''}`)
    .shuffle(dayMeans(input))
    .slice(0, MOST_DOES);
  const rounds = [
    ...(fullDay && isHerd ? [{ name: '', mL: fullDay.total_mL }] : []),
    ...alone.map(({ doe, mean_mL }) => ({ name: doe.name, mL: mean_mL })),
  ].flatMap(({ name, mL }) => {
    const round = roundOf(input, name, mL);
    return round ? [round] : [];
  });
  const perJar = jar_mL / SERVING_ML;
  const isEven = Math.abs(perJar - Math.round(perJar)) < 1e-6;
  if (rounds.length === 0) return null;
  return {
    unit: dayUnit(input) === 'L' ? 'L' : 'cup',
    perJar: isEven ? Math.round(perJar) : null,
    rounds,
  };
}

function roundOf(input: BoardInput, name: string, mL: number): CupsRound | null {
  const { n, text } = dayAmount(input, mL);
  // Shared out from the amount that is shown, so that sixteen cups are enough for sixteen.
  const shown_mL = n * UNIT_ML[dayUnit(input)].valueOf();
  const children = servings(shown_mL);
  if (children < 1 || children > MOST_CHILDREN) return null;
  const jarEach = jarScale(shown_mL, input.jar_mL, MOST_JARS);
  const jars = shown_mL / (input.jar_mL * jarEach);
  return {
    name,
    amount: text,
    n,
    jarsText: jarAmount(input, shown_mL).text,
    fills: Array.from({ length: Math.ceil(jars - 1e-9) }, (_, place) => Math.min(1, jars - place)),
    jarEach,
    children,
    each: childrenServed(children, MOST_FIGURES).each,
  };
}
