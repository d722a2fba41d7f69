// What the pages around "Guess the pail" send to the browser.
import { pailPlan, type PailPlan } from '../../shared/board/pail/pailPlan.ts';
import type { Words } from '../../shared/words/words.ts';
import { boardInput } from './board.ts';
import { wordsOf } from './words.ts';

/** The plan of the page in a language. */
export function pailPlanOf(lang: string): PailPlan {
  return pailPlan(boardInput(lang));
}

/** The words that these pages share, and those under other names of the board ("farm"). */
export function pailWords(lang: string, more: readonly string[] = []): Words {
  const { entries } = wordsOf(lang);
  const kept = ['pail', 'unit', ...more].map((name) => `barn.${name}.`);
  const own = Object.entries(entries).filter(([key]) => kept.some((start) => key.startsWith(start)));
  return { lang, entries: Object.fromEntries(own) };
}
