// Numbers in words, read back: another way round must give the number again.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardinalEn, fractionEn, LARGEST_SPELLED, ordinalEn } from '../../../shared/reading/numberWordsEn.ts';
import { beforeNoun, cardinalEs, fractionEs } from '../../../shared/reading/numberWordsEs.ts';

// Readers of their own: a sum of word values, multiplied by hundred, thousand and million as they come.
const values = (text: string, from = 0) =>
  new Map(text.split(' ').map((word, index) => [word, from + index] as const));
const EN = new Map([
  ...values('zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'),
  ...'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ').map((word, index) => [word, 20 + 10 * index] as const),
]); // prettier-ignore
const ES = new Map([
  ...values('cero uno dos tres cuatro cinco seis siete ocho nueve diez once doce trece catorce quince dieciséis diecisiete dieciocho diecinueve veinte veintiuno veintidós veintitrés veinticuatro veinticinco veintiséis veintisiete veintiocho veintinueve'),
  ...'treinta cuarenta cincuenta sesenta setenta ochenta noventa'.split(' ').map((word, index) => [word, 30 + 10 * index] as const),
  ...'ciento doscientos trescientos cuatrocientos quinientos seiscientos setecientos ochocientos novecientos'.split(' ').map((word, index) => [word, 100 + 100 * index] as const),
  ['cien', 100] as const, ['un', 1] as const, ['veintiún', 21] as const,
]); // prettier-ignore

function readEn(told: string): number {
  let [total, below] = [0, 0];
  for (const word of told.split(/[ -]/)) {
    if (word === 'hundred') below *= 100;
    else if (word === 'thousand' || word === 'million') {
      total += below * (word === 'thousand' ? 1000 : 1_000_000);
      below = 0;
    } else below += EN.get(word) ?? NaN;
  }
  return total + below;
}

function readEs(told: string): number {
  let [total, below] = [0, 0];
  for (const word of told.split(' ')) {
    if (word === 'y') continue;
    if (word === 'mil') below = (below || 1) * 1000;
    else if (word === 'millón' || word === 'millones') {
      total += below * 1_000_000;
      below = 0;
    } else below += ES.get(word) ?? NaN;
  }
  return total + below;
}

describe('cardinals', () => {
  it('read back to the number, each from 0 to 9,999', () => {
    for (let n = 0; n <= 9_999; n += 1) {
      expect(readEn(cardinalEn(n)), cardinalEn(n)).toBe(n);
      expect(readEs(cardinalEs(n)), cardinalEs(n)).toBe(n);
    }
  });

  it('read back to the number up to the largest', () => {
    const any = fc.integer({ min: 0, max: LARGEST_SPELLED });
    fc.assert(
      fc.property(any, (n) => {
        expect(readEn(cardinalEn(n)), cardinalEn(n)).toBe(n);
      }),
    );
    // "mil" multiplies all below the millions, which the reader above does in order.
    fc.assert(
      fc.property(any, (n) => {
        const told = cardinalEs(n);
        const [left, right] = told.includes('mill') ? told.split(/mill(?:ón|ones) ?/) : ['', told];
        const millions = told.includes('mill') ? readEs((left ?? '').trim()) : 0;
        expect(millions * 1_000_000 + (right ? readEs(right) : 0), told).toBe(n);
      }),
    );
  });

  it('stand as grammars have them', () => {
    // Checked against the Chicago Manual (hyphens, no "and") and the Ortografía of the RAE (from memory).
    expect([21, 100, 115, 1_000, 1_250, 40_002, 2_000_001].map(cardinalEn)).toEqual([
      'twenty-one', 'one hundred', 'one hundred fifteen', 'one thousand', 'one thousand two hundred fifty', 'forty thousand two',
      'two million one',
    ]); // prettier-ignore
    expect([16, 21, 31, 100, 101, 500, 700, 900, 1_000, 2_021, 21_000, 1_000_000].map(cardinalEs)).toEqual([
      'dieciséis', 'veintiuno', 'treinta y uno', 'cien', 'ciento uno', 'quinientos', 'setecientos', 'novecientos', 'mil',
      'dos mil veintiuno', 'veintiún mil', 'un millón',
    ]); // prettier-ignore
    expect([beforeNoun('uno'), beforeNoun('treinta y uno', true), beforeNoun('dos', true)]).toEqual([
      'un',
      'treinta y una',
      'dos',
    ]);
  });

  it('refuse what has no words', () => {
    for (const n of [-1, 1.5, NaN, LARGEST_SPELLED + 1]) {
      expect(() => cardinalEn(n)).toThrow(RangeError);
      expect(() => cardinalEs(n)).toThrow(RangeError);
    }
  });
});

describe('ordinals and fractions', () => {
  it('stand as they are said', () => {
    expect([1, 2, 3, 4, 5, 8, 9, 12, 20, 21, 100].map(ordinalEn)).toEqual([
      'first', 'second', 'third', 'fourth', 'fifth', 'eighth', 'ninth', 'twelfth', 'twentieth', 'twenty-first', 'one hundredth',
    ]); // prettier-ignore
    expect([[1, 2], [3, 2], [1, 4], [3, 4], [2, 3], [5, 8]].map(([num = 0, den = 0]) => fractionEn(num, den))).toEqual([
      'one half', 'three halves', 'one fourth', 'three fourths', 'two thirds', 'five eighths',
    ]); // prettier-ignore
    expect([[1, 2], [1, 4], [3, 4], [2, 3], [5, 8], [1, 12], [7, 100]].map(([num = 0, den = 0]) => fractionEs(num, den))).toEqual([
      'un medio', 'un cuarto', 'tres cuartos', 'dos tercios', 'cinco octavos', 'un doceavo', 'siete centésimos',
    ]); // prettier-ignore
  });
});
