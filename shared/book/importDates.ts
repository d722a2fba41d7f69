// Dates in an imported file: which day a text means, and when a person has to say it.
import { dayNumber } from '../calendar/day.ts';
import type { DateOrder } from './importTypes.ts';

/** Gives the ISO dates that a text may mean: none, one, or two with the month-first reading before the other. */
export type DatesMeant = (text: string) => readonly string[];

/** How the dates of one file are read. */
export interface DateReading {
  /** The day number of a text; `ask` where it may be two days and nothing tells which. */
  readonly dayOf: (text: string) => number | 'ask' | null;
  /** The first text that may be two days, where somebody has to say which is meant. */
  readonly ask: string | null;
}

const TWO_NUMBERS = /^(\d{1,2})([-/ ])(\d{1,2})\2(\d{4}|\d{2})$/;

/** Which order a text proves: `5/21/2026` can only be month first. Null where it proves none. */
export function orderShown(text: string): DateOrder | null {
  const match = TWO_NUMBERS.exec(text.trim());
  if (!match) return null;
  const [first, second] = [Number(match[1]), Number(match[3])];
  if (second > 12 && first <= 12) return 'month first';
  return first > 12 && second <= 12 ? 'day first' : null;
}

/**
 * Reads the dates of a file. A date that may be two days is read month first where the file's other dates prove that
 * order and none proves the other one; day first only where a person said so, since a wrong guess would be a
 * milking on another day without a word.
 */
export function readDates(
  texts: readonly string[],
  chosen: DateOrder | null,
  datesMeant: DatesMeant,
): DateReading {
  const shown = new Set(texts.map(orderShown));
  const order = chosen ?? (shown.has('month first') && !shown.has('day first') ? 'month first' : null);
  const known = new Map<string, number | 'ask' | null>();
  const dayOf = (text: string) => {
    let day = known.get(text);
    if (day === undefined) known.set(text, (day = dayMeant(text, order, datesMeant)));
    return day;
  };
  return { dayOf, ask: texts.find((text) => dayOf(text) === 'ask') ?? null };
}

function dayMeant(text: string, order: DateOrder | null, datesMeant: DatesMeant): number | 'ask' | null {
  const meant = datesMeant(text.trim());
  const [first, second] = meant;
  if (first === undefined) return null;
  if (second === undefined) return dayNumber(first);
  if (order === null) return 'ask';
  return dayNumber(order === 'month first' ? first : second);
}
