// A text held against its band: which limit breaks, in which sentence, by how much.
import { describe, expect, it } from 'vitest';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { judge, type ReadingPart } from '../../../shared/reading/judge.ts';
import { FEWEST_WORDS, GRADE_TOLERANCE, READING_LIMITS } from '../../../shared/reading/limits.ts';

const part = (text: string, step = 'hello', label?: true): ReadingPart => ({ text, step, label });
const told = (parts: readonly ReadingPart[], band: (typeof BANDS)[number], lang: 'en' | 'es' = 'en', words: string[] = []) =>
  judge(parts, band, lang, words).broken.map(({ rule, found, limit, part: at, sentence, unknown }) =>
    [rule, Math.round(found * 10) / 10, limit, `${at}@${sentence.offset}`, unknown.join(' ')].join(' | '),
  ); // prettier-ignore
const times = (n: number, text: string) => Array.from({ length: n }, () => part(text));

// The targets of the teaching facts, section 2.1, word for word.
it('holds the limits that the project was given', () => {
  const table = BANDS.map((band) => {
    const { longest, mean, grade, inflesz } = READING_LIMITS[band];
    return [longest, mean, grade, inflesz];
  });
  expect(table).toEqual([[10, 7, 2, 86], [14, 11, 4.5, 76], [20, 15, 8, 60], [25, 19, 11, 50]]); // prettier-ignore
  expect(READING_LIMITS['k-2'].newInStep).toBe(1);
  expect(READING_LIMITS['3-5'].newInStep).toBe(2);
  expect(READING_LIMITS['6-8'].newInSentence).toBe(3);
  expect(GRADE_TOLERANCE).toBe(1.5);
});

describe('the longest sentence', () => {
  it('is as long as the band reads, and not a word longer', () => {
    const words = (n: number) => `Milk${' milk'.repeat(n - 1)}.`;
    for (const band of BANDS) {
      const { longest } = READING_LIMITS[band];
      expect(told([part(words(longest))], band)).toEqual([]);
      expect(told([part(`Go. ${words(longest + 1)}`)], band)).toEqual([`longest | ${longest + 1} | ${longest} | 0@4 | `]); // prettier-ignore
    }
  });

  it('counts numbers as they are read, and labels too', () => {
    const text = 'We see 1,250 cups, 3/4 cup and 2 cups.';
    // We see one thousand two hundred fifty cups, three fourths cup and two cups.
    expect(told([part(text)], 'k-2')).toEqual(['longest | 14 | 10 | 0@0 | ']);
    expect(told([part(text, 'words', true)], 'k-2')).toEqual(['longest | 14 | 10 | 0@0 | ']);
  });
});

describe('new words', () => {
  it('are counted once in a step, however often and in whatever form they come', () => {
    expect(told([part('The udder has a teat. Teats and udders are soft.')], 'k-2')).toEqual(['new | 2 | 1 | 0@0 | udder teat']); // prettier-ignore
    expect(told([part('The udder is soft. Two udders.'), part('See the teat.', 'next')], 'k-2')).toEqual([]);
    expect(told([part('The udder. The teat. The rumen.')], '3-5')).toEqual(['new | 3 | 2 | 0@21 | udder teat rumen']); // prettier-ignore
  });

  it('are known once they are explained', () => {
    expect(told([part('The udder has a teat.')], 'k-2', 'en', ['teat'])).toEqual([]);
  });

  it('from grade 6 on are counted in a sentence, and by their score in all', () => {
    const four = 'Enzymes, microbes, lactose and casein.';
    expect(told([part(four)], '6-8')).toEqual(['new-in-sentence | 4 | 3 | 0@0 | enzymes microbes lactose casein']); // prettier-ignore
    expect(told([part(four)], '9-12')).toEqual([]);
    expect(told(times(20, 'Enzymes, microbes and goats eat the green grass there.'), '6-8')).toEqual([]);
    expect(told(times(40, 'Microbes ferment cellulose.'), '9-12').at(-1)).toMatch(/^words \| 19\.6 \| 9 \| 0@0 \| Microbes ferment cellulose$/); // prettier-ignore
  });

  it('are not looked for in Spanish, for which there is no list', () => {
    expect(told([part('La ubre tiene un pezón.')], 'k-2', 'es')).toEqual([]);
  });
});

describe('means and scores', () => {
  it('name the sentence that weighs most', () => {
    const parts = [...times(12, 'We all go and see the little goats.'), part('We all go and see the very little goats.')]; // prettier-ignore
    expect(told(parts, 'k-2')).toEqual(['mean | 8.1 | 7 | 12@0 | ']);
  });

  it('stay silent below a hundred words', () => {
    const parts = times(12, 'We all go and see the little goats.');
    expect(12 * 8).toBeLessThan(FEWEST_WORDS);
    expect(told(parts, 'k-2')).toEqual([]);
  });

  it('hold Flesch-Kincaid with its tolerance, and INFLESZ', () => {
    const long = 'Carefully remember everybody yesterday.';
    expect(told(times(30, long), '3-5', 'en', ['yesterday'])).toEqual([expect.stringMatching(/^grade \| [\d.]+ \| 6 \| 0@0 \| $/)]); // prettier-ignore
    const hard = 'La responsabilidad administrativa organizacional.';
    expect(told(times(30, hard), '9-12', 'es')).toEqual([expect.stringMatching(/^ease \| -[\d.]+ \| 50 \| 0@0 \| $/)]); // prettier-ignore
    expect(told(times(30, 'La cabra come heno y da leche.'), 'k-2', 'es')).toEqual([]);
  });

  it('leave labels out', () => {
    const labels = Array.from({ length: 60 }, () => part('Responsibility', 'cards', true));
    expect(judge(labels, '6-8', 'en', []).counts.words).toBe(0);
    expect(told([...labels, ...times(12, 'See the goats.')], '9-12')).toEqual([]);
  });
});
