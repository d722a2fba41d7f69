// The formulas of reading ease: against values that others published, and against other people's code.
import { automatedReadability } from 'automated-readability';
import { colemanLiau as colemanLiauElsewhere } from 'coleman-liau';
import { daleChallFormula } from 'dale-chall-formula';
import fc from 'fast-check';
import { flesch } from 'flesch';
import { fleschKincaid } from 'flesch-kincaid';
import { smogFormula } from 'smog-formula';
import { spacheFormula } from 'spache-formula';
import { describe, expect, it } from 'vitest';
import { countText, NO_COUNTS, type Counts } from '../../../shared/reading/counts.ts';
import {
  automatedIndex,
  colemanLiau,
  daleChallScore,
  fernandezHuerta,
  fleschEase,
  fleschKincaidGrade,
  inflesz,
  smogGrade,
  spacheGrade,
} from '../../../shared/reading/formulas.ts';

const counts = (some: Partial<Counts>): Counts => ({ ...NO_COUNTS, ...some });

describe('the formulas give what is published', () => {
  // The first three stand on Wikipedia's page of the Flesch tests (from memory); the rest was computed by hand from the
  // published formulas and run with the packages named above (teaching facts, section 2.3).
  it.each([
    ['The cat sat on the mat.', 6, 6, 116.145, -1.45],
    ['The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.', 13, 24, 37.455, 11.265],
    ['This sentence, taken as a reading passage unto itself, is being used to prove a point.', 16, 23, 68.983, 7.613],
  ])('Flesch: %s', (text, words, syllables, ease, grade) => {
    const one = { words, sentences: 1, syllables };
    expect(fleschEase(one)).toBeCloseTo(ease, 2);
    expect(fleschKincaidGrade(one)).toBeCloseTo(grade, 2);
    const counted = countText(text, 'en');
    expect(counted).toMatchObject({ words, sentences: 1 });
    // A counter of syllables goes by rules: "reptilian" has three or four.
    expect(Math.abs(counted.syllables - syllables)).toBeLessThanOrEqual(2);
  }); // prettier-ignore

  it('Dale-Chall jumps when more than 5 % of the words are unknown', () => {
    const text = { words: 100, sentences: 10 };
    expect(daleChallScore({ ...text, unknown: 5 })).toBeCloseTo(1.2855, 3);
    expect(daleChallScore({ ...text, unknown: 6 })).toBeCloseTo(5.0799, 3);
  });

  it('Spache, SMOG, ARI and Coleman-Liau', () => {
    const text = { words: 100, sentences: 10 };
    expect(spacheGrade({ ...text, unknown: 5 })).toBeCloseTo(2.279, 3);
    expect(automatedIndex({ ...text, letters: 400 })).toBeCloseTo(2.41, 2);
    expect(colemanLiau({ ...text, letters: 400 })).toBeCloseTo(4.76, 2);
    for (const [long, grade] of [[0, 3.129], [16, 7.301], [30, 8.842]] as const)
      expect(smogGrade({ words: 300, sentences: 30, long })).toBeCloseTo(grade, 3); // prettier-ignore
  });

  it('Fernández-Huerta and INFLESZ', () => {
    const easy = { words: 100, sentences: 10, syllables: 180 };
    const hard = { words: 100, sentences: 5, syllables: 220 };
    expect([fernandezHuerta(easy), inflesz(easy)].map((one) => one?.toFixed(3))).toEqual([
      '88.640',
      '84.695',
    ]);
    expect([fernandezHuerta(hard), inflesz(hard)].map((one) => one?.toFixed(3))).toEqual([
      '54.440',
      '49.775',
    ]);
  });

  it('say that there is no answer for a text without words', () => {
    for (const formula of [
      fleschEase,
      fleschKincaidGrade,
      automatedIndex,
      colemanLiau,
      daleChallScore,
      spacheGrade,
      smogGrade,
      fernandezHuerta,
      inflesz,
    ])
      expect(formula(NO_COUNTS)).toBeNull();
  });
});

describe('the formulas agree with other code', () => {
  const someCounts = fc
    .record({ words: fc.integer({ min: 1, max: 5000 }), more: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 }) })
    .map(({ words, more: [a = 0, b = 0, c = 0, d = 0, e = 0] }) =>
      counts({
        words,
        sentences: 1 + Math.floor(a * (words - 1)),
        syllables: words + Math.floor(b * 3 * words),
        letters: words + Math.floor(c * 9 * words),
        long: Math.floor(d * words),
        unknown: Math.floor(e * words),
      }),
    ); // prettier-ignore

  it('on any counts', () => {
    fc.assert(
      fc.property(someCounts, (c) => {
        const { words: word, sentences: sentence, syllables: syllable, letters, long, unknown } = c;
        expect(fleschEase(c)).toBeCloseTo(flesch({ sentence, word, syllable }), 6);
        expect(fleschKincaidGrade(c)).toBeCloseTo(fleschKincaid({ sentence, word, syllable }), 6);
        expect(automatedIndex(c)).toBeCloseTo(
          automatedReadability({ sentence, word, character: letters }),
          6,
        );
        expect(colemanLiau(c)).toBeCloseTo(colemanLiauElsewhere({ sentence, word, letter: letters }), 6);
        expect(spacheGrade(c)).toBeCloseTo(spacheFormula({ sentence, word, unfamiliarWord: unknown }), 6);
        expect(smogGrade(c)).toBeCloseTo(smogFormula({ sentence, polysillabicWord: long }), 6);
        expect(daleChallScore(c)).toBeCloseTo(daleChallFormula({ sentence, word, difficultWord: unknown }), 6); // prettier-ignore
      }),
      { numRuns: 2000 },
    );
  });
});
