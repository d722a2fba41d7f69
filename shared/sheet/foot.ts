// What stands at the foot of a sheet's pages: farm and week, grade, seed and code, page numbers.
import { GRADES_OF, topGrade } from '../tasks/standards.ts';
import { say, type Words } from '../words/words.ts';
import { date, msg, text } from './message.ts';
import type { Sheet, Span } from './sheet.ts';
import { tellText } from './tell.ts';

/** The farm and the week whose milk the sheet tells, or that the book is empty. */
export function milkOf(sheet: Sheet, words: Words, farm: string): string {
  if (!sheet.week) return say(words, 'sheet.milk-none', { farm });
  return tellText(words, msg('sheet.milk-of', { farm: text(farm), ...spanSlots(sheet.week) }));
}

/** The line at a task whose numbers come from an earlier week. */
export function earlierOf(earlier: Span, words: Words): string {
  return tellText(words, msg('sheet.earlier', spanSlots(earlier)));
}

const spanSlots = ({ from, to }: Span) =>
  ({ from: date(from), to: { is: 'date', iso: to, style: 'year' } }) as const;

/** Whom a sheet is for: its grade, or the whole band where no grade was picked. */
export function gradeText({ band, grade }: Pick<Sheet, 'band' | 'grade'>, words: Words): string {
  const whole = grade === topGrade(band) && GRADES_OF[band].length > 1;
  return say(words, whole ? `sheet.grades.${band}` : `sheet.grade.${grade}`);
}

/** The lines at the foot of a page; `page` counts from 1 over the pages of this copy alone. */
export function footLines(
  sheet: Sheet,
  words: Words,
  farm: string,
  at: { readonly page: number; readonly pages: number },
): { readonly milk: string; readonly code: string; readonly page: string } {
  return {
    milk: milkOf(sheet, words, farm),
    code: say(words, 'sheet.foot.seed', {
      grades: gradeText(sheet, words),
      seed: sheet.seed,
      code: sheet.code,
    }),
    page: say(words, 'sheet.foot.page', at),
  };
}
