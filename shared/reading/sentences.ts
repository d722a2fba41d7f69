// A text in its sentences, and a sentence in its words.

/** A sentence and where in the text it begins. */
export interface Sentence {
  readonly text: string;
  readonly offset: number;
}

// A point after these is no end. From memory: the usual short forms of both languages.
const SHORT = /(?:^|[\s(])(?:Mr|Mrs|Ms|Dr|St|vs|e\.g|i\.e|Sr|Sra|Srta|Dra|Ud|Uds|p\. ?ej)\.$/;
const END = /(?<=[.!?…]["'”’»)]*)\s+(?=["'“‘«(¿¡]*[\p{Lu}\d])/gu;

/**
 * The sentences of one paragraph. A sentence ends with a point, question or exclamation mark before a capital, a
 * number or an opening mark; what stands at the end without one is a sentence too.
 * @example sentencesOf('She eats. Does she sleep?').length // => 2
 */
export function sentencesOf(text: string): Sentence[] {
  const sentences: Sentence[] = [];
  let start = 0;
  const close = (end: number) => {
    const raw = text.slice(start, end);
    const trimmed = raw.trim();
    if (/[\p{L}\d]/u.test(trimmed))
      sentences.push({ text: trimmed, offset: start + (raw.length - raw.trimStart().length) });
  };
  for (const { index, 0: gap } of text.matchAll(END)) {
    if (SHORT.test(text.slice(start, index))) continue;
    close(index);
    start = index + gap.length;
  }
  close(text.length);
  return sentences;
}

/**
 * The words of a text whose numbers are spelled out. A word with a hyphen or an apostrophe is one.
 * @example wordsIn("It's twenty-one!") // => ["It's", 'twenty-one']
 */
export function wordsIn(spelled: string): string[] {
  return spelled.match(/\p{L}[\p{L}\p{M}]*(?:['’-][\p{L}\p{M}]+)*/gu) ?? [];
}
