// How the Milk book's page says amounts, milkings and days in the reader's language.
import type { Milking } from '../../../../shared/book/nextMilking.ts';
import { shownAmount } from '../../../../shared/book/taps.ts';
import type { BookRow } from '../../../../shared/book/types.ts';
import { dayNumber, isoDate } from '../../../../shared/calendar/day.ts';
import type { Amount } from '../../../../shared/quantity/amount.ts';
import { dateText } from '../../../../shared/quantity/show.ts';
import { say, type Words } from '../../../../shared/words/words.ts';

/** The word of an amount's unit: a part of one takes the word that one takes. */
export function unitWord(words: Words, { num, den, unit }: Amount): string {
  const n = num / den;
  return say(words, `book.unit.${unit}`, { n: n > 0 && n < 1 ? 1 : n });
}

/** Such as `9½ cups`. */
export function amountWords(words: Words, amount: Amount): string {
  return `${shownAmount(amount, words.lang)} ${unitWord(words, amount)}`;
}

/** The date of a milking with its weekday. */
export function dayWords({ day }: Pick<Milking, 'day'>, lang: string): string {
  return dateText(isoDate(day), lang, 'day');
}

/** Such as `Thu, May 21, morning`. */
export function milkingWords(words: Words, at: Milking): string {
  return say(words, 'book.at', {
    date: dayWords(at, words.lang),
    time: say(words, `book.time.${at.milking}`),
  });
}

/** When her last milking was, seen from another one. */
export function lastWords(words: Words, last: BookRow, at: Milking): string {
  const day = dayNumber(last.date) ?? at.day;
  const amount = shownAmount(last.amount, words.lang);
  if (at.day - day < 2) return say(words, 'book.line.last', { amount });
  return say(words, 'book.line.last-on', { amount, date: dayWords({ day }, words.lang) });
}
