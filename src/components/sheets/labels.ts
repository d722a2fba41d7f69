// Labels of figures as text: a name as it stands, words in the reader's language.
import type { Label } from '../../../shared/sheet/picture.ts';
import { tellText } from '../../../shared/sheet/tell.ts';
import type { Words } from '../../../shared/words/words.ts';

/** A label as text; in Spanish a weekday that stands alone is written with a capital on a card. */
export function labelText(words: Words, label: Label | null): string {
  if (label === null) return '';
  const text = typeof label === 'string' ? label : tellText(words, label);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
