// Holds a text against the limits of its grade band, and names the sentence that breaks one.
import type { Band } from '../quantity/grade.ts';
import { addCounts, countSentence, NO_COUNTS, readWords, unknownIn, type Counts } from './counts.ts';
import { explainedWords, stemsOf } from './familiar.ts';
import { daleChallScore, fleschKincaidGrade, inflesz } from './formulas.ts';
import { FEWEST_WORDS, GRADE_TOLERANCE, READING_LIMITS } from './limits.ts';
import { sentencesOf, type Sentence } from './sentences.ts';
import type { ReadingLanguage } from './spellOut.ts';

/** A paragraph, a line of a list, or a label. Labels are no prose: they do not count in means and scores. */
export interface ReadingPart {
  readonly text: string;
  /** Where it stands: new words are counted by it. */
  readonly step: string;
  readonly label?: true;
}

/** A limit that is broken. */
export interface Broken {
  readonly rule: 'longest' | 'mean' | 'new' | 'new-in-sentence' | 'words' | 'grade' | 'ease';
  readonly found: number;
  readonly limit: number;
  /** Number of the part among those given, and the sentence in it that is named. */
  readonly part: number;
  readonly sentence: Sentence;
  /** Number of the sentence in its part. */
  readonly nth: number;
  /** The words that are not known, where it is about these. */
  readonly unknown: readonly string[];
}

interface Read extends Counts {
  readonly part: number;
  readonly sentence: Sentence;
  readonly nth: number;
  readonly hard: readonly string[];
  readonly label: boolean;
}

/** What was found in a text: counts of its prose, and every broken limit in the order of the text. */
export interface Judged {
  readonly counts: Counts;
  readonly broken: readonly Broken[];
}

/** Judges a text of a band. `explained` are the words that it explains. */
export function judge(
  parts: readonly ReadingPart[],
  band: Band,
  lang: ReadingLanguage,
  explained: readonly string[],
): Judged {
  const known = explainedWords(explained);
  const read = parts.flatMap(({ text, label }, part) =>
    sentencesOf(text).map((sentence, nth): Read => {
      const hard = lang === 'en' ? unknownIn(readWords(sentence.text, lang), known) : [];
      return {
        ...countSentence(sentence.text, lang, known),
        part,
        sentence,
        nth,
        hard,
        label: label === true,
      };
    }),
  );
  const prose = read.filter(({ label }) => !label);
  const counts = prose.reduce<Counts>(addCounts, NO_COUNTS);
  const broken = [
    ...tooLong(read, band),
    ...newWords(read, parts, band),
    ...overall(prose, counts, band, lang),
  ];
  return { counts, broken };
}

function tooLong(read: readonly Read[], band: Band): Broken[] {
  const { longest: limit } = READING_LIMITS[band];
  return read.filter(({ words }) => words > limit).map((one) => breaks('longest', one, one.words, limit));
}

function newWords(read: readonly Read[], parts: readonly ReadingPart[], band: Band): Broken[] {
  const { newInStep, newInSentence } = READING_LIMITS[band];
  const broken: Broken[] = [];
  if (newInSentence !== null)
    for (const one of read) {
      const words = [...new Map(one.hard.map((word) => [baseOf(word), word.toLowerCase()])).values()];
      if (words.length > newInSentence)
        broken.push({ ...breaks('new-in-sentence', one, words.length, newInSentence), unknown: words });
    }
  if (newInStep !== null)
    for (const step of new Set(parts.map((part) => part.step))) {
      const words = new Map<string, { word: string; first: Read }>();
      for (const first of read.filter(({ part }) => parts[part]?.step === step))
        for (const word of first.hard)
          if (!words.has(baseOf(word))) words.set(baseOf(word), { word: word.toLowerCase(), first });
      // The sentence with the first word that is one too many.
      const over = [...words.values()][newInStep];
      const unknown = [...words.values()].map(({ word }) => word);
      if (over) broken.push({ ...breaks('new', over.first, words.size, newInStep), unknown });
    }
  return broken;
}

/** "teat" and "teats" are one new word. */
const baseOf = (word: string): string =>
  stemsOf(word.toLowerCase()).reduce((a, b) => (b.length < a.length ? b : a));

function overall(prose: readonly Read[], counts: Counts, band: Band, lang: ReadingLanguage): Broken[] {
  const limits = READING_LIMITS[band];
  if (counts.words < FEWEST_WORDS) return [];
  const broken: Broken[] = [];
  const mean = counts.words / counts.sentences;
  if (mean > limits.mean)
    broken.push(
      breaks(
        'mean',
        hardest(prose, ({ words }) => words),
        mean,
        limits.mean,
      ),
    );
  if (lang === 'es') {
    const ease = inflesz(counts) ?? Infinity;
    if (ease < limits.inflesz)
      broken.push(
        breaks(
          'ease',
          hardest(prose, (one) => -(inflesz(one) ?? 0)),
          ease,
          limits.inflesz,
        ),
      );
    return broken;
  }
  const grade = fleschKincaidGrade(counts) ?? 0;
  const most = limits.grade + GRADE_TOLERANCE;
  if (grade > most)
    broken.push(
      breaks(
        'grade',
        hardest(prose, (one) => fleschKincaidGrade(one) ?? 0),
        grade,
        most,
      ),
    );
  const score = daleChallScore(counts) ?? 0;
  if (limits.daleChall !== null && score > limits.daleChall) {
    const worst = hardest(prose, ({ hard }) => hard.length);
    broken.push({ ...breaks('words', worst, score, limits.daleChall), unknown: worst.hard });
  }
  return broken;
}

function hardest(prose: readonly Read[], hardness: (one: Read) => number): Read {
  return prose.reduce((worst, one) => (hardness(one) > hardness(worst) ? one : worst));
}

const breaks = (
  rule: Broken['rule'],
  { part, sentence, nth }: Read,
  found: number,
  limit: number,
): Broken => ({
  rule,
  found,
  limit,
  part,
  sentence,
  nth,
  unknown: [],
});
