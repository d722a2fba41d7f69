// The mean day of each doe of the week, for the things to do that pick one.
import type { DoeWeek } from '../../herd/week.ts';
import type { BoardInput } from '../types.ts';

/** A doe and her mean day of the window, mL. */
export interface DayMean {
  readonly doe: DoeWeek;
  readonly mean_mL: number;
}

/** The does of the week whose mean day is known, those milked twice a day first, else in the list's order. */
export function dayMeans({ week, figures }: BoardInput): DayMean[] {
  const known = week.does.flatMap((doe): DayMean[] => {
    const mean_L = figures.figures[`doe.${doe.id}.week.dailyMean`]?.value ?? null;
    return mean_L === null ? [] : [{ doe, mean_mL: mean_L * 1000 }];
  });
  const isTwice = ({ doe }: DayMean) => doe.phase === 'twice a day';
  return [...known.filter(isTwice), ...known.filter((one) => !isTwice(one))];
}
