// What the formulas need to know of a text: words, sentences, syllables, letters, words that are not known.
import { isFamiliar } from './familiar.ts';
import { sentencesOf, wordsIn } from './sentences.ts';
import { spellOut, type ReadingLanguage } from './spellOut.ts';
import { syllablesOf } from './syllables.ts';

/** Counts of a text; sums of the counts of its parts. */
export interface Counts {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
  readonly letters: number;
  /** Words of three syllables and more. */
  readonly long: number;
  /** Words that are not known; 0 in Spanish, for which we have no list. */
  readonly unknown: number;
}

/** No text at all. */
export const NO_COUNTS: Counts = { words: 0, sentences: 0, syllables: 0, letters: 0, long: 0, unknown: 0 };

/** The words of a sentence as they are read: numbers and signs spelled out. */
export const readWords = (sentence: string, lang: ReadingLanguage): string[] =>
  wordsIn(spellOut(sentence, lang));

/** Counts of one sentence. `explained` are the words that the text has explained. */
export function countSentence(
  sentence: string,
  lang: ReadingLanguage,
  explained: ReadonlySet<string> = new Set(),
): Counts {
  const words = readWords(sentence, lang);
  const syllables = words.map((word) => syllablesOf(word, lang));
  return {
    words: words.length,
    sentences: words.length > 0 ? 1 : 0,
    syllables: syllables.reduce((sum, one) => sum + one, 0),
    letters: words.reduce((sum, word) => sum + (word.match(/\p{L}/gu)?.length ?? 0), 0),
    long: syllables.filter((one) => one >= 3).length,
    unknown: lang === 'en' ? unknownIn(words, explained).length : 0,
  };
}

/**
 * The words of a sentence that are not known. A capital within a sentence marks a name, which counts as known.
 * @example unknownIn(['Milk', 'holds', 'lactose', 'in', 'Ohio'], new Set()) // => ['lactose']
 */
export function unknownIn(words: readonly string[], explained: ReadonlySet<string>): string[] {
  return words.filter((word, place) => !(place > 0 && /^\p{Lu}/u.test(word)) && !isFamiliar(word, explained));
}

/** Counts of a whole text: paragraphs parted by line breaks. */
export function countText(
  text: string,
  lang: ReadingLanguage,
  explained: ReadonlySet<string> = new Set(),
): Counts {
  return text
    .split('\n')
    .flatMap(sentencesOf)
    .map((sentence) => countSentence(sentence.text, lang, explained))
    .reduce(addCounts, NO_COUNTS);
}

/** The sum of two counts. */
export function addCounts(a: Counts, b: Counts): Counts {
  return {
    words: a.words + b.words,
    sentences: a.sentences + b.sentences,
    syllables: a.syllables + b.syllables,
    letters: a.letters + b.letters,
    long: a.long + b.long,
    unknown: a.unknown + b.unknown,
  };
}
