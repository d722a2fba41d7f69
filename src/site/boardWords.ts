// The words that a page of the board sends to the browser: only those that it may need.
import type { Words } from '../../shared/words/words.ts';
import { wordsOf } from './words.ts';

/** Words of one thing to do, those that all of them share, and the names of units and milkings. */
export function doWords(lang: string, activity: string): Words {
  const kept = [`barn.do.${activity}.`, 'barn.unit.', 'barn.milking.', 'barn.doe.'];
  const { entries } = wordsOf(lang);
  const own = Object.entries(entries).filter(
    // Keys right under `barn.do` belong to all.
    ([key]) => kept.some((start) => key.startsWith(start)) || /^barn\.do\.\w+$/.test(key),
  );
  return { lang, entries: Object.fromEntries(own) };
}
