// What stands in the margins of a sheet's pages: farm and week, seed and code, page numbers.
import { say, type Words } from '../words/words.ts';
import { date, msg, text } from './message.ts';
import type { PageWords } from './pageStyle.ts';
import type { Sheet } from './sheet.ts';
import { tellText } from './tell.ts';

/** The farm and the week whose milk the sheet tells, or that the book is empty. */
export function milkOf(sheet: Sheet, words: Words, farm: string): string {
  if (!sheet.week) return say(words, 'sheet.milk-none', { farm });
  const to = { is: 'date', iso: sheet.week.to, style: 'year' } as const;
  return tellText(words, msg('sheet.milk-of', { farm: text(farm), from: date(sheet.week.from), to }));
}

/** The words of the margins in a language. */
export function marginWords(sheet: Sheet, words: Words, farm: string): PageWords {
  const grades = say(words, `sheet.grades.${sheet.band}`);
  return {
    left: milkOf(sheet, words, farm),
    seed: say(words, 'sheet.foot.seed', { grades, seed: sheet.seed, code: sheet.code }),
    page: say(words, 'sheet.foot.page', { page: '{page}', pages: '{pages}' }),
    key: say(words, 'sheet.foot.key'),
  };
}
