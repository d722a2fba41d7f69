// Ranges: the widening that past errors give, and the herd's range from its does'.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weightAt, widening, wideningFor, Z80 } from '../../../shared/outlook/spread.ts';
import { herdRange, herdSpread } from '../../../shared/outlook/together.ts';
import { chanceOf } from '../../../shared/sheet/chance.ts';

/** Standard normal deviates by Box and Muller's rule. */
function deviates(count: number, word: string): number[] {
  const chance = chanceOf(word);
  const unit = () => (chance.int(0, 2 ** 30) + 0.5) / (2 ** 30 + 1);
  return Array.from(
    { length: count },
    () => Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit()),
  );
}

describe('the widening', () => {
  it('is about 1 without errors, and with errors as the model tells them', () => {
    expect(widening([], 7).factor).toBeCloseTo(1.05, 1);
    expect(widening(deviates(4000, 'as told'), 7).factor).toBeCloseTo(1, 1);
  });

  it('is as much wider or narrower as the errors are', () => {
    const errors = deviates(4000, 'wider');
    for (const times of [0.5, 2, 3]) {
      const found = widening(
        errors.map((one) => one * times),
        7,
      );
      expect(found.factor / times).toBeCloseTo(1, 1);
      expect(found.errors).toBe(4000);
    }
  });

  it('does not heed how far off the worst errors were', () => {
    const errors = deviates(200, 'worst');
    const worse = errors.map((one) => (Math.abs(one) > 2 ? one * 1000 : one));
    expect(widening(worse, 14).factor).toBe(widening(errors, 14).factor);
  });

  it('is above zero, and lies within the errors and the prior', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { maxLength: 60 }), (errors) => {
        const { factor } = widening(errors, 28);
        expect(factor * Z80).toBeGreaterThan(0);
        expect(factor * Z80).toBeLessThanOrEqual(Math.max(1.6449, ...errors.map(Math.abs)) + 1e-12);
      }),
    );
  });

  it('lies between those of the distances around it', () => {
    const kept = { 7: { factor: 1, errors: 30 }, 14: { factor: 2, errors: 20 }, 28: { factor: 1.5, errors: 9 } }; // prettier-ignore
    const at = (distance: number) => wideningFor(kept, distance);
    expect([at(1), at(7), at(14), at(28), at(400)].map(({ factor }) => factor)).toEqual([1, 1, 2, 1.5, 1.5]);
    expect(at(10).factor).toBeCloseTo(1 + Math.log(10 / 7) / Math.log(2), 12);
    expect(at(20)).toMatchObject({ errors: 9 });
    expect(weightAt(28)).toBeLessThan(weightAt(7));
  });
});

describe("the herd's spread", () => {
  const members = [{ middle_L: 3, sd_ln: 0.1 }, { middle_L: 2, sd_ln: 0.2 }, { middle_L: 1, sd_ln: 0.4 }]; // prettier-ignore

  it('is the root of the sum of squares for strangers, and the plain sum for does all alike', () => {
    const strangers = Math.hypot(0.3, 0.4, 0.4);
    expect(herdSpread(members, 0)).toBeCloseTo(strangers / 6, 12);
    expect(herdSpread(members, 1)).toBeCloseTo(1.1 / 6, 12);
  });

  it('of one doe is her own, and of none is none', () => {
    expect(herdSpread([{ middle_L: 2, sd_ln: 0.2 }], 0.3)).toBeCloseTo(0.2, 12);
    expect(herdSpread([], 0.3)).toBe(0);
    expect(herdRange([], 0.3, 1)).toEqual({ middle_L: 0, low_L: 0, high_L: 0 });
  });

  it('holds 80 of 100 sums of does whose misses are drawn so', () => {
    const [common, own] = [deviates(4000, 'common'), deviates(12_000, 'own')];
    const { low_L, high_L } = herdRange(members, 0.5, 1);
    const held = common.filter((shared, i) => {
      const sum = members.reduce((total, { middle_L, sd_ln }, j) => {
        const miss = Math.sqrt(0.5) * shared + Math.sqrt(0.5) * (own[i * 3 + j] ?? 0);
        return total + middle_L * Math.exp(sd_ln * miss);
      }, 0);
      return low_L <= sum && sum <= high_L;
    });
    expect(held.length / 4000).toBeGreaterThan(0.78);
    expect(held.length / 4000).toBeLessThan(0.82);
  });
});
