// The pad's arithmetic against counting in whole numbers, and what it writes against what the book reads.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import {
  amountOf, amountsAround, amountsOfJars, JAR_LEVELS, jarsAmount, keyed, keyedAmount, padOf, shownAmount, shownStep,
  tapped, valueIn, writtenAmount, type Key,
} from '../../../shared/book/taps.ts'; // prettier-ignore
import { together_mL, volumeIn } from '../../../shared/book/together.ts';
import { readNumber } from '../../../shared/quantity/amount.ts';
import { AMOUNT_UNITS } from '../../../shared/quantity/units.ts';

const HALF_GALLON = { size: 64, unit: 'fl oz' } as const;
const unit = fc.constantFrom(...AMOUNT_UNITS);

describe('taps', () => {
  it('add a whole, a half and a quarter of every unit that people measure milk in', () => {
    for (const one of ['cup', 'pt', 'qt', 'gal', 'L', 'kg', 'lb'] as const) {
      const { more } = padOf(one);
      for (const part of ['1', '1/2', '1/4']) expect(more.some((step) => step.equals(part))).toBe(true);
    }
  });

  it('come to the sum of what was tapped, never below nothing', () => {
    fc.assert(
      fc.property(unit, fc.array(fc.nat({ max: 20 }), { maxLength: 40 }), (one, places) => {
        const { less, more } = padOf(one);
        const steps = [...less.map((step) => step.neg()), ...more];
        const taps = places.map((place) => steps[place % steps.length] ?? new Fraction(0));
        let value: Fraction | null = null;
        // The slow way: every step is a whole number of fortieths.
        let fortieths = 0n;
        for (const by of taps) {
          value = tapped(value, by);
          const whole = by.mul(40);
          expect(whole.d).toBe(1n);
          fortieths = fortieths + whole.s * whole.n;
          if (fortieths < 0n) fortieths = 0n;
        }
        expect((value ?? new Fraction(0)).mul(40).equals(new Fraction(fortieths))).toBe(true);
      }),
    );
  });

  it('start about her usual amount, evenly, the usual one among them', () => {
    const texts = (usual: string, of: 'cup' | 'L') =>
      amountsAround(new Fraction(usual), padOf(of)).map((one) => writtenAmount(one, padOf(of)));
    expect(texts('9', 'cup')).toEqual(['8 1/2', '8 3/4', '9', '9 1/4', '9 1/2']);
    expect(texts('1.8', 'L')).toEqual(['1.6', '1.7', '1.8', '1.9', '2']);
    expect(texts('1/4', 'cup')).toEqual(['0', '1/4', '1/2', '3/4', '1']);
  });
});

describe('jars', () => {
  it('of a half gallon hold 8 cups at the full line', () => {
    // Source: 64 US fluid ounces are 8 US cups (NIST Handbook 44, Appendix C).
    const amounts = JAR_LEVELS.map((level) => jarsAmount([level], HALF_GALLON, padOf('cup')).toFraction());
    expect(amounts).toEqual(['2', '4', '6', '8']);
    // Source: the farm's practice: 12 cups fill one and a half.
    expect(jarsAmount([new Fraction(1), new Fraction(1, 2)], HALF_GALLON, padOf('cup')).toFraction()).toBe(
      '12',
    );
  });

  it('are told to a hundredth where the unit does not go into them', () => {
    // 1 L is 1000 / 236.5882365 = 4.22675… cups, and 1.03 kg.
    const litre = { size: 1, unit: 'L' } as const;
    expect(writtenAmount(jarsAmount([new Fraction(1)], litre, padOf('cup')), padOf('cup'))).toBe('4 1/4');
    expect(writtenAmount(jarsAmount([new Fraction(1)], litre, padOf('kg')), padOf('kg'))).toBe('1.03');
    expect(writtenAmount(jarsAmount([new Fraction(3, 4)], litre, padOf('L')), padOf('L'))).toBe('0.75');
  });

  it('give amounts to start from where nothing is usual', () => {
    expect(amountsOfJars(HALF_GALLON, padOf('cup')).map((one) => one.toFraction())).toEqual([
      '2',
      '4',
      '8',
      '12',
      '16',
    ]);
    // A jar so small that its parts are alike leaves no amount twice.
    const small = amountsOfJars({ size: 0.01, unit: 'L' }, padOf('L')).map((one) => one.toFraction());
    expect(new Set(small).size).toBe(small.length);
  });
});

