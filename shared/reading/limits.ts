// What each grade band may be asked to read.
import type { Band } from '../quantity/grade.ts';

/** Limits of a band's text. */
export interface ReadingLimits {
  /** Words of the longest sentence. */
  readonly longest: number;
  /** Words of a sentence on average. */
  readonly mean: number;
  /** Different English words that are neither known nor explained, in one step; null where the score below rules. */
  readonly newInStep: number | null;
  /** The same in one sentence, for readers who know more than the list. */
  readonly newInSentence: number | null;
  /** Highest New Dale-Chall score; null where the counts above rule. */
  readonly daleChall: number | null;
  /** Highest Flesch-Kincaid grade, before the tolerance. */
  readonly grade: number;
  /** Lowest INFLESZ of Spanish. */
  readonly inflesz: number;
}

/** Counters of syllables differ by up to this many grades on the same text. */
export const GRADE_TOLERANCE = 1.5;
/** Below this many words an average or a score says nothing. */
export const FEWEST_WORDS = 100;

/**
 * The limits by band: targets of our own, which rest on the text ranges of the Common Core's Appendix A. From grade 6
 * the list of words, which is made for grade 4, only counts through its score; the number of new words there holds for
 * a sentence.
 */
export const READING_LIMITS: Readonly<Record<Band, ReadingLimits>> = Object.freeze({
  'k-2': { longest: 10, mean: 7, newInStep: 1, newInSentence: null, daleChall: null, grade: 2, inflesz: 86 },
  '3-5': {
    longest: 14,
    mean: 11,
    newInStep: 2,
    newInSentence: null,
    daleChall: null,
    grade: 4.5,
    inflesz: 76,
  },
  '6-8': { longest: 20, mean: 15, newInStep: null, newInSentence: 3, daleChall: 8, grade: 8, inflesz: 60 },
  '9-12': {
    longest: 25,
    mean: 19,
    newInStep: null,
    newInSentence: null,
    daleChall: 9,
    grade: 11,
    inflesz: 50,
  },
});
