// The published formulas of reading ease. All take counts and give null for a text without words.
import type { Counts } from './counts.ts';

type Part = Pick<Counts, 'words' | 'sentences'>;

function per({ words, sentences }: Part, tell: (wordsPerSentence: number) => number): number | null {
  return words > 0 && sentences > 0 ? tell(words / sentences) : null;
}

/** Flesch reading ease (1948): higher is easier. */
export function fleschEase(c: Pick<Counts, 'words' | 'sentences' | 'syllables'>): number | null {
  return per(c, (length) => 206.835 - 1.015 * length - (84.6 * c.syllables) / c.words);
}

/** Flesch-Kincaid grade (1975), a school grade of the US; below 0 for the easiest texts. */
export function fleschKincaidGrade(c: Pick<Counts, 'words' | 'sentences' | 'syllables'>): number | null {
  return per(c, (length) => 0.39 * length + (11.8 * c.syllables) / c.words - 15.59);
}

/** Automated readability index (1967), a school grade. */
export function automatedIndex(c: Pick<Counts, 'words' | 'sentences' | 'letters'>): number | null {
  return per(c, (length) => (4.71 * c.letters) / c.words + 0.5 * length - 21.43);
}

/** Coleman-Liau index (1975), a school grade. */
export function colemanLiau(c: Pick<Counts, 'words' | 'sentences' | 'letters'>): number | null {
  return per(c, () => (5.88 * c.letters) / c.words - (29.6 * c.sentences) / c.words - 15.8);
}

/** New Dale-Chall raw score (1995): below 5 for grade 4, 6 to 8 for grades 6 to 10. */
export function daleChallScore(c: Pick<Counts, 'words' | 'sentences' | 'unknown'>): number | null {
  const hard_pct = (100 * c.unknown) / c.words;
  return per(c, (length) => 0.1579 * hard_pct + 0.0496 * length + (hard_pct > 5 ? 3.6365 : 0));
}

/** Spache grade, revised (1974). `unknown` counts each unknown word once. */
export function spacheGrade(c: Pick<Counts, 'words' | 'sentences' | 'unknown'>): number | null {
  return per(c, (length) => 0.121 * length + (8.2 * c.unknown) / c.words + 0.659);
}

/** SMOG grade (1969); meant for thirty sentences. */
export function smogGrade(c: Pick<Counts, 'words' | 'sentences' | 'long'>): number | null {
  return per(c, () => 3.1291 + 1.043 * Math.sqrt((c.long * 30) / c.sentences));
}

/** Fernández-Huerta's ease for Spanish (1959), with words a sentence as Law (2011) put it right: higher is easier. */
export function fernandezHuerta(c: Pick<Counts, 'words' | 'sentences' | 'syllables'>): number | null {
  return per(c, (length) => 206.84 - (60 * c.syllables) / c.words - 1.02 * length);
}

/** Szigriszt-Pazos' ease for Spanish on the INFLESZ scale: 80 and more is very easy, below 40 very hard. */
export function inflesz(c: Pick<Counts, 'words' | 'sentences' | 'syllables'>): number | null {
  return per(c, (length) => 206.835 - (62.3 * c.syllables) / c.words - length);
}
