// Numbers read from text, exactly or with the reason why not.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amount_mL, readNumber, type ReadNumber } from '../../../shared/quantity/amount.ts';

/** The value as `num/den` in lowest terms, or the fault. */
function told(read: ReadNumber): string {
  if (!read.ok) return read.why;
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  const by = divisor(read.num, read.den);
  return read.den === by ? String(read.num / by) : `${read.num / by}/${read.den / by}`;
}

describe('readNumber', () => {
  it.each([
    ['11', '11'], ['11.5', '23/2'], ['11 1/2', '23/2'], ['11½', '23/2'], ['11 ½', '23/2'], ['½', '1/2'], ['1/2', '1/2'],
    ['0', '0'], ['0.0', '0'], ['007', '7'], ['.5', '1/2'], ['5.', '5'], ['+3', '3'], ['  4  ', '4'], ['11.50', '23/2'],
    ['2 3/4', '11/4'], ['2  3/4', '11/4'], ['2 3 / 4', '11/4'], ['2\u00a03/4', '11/4'], ['2 3⁄4', '11/4'], ['0 1/3', '1/3'], ['5/4', '5/4'],
    ['1⅓', '4/3'], ['⅔', '2/3'], ['1¼', '5/4'], ['1¾', '7/4'], ['⅕', '1/5'], ['⅖', '2/5'], ['⅗', '3/5'], ['⅘', '4/5'], ['⅙', '1/6'],
    ['⅚', '5/6'], ['⅛', '1/8'], ['⅜', '3/8'], ['⅝', '5/8'], ['3⅞', '31/8'], ['0.123456789012', '30864197253/250000000000'],
  ])('reads "%s" as %s', (text, value) => {
    expect(told(readNumber(text))).toBe(value);
  }); // prettier-ignore

  it.each([
    ['', 'empty'], ['   ', 'empty'], ['-3', 'negative'], ['-0.5', 'negative'], ['−½', 'negative'], ['- 2', 'negative'], ['–1 1/2', 'negative'],
    ['x', 'not a number'], ['3 cups', 'not a number'], ['1,5', 'not a number'], ['1,234', 'not a number'], ['1.2.3', 'not a number'],
    ['1e3', 'not a number'], ['0x10', 'not a number'], ['Infinity', 'not a number'], ['NaN', 'not a number'], ['½½', 'not a number'],
    ['1½/2', 'not a number'], ['1/2/3', 'not a number'], ['1.5 1/2', 'not a number'], ['.', 'not a number'], ['1 2', 'not a number'],
    ['~3', 'not a number'], ['3?', 'not a number'], ['1/0', 'divided by zero'], ['2 1/0', 'divided by zero'],
    ['1234567890123', 'too many digits'], ['0.1234567890123', 'too many digits'], ['123456789/1234567', 'too many digits'],
  ])('refuses "%s": %s', (text, why) => {
    expect(readNumber(text)).toEqual({ ok: false, why });
  }); // prettier-ignore

  it.each([['11,5', '23/2'], ['11.5', '23/2'], [',5', '1/2'], ['0,25', '1/4'], ['11 1/2', '23/2'], ['11½', '23/2']])(
    'reads "%s" in a comma-decimal file as %s',
    (text, value) => {
      expect(told(readNumber(text, true))).toBe(value);
    },
  ); // prettier-ignore

  it.each(['1.234,5', '1,2,3', '5,', ',', '1,5/2'])('refuses "%s" in a comma-decimal file', (text) => {
    expect(readNumber(text, true).ok).toBe(false);
  });

  it('reads every mixed number that it can be shown, exactly', () => {
    const part = fc.record({ whole: fc.nat(999), num: fc.nat(99), den: fc.integer({ min: 1, max: 99 }) });
    const same = ({ whole, num, den }: { whole: number; num: number; den: number }) => {
      const read = readNumber(`${whole} ${num}/${den}`);
      expect(read.ok && read.num * den === (whole * den + num) * read.den).toBe(true);
    };
    fc.assert(fc.property(part, same));
  });

  it('reads every decimal of twelve digits as the whole number it is of its last place', () => {
    const digits = fc.record({
      value: fc.integer({ min: 1, max: 999_999_999_999 }),
      places: fc.integer({ min: 1, max: 11 }),
    });
    const same = ({ value, places }: { value: number; places: number }) => {
      const text = String(value).padStart(places + 1, '0');
      const read = readNumber(`${text.slice(0, -places)}.${text.slice(-places)}`);
      if (!read.ok) throw new Error(read.why);
      expect(BigInt(read.num) * 10n ** BigInt(places)).toBe(BigInt(value) * BigInt(read.den));
    };
    fc.assert(fc.property(digits, same));
  });

  it('gives whole numbers or a reason for any text, and never throws', () => {
    const texts = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789./,-+½⅓ ⁄−') }));
    const sound = (text: string, comma: boolean) => {
      const read = readNumber(text, comma);
      const whole =
        read.ok &&
        Number.isSafeInteger(read.num) &&
        Number.isSafeInteger(read.den) &&
        read.num >= 0 &&
        read.den > 0;
      expect(read.ok ? whole : read.why.length > 0).toBe(true);
    };
    fc.assert(fc.property(texts, fc.boolean(), sound), { numRuns: 2000 });
  });
});

describe('amount_mL', () => {
  it('is exact', () => {
    expect(amount_mL({ num: 23, den: 2, unit: 'cup' }).equals('2720.76471975')).toBe(true);
    expect(amount_mL({ num: 1, den: 3, unit: 'L' }).mul(3).equals(1000)).toBe(true);
    expect(amount_mL({ num: 1, den: 1, unit: 'kg' }).mul('1.03').equals(1000)).toBe(true);
  });
});
