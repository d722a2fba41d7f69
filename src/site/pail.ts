// What the pages around "Guess the pail" send to the browser.
import { PAIL_STANDARDS } from '../../shared/board/pail/pailSheet.ts';
import { pailPlan, type PailPlan } from '../../shared/board/pail/pailPlan.ts';
import type { Words } from '../../shared/words/words.ts';
import { boardInput } from './board.ts';
import { wordsOf } from './words.ts';

const SHEET = 'barn.pail.sheet.';

/** The plan of the page in a language. */
export function pailPlanOf(lang: string): PailPlan {
  return pailPlan(boardInput(lang));
}

/** The words that these pages share, and those under other names of the board ("farm"). */
export function pailWords(lang: string, more: readonly string[] = []): Words {
  const { entries } = wordsOf(lang);
  const kept = ['pail', 'unit', ...more].map((name) => `barn.${name}.`);
  const own = Object.entries(entries).filter(
    // The data sheet's words are many, and stand on its page alone.
    ([key]) => kept.some((start) => key.startsWith(start)) && !key.startsWith(SHEET),
  );
  return { lang, entries: Object.fromEntries(own) };
}

/** The words of the data sheet, with those that every sheet shares. */
export function pailSheetWords(lang: string): Words {
  const { entries } = wordsOf(lang);
  const own = Object.entries(entries).filter(
    ([key]) =>
      /^(barn\.(pail\.sheet|milking)|sheet\.(grades|unit|picture|weekday|month|foot))\./.test(key) ||
      /^sheet\.(answer|math|name|date-line|class|and|and-before-i|between-and|date-year|desk\.(letter|a4)|key\.\w+)$/.test(
        key,
      ) ||
      PAIL_STANDARDS.some((code) => key === `sheet.standard.${code}`) ||
      key === 'barn.pail.title' ||
      key.startsWith('sheet.colophon.'),
  );
  return { lang, entries: Object.fromEntries(own) };
}
