// Amounts as people read them, rounded once.
import { describe, expect, it } from 'vitest';
import { dateText, decimalText, inParts, mixedText, spanText } from '../../../shared/quantity/show.ts';
import { AMOUNT_UNITS } from '../../../shared/quantity/units.ts';
import { amount_mL } from '../../../shared/quantity/amount.ts';

describe('inParts', () => {
  it('finds every whole number of parts that an amount was written as', () => {
    const off: string[] = [];
    for (const unit of AMOUNT_UNITS)
      for (const perUnit of [1, 2, 4])
        for (let num = 0; num <= 200; num += 1) {
          const volume_mL = amount_mL({ num, den: perUnit, unit }).valueOf();
          if (inParts(volume_mL, unit, perUnit) !== num) off.push(`${num}/${perUnit} ${unit}`);
        }
    expect(off).toEqual([]);
  });

  it('rounds half a part up, whatever the unit', () => {
    const off: string[] = [];
    for (const unit of AMOUNT_UNITS)
      for (const perUnit of [1, 2, 4])
        for (let num = 1; num <= 401; num += 2) {
          const volume = amount_mL({ num, den: 2 * perUnit, unit });
          // As it comes from the week's view, which hands on litres times a thousand.
          for (const volume_mL of [volume.valueOf(), volume.div(1000).valueOf() * 1000])
            if (inParts(volume_mL, unit, perUnit) !== (num + 1) / 2)
              off.push(`${num}/${2 * perUnit} ${unit}`);
        }
    expect(off).toEqual([]);
  });

  it('rounds less than half a part down', () => {
    expect(inParts(499, 'L', 1)).toBe(0);
    expect(inParts(124, 'L', 4)).toBe(0);
    expect(inParts(126, 'L', 4)).toBe(1);
  });
});

describe('mixedText', () => {
  it.each([
    [0, 4, '0'], [1, 4, '¼'], [2, 4, '½'], [3, 4, '¾'], [4, 4, '1'], [47, 4, '11¾'], [46, 4, '11½'], [1, 2, '½'], [5, 2, '2½'],
    [7, 1, '7'], [4003, 4, '1,000¾'],
  ] as const)('tells %d parts of %d as %s', (parts, perUnit, text) => {
    expect(mixedText(parts, perUnit, 'en')).toBe(text);
  }); // prettier-ignore
});

describe('decimalText', () => {
  it('keeps the decimals asked for, and groups as the language does', () => {
    expect(decimalText(0.5, 2, 'en')).toBe('0.50');
    expect(decimalText(1234.5, 1, 'es')).toBe('1,234.5');
    expect(decimalText(1234, 0, 'en')).toBe('1,234');
  });
});

describe('dates in words', () => {
  it('are the calendar day that was written, in both languages', () => {
    expect(dateText('2026-05-14', 'en')).toBe('May 14, 2026');
    expect(dateText('2026-05-14', 'es')).toBe('14 de mayo de 2026');
    expect(dateText('2026-01-01', 'en', 'day')).toBe('Thu, Jan 1');
  });

  it('say a span once where month or year are shared', () => {
    expect(spanText('2026-05-14', '2026-05-20', 'en')).toBe('May 14 – 20, 2026');
    expect(spanText('2025-12-29', '2026-01-04', 'en')).toBe('December 29, 2025 – January 4, 2026');
    expect(spanText('2026-05-14', '2026-05-14', 'en')).toBe('May 14, 2026');
    expect(spanText('2026-05-14', '2026-05-20', 'es')).not.toMatch(/[\u2009\u202f]/);
  });
});
