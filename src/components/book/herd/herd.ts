// What the page of the herd is made from, and what its parts hand to each other.
import type { HerdAnswer, HerdBook, HerdChange } from '../../../../shared/book/herdBook.ts';
import type { UnitSystem } from '../../../../shared/herd/types.ts';
import { dateText } from '../../../../shared/quantity/show.ts';
import { say, type Words } from '../../../../shared/words/words.ts';

/** What the page carries. */
export interface HerdProps {
  readonly lang: string;
  readonly words: Words;
  /** The site's path with its last slash. */
  readonly base: string;
  readonly units: UnitSystem;
  /** The herd as it was when the site was built. */
  readonly herd: HerdBook;
  /** The milker's page, where a phone gives the farm's words. */
  readonly book: string;
}

/** How the page stands with the desk. */
export type HerdStatus = 'opening' | 'open' | 'no desk' | 'away' | 'words wanted';

/** What came of the last change. */
export type Told =
  | { readonly kind: 'busy' | 'saved' | 'away' }
  | { readonly kind: 'answer'; readonly file: string; readonly answer: Extract<HerdAnswer, { ok: false }> };

/** Hands a change to the desk; whether it was written. */
export type SendChange = (change: HerdChange) => Promise<boolean>;

/** A date as a page says it: with its weekday where it is of this year, else with its year; as written where it is none. */
export function dayWords(words: Words, date: string, today: string): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return date;
  return dateText(date, words.lang, date.slice(0, 4) === today.slice(0, 4) ? 'day' : 'long');
}

/** Which milkings are expected, in words. */
export function expectedWords(words: Words, milkings: readonly string[]): string {
  const key = milkings.length === 2 ? 'both' : milkings.length === 1 ? 'morning' : 'nothing';
  return say(words, `herdbook.expected.${key}`);
}