describe('keys', () => {
  const press = (keys: string) =>
    [...keys].reduce((text, key) => keyed(text, (key === '<' ? 'back' : key) as Key), '');

  it.each([
    ['9', '9'], ['12', '12'], ['9½', '9 1/2'], ['½', '1/2'], ['9½¼', '9 1/4'], ['9½<', '9'], ['9½<<', ''], ['9.5', '9.5'],
    ['.5', '0.5'], ['9..5', '9.5'], ['9.½', '9.'], ['9½3', '9 1/2'], ['007', '7'], ['<', ''], ['12345678', '123456'],
  ])('%s make "%s"', (keys, text) => {
    expect(press(keys)).toBe(text);
  }); // prettier-ignore

  it('make an amount that the book reads, or none yet', () => {
    const key = fc.constantFrom<Key>(
      '0',
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
      '9',
      '.',
      '¼',
      '½',
      '¾',
      'back',
    );
    fc.assert(
      fc.property(fc.array(key, { maxLength: 14 }), (keys) => {
        const text = keys.reduce(keyed, '');
        const value = keyedAmount(text);
        if (text === '') expect(value).toBeNull();
        else {
          // The slow way: whole part and part read apart.
          const [whole = '0', part] = text.replace(/\.$/, '').split(' ');
          const read = (one: string) => (one.includes('/') ? Number(one[0]) / Number(one[2]) : Number(one));
          expect(value?.valueOf()).toBeCloseTo(read(whole) + (part ? read(part) : 0), 9);
        }
      }),
    );
  });
});

describe('writtenAmount', () => {
  it.each([
    ['19/2', 'cup', '9 1/2', '9½'], ['19/2', 'L', '9.5', '9.5'], ['9', 'cup', '9', '9'], ['1/4', 'cup', '1/4', '¼'], ['33/8', 'cup', '4 1/8', '4 1/8'],
    ['1/4', 'kg', '0.25', '0.25'], ['1/3', 'L', '1/3', '0.33'], ['0', 'cup', '0', '0'], ['2/3', 'cup', '2/3', '2/3'],
  ] as const)('writes %s %s as "%s" and shows it as "%s"', (text, one, written, shown) => {
    const value = new Fraction(text);
    expect(writtenAmount(value, padOf(one))).toBe(written);
    expect(shownAmount(amountOf(value, one), 'en')).toBe(shown);
  }); // prettier-ignore

  it('is read back by the book as the very same amount', () => {
    fc.assert(
      fc.property(unit, fc.nat({ max: 4000 }), fc.integer({ min: 1, max: 200 }), (one, num, den) => {
        const value = new Fraction(num, den);
        const read = readNumber(writtenAmount(value, padOf(one)));
        expect(read.ok && new Fraction(read.num, read.den).equals(value)).toBe(true);
      }),
    );
  });

  it('shows a step as it stands on its block', () => {
    expect(padOf('cup').more.map((step) => shownStep(step, 'en'))).toEqual(['¼', '½', '1']);
    expect(padOf('L').more.map((step) => shownStep(step, 'es'))).toEqual(['0.1', '¼', '½', '1']);
  });
});

describe('together', () => {
  it('is exact over units', () => {
    const all = [
      amountOf(new Fraction(1), 'cup'),
      amountOf(new Fraction(1), 'pt'),
      amountOf(new Fraction(1, 4), 'qt'),
    ];
    expect(valueIn(volumeIn(together_mL(all), 'cup')).toFraction()).toBe('4');
    expect(together_mL([]).toFraction()).toBe('0');
  });
});
