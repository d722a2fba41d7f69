// What the board says after a tap: a short text for all, and one that older children are told as well.
import { say, type Slots, type Words } from '../../words/words.ts';

/** An explanation that follows a tap. */
export interface Told {
  readonly right: boolean;
  readonly text: string;
  /** What the older level is told besides; null where there is no more to tell. */
  readonly more: string | null;
}

/** The explanation under a key: its `short` text and, where the key has one, its `more`. */
export function tellTap(words: Words, key: string, right: boolean, slots: Slots = {}): Told {
  const more = words.entries[`${key}.more`] === undefined ? null : say(words, `${key}.more`, slots);
  return { right, text: say(words, `${key}.short`, slots), more };
}

/** All texts of some explanations, each once. */
export function textsOf(all: readonly Told[]): string[] {
  return [...new Set(all.flatMap(({ text, more }) => (more === null ? [text] : [text, more])))];
}
