// What the page "Guess the pail" is made from: a small part of the board's farm, the same from the build and from the desk.
import { civilFromDay } from '../../calendar/day.ts';
import type { BoardFarm } from '../types.ts';
import { guessPart, type GuessPart } from './guessRow.ts';
import type { PailBook } from './pailBook.ts';

/** The page's numbers: plain JSON. */
export interface PailPlan {
  readonly part: GuessPart;
  readonly jar_mL: number;
  readonly pail: PailBook;
  /** The month that the next milk is looked for where no day of it is in the book, 1 to 12; null where nothing can be told. */
  readonly month: number | null;
}

/** The plan from the board's farm. */
export function pailPlan({
  units,
  jar_mL,
  pail,
  year,
}: Pick<BoardFarm, 'units' | 'jar_mL' | 'pail' | 'year'>): PailPlan {
  const month = year.coming.ok ? civilFromDay(year.coming.start.day).month : null;
  return { part: guessPart(units), jar_mL, pail, month };
}

/** When guessing starts again: a day of the book, a month that is reckoned, with the next milking written down, or with new kids. */
export type Again =
  | { readonly key: 'day'; readonly date: string }
  | { readonly key: 'month'; readonly month: number }
  | { readonly key: 'silent' | 'open' };

/** When guessing starts again. */
export function againOf({ pail, month }: Pick<PailPlan, 'pail' | 'month'>): Again {
  // A herd that is milked today by its kiddings, but not by its book, has no day to wait for.
  if (pail.pause === 'silent') return { key: 'silent' };
  if (pail.from !== null) return { key: 'day', date: pail.from };
  return month === null ? { key: 'open' } : { key: 'month', month };
}
