// Jars of a milking: every drop once, and milk that nobody drinks always apart.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { USES } from '../../../shared/herd/types.ts';
import { jarsOf, type PouredMilk } from '../../../shared/labels/jars.ts';

const CUP = 236.5882365;
const milk = (doe: string, cups: number, use: PouredMilk['use'] = 'kept'): PouredMilk => ({
  doe,
  name: doe.toUpperCase(),
  volume_mL: cups * CUP,
  use,
});
const HALF_GALLON = 8 * CUP;
const keys = (all: readonly { key: string }[]) => all.map(({ key }) => key);

describe('jarsOf()', () => {
  it('fills jars doe by doe', () => {
    // A half-gallon jar holds 8 cups, so 12 cups fill one and a half (1 gal = 16 cups: NIST Handbook 44).
    const jars = jarsOf([milk('ida', 12), milk('fern', 3)], { way: 'doe', jar_mL: HALF_GALLON, kids: false });
    expect(
      jars.map(({ names, nth, count, fill }) => [...names, nth, count, Number(fill.toFixed(6))]),
    ).toEqual([
      ['IDA', 1, 2, 1],
      ['IDA', 2, 2, 0.5],
      ['FERN', 1, 1, 0.375],
    ]);
  });

  it('pours only what is kept into the mix, and each doe withheld into jars of her own', () => {
    const all = [milk('ida', 12), milk('fern', 3), milk('may', 5, 'withheld'), milk('joy', 2, 'withheld'), milk('bee', 4, 'lost'), milk('ada', 9, 'fed')]; // prettier-ignore
    const jars = jarsOf(all, { way: 'mix', jar_mL: HALF_GALLON, kids: false });
    expect(keys(jars)).toEqual(['kept:mix:1', 'kept:mix:2', 'withheld:may:1', 'withheld:joy:1']);
    expect(jars[1]?.names).toEqual(['IDA', 'FERN']);
    expect(jars[1]?.fill).toBeCloseTo(7 / 8, 9);
    const withKids = jarsOf(all, { way: 'mix', jar_mL: HALF_GALLON, kids: true });
    expect(keys(withKids).slice(4)).toEqual(['fed:ada:1', 'fed:ada:2']);
  });

  it('gives no jar to no milk', () => {
    expect(jarsOf([milk('ida', 0)], { way: 'doe', jar_mL: HALF_GALLON, kids: true })).toEqual([]);
  });

  it('holds every drop once, each jar under a key of its own, and never withheld milk beside any other', () => {
    const any = fc.array(fc.record({ cups: fc.oneof(fc.constant(0), fc.double({ min: 0.001, max: 40, noNaN: true })), use: fc.constantFrom(...USES) }), { maxLength: 9 }); // prettier-ignore
    fc.assert(
      fc.property(any, fc.constantFrom('doe' as const, 'mix' as const), fc.boolean(), (rows, way, kids) => {
        const all = rows.map(({ cups, use }, index) => milk(`doe${index}`, cups, use));
        const jars = jarsOf(all, { way, jar_mL: HALF_GALLON, kids });
        expect(new Set(keys(jars)).size).toBe(jars.length);
        for (const use of USES) {
          const wanted =
            use === 'lost' || (use === 'fed' && !kids) ? [] : all.filter((one) => one.use === use);
          const sum = (list: readonly { volume_mL: number }[]) =>
            list.reduce((total, one) => total + one.volume_mL, 0);
          expect(sum(jars.filter((jar) => jar.use === use))).toBeCloseTo(sum(wanted), 4);
        }
        for (const jar of jars) {
          expect(jar.fill).toBeGreaterThan(0);
          expect(jar.fill).toBeLessThanOrEqual(1);
          expect(jar.nth).toBeLessThanOrEqual(jar.count);
          if (jar.use === 'withheld') expect(jar.names).toHaveLength(1);
        }
      }),
    );
  });
});
