// What a teacher should hear of a date before anything else: that it is odd, and when other groups are on the farm.
import { isoDate } from '../calendar/day.ts';
import { clockText, dateText } from '../quantity/show.ts';
import { say, type Words } from '../words/words.ts';
import { oddDate } from './cautions.ts';
import { weekdayText } from './tripText.ts';
import { takenOn, type TakenSpan } from './visits/taken.ts';

/** Sentences about a date, as of the farm's day (a day number). Two groups of the same hours are told once. */
export function dateNotes(words: Words, date: string, asOf: number, taken: readonly TakenSpan[]): string[] {
  const odd = oddDate(date, asOf);
  const told = takenOn(taken, date).map(({ from, to }) =>
    say(words, 'trip.date.taken', { from: clockText(from, words.lang), to: clockText(to, words.lang) }),
  );
  if (odd !== null) {
    const today = dateText(isoDate(asOf), words.lang);
    told.unshift(
      say(words, `trip.date.${odd}`, { today, weekday: weekdayText(date, words.lang, 'weekday') }),
    );
  }
  return [...new Set(told)];
}
