// Texts of a sheet: fractions stacked, nothing lost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainText } from '../../../shared/sheet/tell.ts';
import { textPieces } from '../../../shared/sheet/textPieces.ts';

describe('textPieces', () => {
  it('reads the same as the text', () => {
    const wordArb = fc.constantFrom('cups', 'It was', '3/4', '2 1/4', '12', 'and/or', '7/8.', 'milk,');
    fc.assert(
      fc.property(fc.array(wordArb, { minLength: 1, maxLength: 8 }), (words) => {
        const text = words.join(' ');
        expect(plainText(textPieces(text))).toBe(text);
      }),
    );
  });

  it('stacks every fraction, and no date', () => {
    expect(textPieces('Add 3/4 and 2 1/4 by 6/24/2026.')).toEqual([
      'Add ',
      { top: '3', bottom: '4' },
      ' and 2',
      { top: '1', bottom: '4' },
      ' by 6/24/2026.',
    ]);
  });
});
