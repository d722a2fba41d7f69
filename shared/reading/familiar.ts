// Which English words a child of the first grades knows: two published lists, and the endings that every word takes.
import { daleChall } from 'dale-chall';
import { spache } from 'spache';

// The published Dale-Chall list has "baby" (from memory); "math", "zero" and "okay" are words of every first grade
// (common practice, no source). Numbers in words are known to whoever may be asked them.
const ALSO = [
  'baby', 'math', 'zero', 'okay', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve',
  'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen', 'twenty', 'thirty', 'forty', 'fifty', 'sixty',
  'seventy', 'eighty', 'ninety', 'hundred', 'thousand', 'million', 'half', 'halves', 'third', 'fourth', 'fifth', 'sixth', 'eighth', 'point',
]; // prettier-ignore
const KNOWN: ReadonlySet<string> = new Set([...daleChall, ...spache, ...ALSO].map((word) => word.toLowerCase())); // prettier-ignore

// Forms of known words that no ending makes, and that the lists leave out (Dale-Chall counts inflections as known, from
// memory).
const IRREGULAR: ReadonlySet<string> = new Set([
  'became', 'began', 'bitten', 'bought', 'brought', 'built', 'caught', 'children', 'chose', 'chosen', 'drank', 'driven', 'drove', 'drunk',
  'eaten', 'fallen', 'fed', 'feet', 'felt', 'flew', 'fought', 'found', 'froze', 'gave', 'geese', 'given', 'gone', 'gotten', 'grew', 'grown',
  'heard', 'held', 'hidden', 'hid', 'kept', 'knew', 'known', 'laid', 'led', 'lost', 'made', 'meant', 'men', 'mice', 'paid', 'ran', 'ridden',
  'rode', 'rose', 'sang', 'sat', 'sent', 'shook', 'slept', 'sold', 'spoke', 'spoken', 'spent', 'stood', 'stuck', 'swam', 'swept', 'taken',
  'taught', 'teeth', 'thought', 'threw', 'told', 'understood', 'woke', 'women', 'wore', 'written', 'wrote',
]); // prettier-ignore

// Words that only look like a form of a known one: a liter is nothing that is lit.
const NO_FORMS: ReadonlySet<string> = new Set(['liter', 'fiber', 'digest']); // prettier-ignore

/**
 * The words that a word may be a regular form of: without plural, possessive, -ed, -ing, -er, -est and -ly.
 * @example stemsOf('carried').includes('carry') // => true
 */
export function stemsOf(word: string): string[] {
  if (NO_FORMS.has(word)) return [word];
  const stems = [word];
  // "milkers" are more than one who milks.
  if (/[^s]s$/.test(word)) stems.push(...stemsOf(word.slice(0, -1)));
  const cut = (ending: RegExp, ...backs: string[]) => {
    if (!ending.test(word)) return;
    const base = word.replace(ending, '');
    if (base.length < 2) return;
    stems.push(...backs.map((back) => base + back));
    // "stirring" has doubled its last letter.
    if (/([b-df-hj-np-tv-z])\1$/.test(base) && backs.includes('')) stems.push(base.slice(0, -1));
  };
  cut(/'s?$/, '');
  cut(/es$/, '');
  cut(/ies$/, 'y');
  cut(/ves$/, 'f', 'fe');
  cut(/ed$/, '', 'e');
  cut(/ied$/, 'y');
  cut(/ing$/, '', 'e');
  cut(/er$/, '', 'e');
  cut(/ier$/, 'y');
  cut(/est$/, '', 'e');
  cut(/iest$/, 'y');
  cut(/ly$/, '', 'le');
  cut(/ily$/, 'y');
  return stems;
}

const CONTRACTED = /(?:n't|'(?:re|ve|ll|d|m|s))$/;

/**
 * Whether an English word is known: it or its base form stands on a list, or among the words that the text has
 * explained. A word with hyphens is known where all its parts are.
 * @example isFamiliar('goats', new Set()) // => true
 */
export function isFamiliar(word: string, explained: ReadonlySet<string>): boolean {
  const plain = word.toLowerCase().replaceAll('’', "'");
  if (isOne(plain, explained)) return true;
  return plain.includes('-') && plain.split('-').every((part) => isOne(part, explained));
}

function isOne(word: string, explained: ReadonlySet<string>): boolean {
  if (word.length === 1) return true;
  if (CONTRACTED.test(word) && isOne(word.replace(CONTRACTED, ''), explained)) return true;
  return stemsOf(word).some((stem) => KNOWN.has(stem) || IRREGULAR.has(stem) || explained.has(stem));
}

/** The base forms of the words that a text explains: each word of "milking stand" by itself, too. */
export function explainedWords(words: readonly string[]): Set<string> {
  const parts = words.flatMap((word) =>
    word
      .toLowerCase()
      .replaceAll('’', "'")
      .split(/[\s,;/()]+/),
  );
  return new Set(
    parts.flatMap((part) => [...stemsOf(part), ...part.split('-')]).filter((part) => part !== ''),
  );
}
