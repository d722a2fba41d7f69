// Numbers and signs in a text become the words that a reader says.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardinalEn } from '../../../shared/reading/numberWordsEn.ts';
import { cardinalEs } from '../../../shared/reading/numberWordsEs.ts';
import { sentencesOf, wordsIn } from '../../../shared/reading/sentences.ts';
import { spellOut } from '../../../shared/reading/spellOut.ts';

describe('spellOut', () => {
  it.each([
    ['12 cups', 'twelve cups'],
    ['1,250 cups and 2.5 quarts', 'one thousand two hundred fifty cups and two point five quarts'],
    ['1/2 cup, 3/4 cup', 'one half cup, three fourths cup'],
    ['1 1/2 cups or 2½ cups', 'one and one half cups or two and one half cups'],
    ['Heat it to 161 °F, which is 72 °C.', 'Heat it to one hundred sixty-one degrees Fahrenheit, which is seventy-two degrees Celsius.'],
    ['50% of it', 'fifty percent of it'],
    ['at 6:30 a.m. or 5:00', "at six thirty A M or five o'clock"],
    ['3–5 kids', 'three to five kids'],
    ['the 1st and 22nd', 'the first and twenty-second'],
    ['2 + 3 = 5', 'two plus three equals five'],
    ['1 lb, 5 lb and 500 mL', 'one pound, five pounds and five hundred milliliters'],
    ['It costs $2.50 or $1.', 'It costs two dollars and fifty cents or one dollar.'],
    ['no number here', 'no number here'],
  ])('in English: %s', (text, told) => expect(spellOut(text, 'en')).toBe(told)); // prettier-ignore

  it.each([
    ['12 tazas', 'doce tazas'],
    ['1 taza y 21 vasos', 'una taza y veintiún vasos'],
    ['3/4 de taza', 'tres cuartos de taza'],
    ['72 °C', 'setenta y dos grados Celsius'],
    ['50 %', 'cincuenta por ciento'],
    ['de 3 a 5, o 3–5', 'de tres a cinco, o tres a cinco'],
    ['a las 6:30', 'a las seis treinta'],
    ['2 × 3 = 6', 'dos por tres igual a seis'],
    ['500 mL', 'quinientos mililitros'],
  ])('in Spanish: %s', (text, told) => expect(spellOut(text, 'es')).toBe(told)); // prettier-ignore

  it('leaves no digit, and the words of a number are those of the number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 9_999 }), fc.boolean(), (n, grouped) => {
        const written = grouped ? n.toLocaleString('en') : String(n);
        expect(spellOut(`We saw ${written} cups.`, 'en')).toBe(`We saw ${cardinalEn(n)} cups.`);
        if (n % 10 !== 1 || n % 100 === 11)
          expect(spellOut(`Vimos ${written} tazas.`, 'es')).toBe(`Vimos ${cardinalEs(n)} tazas.`);
      }),
    );
    const bits = fc.constantFrom('1/2', '3', '2.5', '%', ' ', '°F', '4–6', '7:05', '1 1/4', 'lb', 'x', '$3.20', '½', ':', '-', '0/0', '1/2/3'); // prettier-ignore
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 12 }), fc.constantFrom('en' as const, 'es' as const), (all, lang) => {
        expect(spellOut(all.join(''), lang)).not.toMatch(/\d|undefined|NaN/);
      }),
    ); // prettier-ignore
  });
});

describe('sentences and words', () => {
  it('ends a sentence at its mark before a capital, a number or an opening mark', () => {
    const cut = (text: string) => sentencesOf(text).map((one) => one.text);
    expect(cut('She gives milk. Does she eat? Yes! 12 cups are in the pail. Good.')).toHaveLength(5);
    expect(cut('¿Qué come? ¡Heno! «Mira», dice. El día 3. Bien')).toEqual(['¿Qué come?', '¡Heno!', '«Mira», dice.', 'El día 3.', 'Bien']); // prettier-ignore
    expect(cut('Ask Dr. Lee. It holds 2.5 cups, e.g. Milk.')).toEqual([
      'Ask Dr. Lee.',
      'It holds 2.5 cups, e.g. Milk.',
    ]);
    expect(cut('She said "Stop." Then she left.')).toHaveLength(2);
    expect(cut(' … ')).toEqual([]);
  });

  it('keeps the place of each', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('Hay.', 'Milk?', 'and', 'Goats', '12', ' ', '«Sí»!'), { maxLength: 30 }), (all) => {
        const text = all.join(' ');
        for (const { text: sentence, offset } of sentencesOf(text))
          expect(text.slice(offset, offset + sentence.length)).toBe(sentence);
      }),
    ); // prettier-ignore
  });

  it('takes hyphens and apostrophes into a word', () => {
    expect(wordsIn("It's a two-day-old kid's — really ¡qué bien! O’Neil-")).toEqual(["It's", 'a', 'two-day-old', "kid's", 'really', 'qué', 'bien', 'O’Neil']); // prettier-ignore
  });
});
