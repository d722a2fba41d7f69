// What an entry says on an open page, in its language and the farm's units. Fetched only when one comes.
import { dayNumber } from '../../../shared/calendar/day.ts';
import { volumeWords } from '../../../shared/board/volumeWords.ts';
import type { EntryEvent } from '../../../shared/book/types.ts';
import { amount_mL } from '../../../shared/quantity/amount.ts';
import { dateText, spanText } from '../../../shared/quantity/show.ts';
import { shownUnit } from '../../../shared/quantity/units.ts';
import { say, type Words } from '../../../shared/words/words.ts';

/** What the words of an entry hang on. */
export interface ToldWith {
  readonly words: Words;
  readonly units: 'us' | 'metric';
}

/** An entry in two or three sentences: who, when, how much; the week's milk; whether its day is in it. */
export function tellEntry(event: EntryEvent, { words, units }: ToldWith): string[] {
  const unit = shownUnit(units);
  const { name, amount, use, window, weekTotal_L, date } = event;
  const when = whenText(event, words);
  const [key, shown] =
    amount === null
      ? ['struck', '']
      : [use === 'kept' ? 'amount' : use, volumeWords(words, amount_mL(amount).valueOf(), unit)];
  const told = [say(words, `live.${key}`, { name, when, amount: shown })];
  if (window === null || weekTotal_L === null) return told;
  const span = spanText(window.from, window.to, words.lang);
  told.push(say(words, 'live.week', { span, amount: volumeWords(words, weekTotal_L * 1000, unit) }));
  if (date > window.to && amount !== null) told.push(say(words, 'live.joins'));
  return told;
}

/** `this morning`, `yesterday evening`, `evening of May 3, 2026`. */
function whenText({ date, milking, today }: EntryEvent, words: Words): string {
  const ago = today === null ? null : (dayNumber(today) ?? 0) - (dayNumber(date) ?? 0);
  const day = ago === 0 ? 'today' : ago === 1 ? 'yesterday' : 'date';
  return say(words, `live.when.${day}${milking === 'am' ? 'Am' : 'Pm'}`, {
    date: dateText(date, words.lang),
  });
}
