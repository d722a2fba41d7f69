// How texts are written for the voice. What espeak-ng 1.51 said before stands beside: heard by its phonemes, here.
import { describe, expect, it } from 'vitest';
import { spelledFor } from '../../../src/build/soundSpelling.ts';

describe('for the English voice', () => {
  it.each([
    // It says "does" as in "does it hurt" (dVz) for goats as well.
    ['The does rest.', 'The doze rest.'],
    ['6 does gave milk.', '6 doze gave milk.'],
    ['Some does give more.', 'Some doze give more.'],
    ['Of the does milked alike, one is in the middle.', 'Of the doze milked alike, one is in the middle.'],
    ['9 came from does under treatment.', '9 came from doze under treatment.'],
    ['Most of the milk does not become cheese.', 'Most of the milk does not become cheese.'],
    ['Pulling never does.', 'Pulling never does.'],
    ['Does milking hurt?', 'Does milking hurt?'],
    ['How much milk does one doe give?', 'How much milk does one doe give?'],
    ['Why does she rest?', 'Why does she rest?'],
    ['What does that tell?', 'What does that tell?'],
    ['Males give no milk. Does do.', 'Males give no milk. doze do.'],
    // "seven a half", "three slash four", "2 milliliters" letter by letter.
    ['7½ cups', '7 and a half cups'],
    ['½ cup', 'a half cup'],
    ['1 1/2 jars', '1 and a half jars'],
    ['250 mL', '250 milliliters'],
    ['1 L', '1 liter'],
    ['0.5 L', '0.5 liters'],
    ['104 °F', '104 degrees Fahrenheit'],
    ['5 g of fat', '5 grams of fat'],
    ['May 15–21, 2026', 'May 15 to 21, 2026'],
    ['grass → milk', 'grass, milk'],
    ['casein', 'kay-seen'],
    // Said well as it stands.
    ['6:30 a.m.', '6:30 a.m.'],
    ['a doe', 'a doe'],
    ['1,250 goats', '1,250 goats'],
    ['3/5', '3/5'],
  ])('"%s" is written "%s"', (text, spelled) => {
    expect(spelledFor('en', text)).toBe(spelled);
  });
});

describe('for the Spanish voice', () => {
  it.each([
    // It says "uno taza", "doscientos cabras", "a half" in English for ½, and nothing for ¾ or ×.
    ['1 taza', 'una taza'],
    ['1 frasco', 'un frasco'],
    ['21 tazas', 'veintiuna tazas'],
    ['21 frascos', 'veintiún frascos'],
    ['31 días', 'treinta y un días'],
    ['11 tazas', '11 tazas'],
    ['101 tazas', 'ciento una tazas'],
    ['200 cabras', 'doscientas cabras'],
    ['447 cabras', 'cuatrocientas 47 cabras'],
    ['447 niños', '447 niños'],
    ['1 de 3', '1 de 3'],
    ['1 Lavarse', '1 Lavarse'],
    ['327 contra 276', '327 contra 276'],
    ['2.41 tazas', '2.41 tazas'],
    ['1,250 gramos', '1250 gramos'],
    ['½ taza', 'media taza'],
    ['7½ tazas', '7 tazas y media'],
    ['1½ frascos', 'un frasco y medio'],
    ['7¼ tazas', '7 tazas y un cuarto'],
    ['¾ de taza', 'tres cuartos de taza'],
    ['12–15 días', '12 a 15 días'],
    ['6:30 a. m.', '6:30 de la mañana'],
    ['5:30 p.m.', '5:30 de la tarde'],
    ['2 × 3 = 6', '2 por 3 = 6'],
    ['8 − 3', '8 menos 3'],
    ['21 lb', 'veintiuna libras'],
    ['0.5 L', '0.5 litros'],
  ])('"%s" is written "%s"', (text, spelled) => {
    expect(spelledFor('es', text)).toBe(spelled);
  });
});

describe('for any voice', () => {
  it('takes a farm’s way to say a name, as a whole word', () => {
    const sayAs = new Map([['Wren', 'Ren']]);
    expect(spelledFor('es', 'Wren y Wrenita', sayAs)).toBe('Ren y Wrenita');
  });

  it('takes a name of more than one word whole, and a name with signs in it as it stands', () => {
    const sayAs = new Map([['Wren', 'Ren'], ['Miss Wren', 'Mis Ren'], ['J.B.', 'jota be']]); // prettier-ignore
    expect(spelledFor('fr', 'Miss Wren, Wren, J.B. et JxBx', sayAs)).toBe('Mis Ren, Ren, jota be et JxBx');
  });

  it('leaves another language as it is', () => {
    expect(spelledFor('fr', '7½ tasses')).toBe('7½ tasses');
  });
});
