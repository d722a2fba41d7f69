// Products of the week's kept milk, each with its cautions.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overrun } from '../../../../shared/milk/products/iceCream.ts';
import { PRODUCTS, productsOf } from '../../../../shared/milk/products/products.ts';
import { LYE_PER_OIL, soapBatch, type SoapOil } from '../../../../shared/milk/products/soap.ts';
import { atMoisture, vanSlyke } from '../../../../shared/milk/products/vanSlyke.ts';

const madeFrom = (kept_L: number, richness: Parameters<typeof productsOf>[1] = { fat_pct: 4.14, protein_pct: 3.56 }) => {
  const products = productsOf(kept_L, richness);
  if (!products.ok) throw new Error(products.why);
  return products.made;
}; // prettier-ignore

describe('productsOf()', () => {
  it('has every product, in order; without a test of the milk the formula has no row', () => {
    expect(madeFrom(10).map(({ product }) => product)).toEqual([...PRODUCTS]);
    expect(madeFrom(10, null).map(({ product }) => product)).not.toContain('hard cheese by formula');
  });

  it('makes nothing of no milk', () => {
    for (const kept of [0, -1, Number.NaN])
      expect(productsOf(kept, null)).toEqual({ ok: false, why: 'no milk was kept' });
  });

  it('grows with the milk, and no least passes its most', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5000, noNaN: true }), (kept) => {
        const [once, twice] = [madeFrom(kept), madeFrom(2 * kept)];
        once.forEach((made, index) => {
          expect(made.low).toBeLessThanOrEqual(made.high);
          expect((twice[index]?.high ?? 0) / made.high).toBeCloseTo(2, 9);
        });
      }),
    );
  });

  it('names facts for each, and the cautions that raw milk, heat and lye need', () => {
    const cautions = Object.fromEntries(madeFrom(10).map((made) => [made.product, made.cautions]));
    for (const made of madeFrom(10)) expect(made.facts.length, made.product).toBeGreaterThan(0);
    expect(cautions['soap']).toContain('lye-adults-only');
    expect(cautions['caramel']).toContain('hot-syrup');
    expect(cautions['ice cream']).toEqual(expect.arrayContaining(['raw-milk', 'pasteurizing-rich']));
    for (const product of ['fresh milk', 'yogurt', 'soft cheese', 'hard cheese'])
      expect(cautions[product], product).toContain('raw-milk');
  });
});

describe('vanSlyke()', () => {
  it('has no answer for a cheese of water alone, or a milk without fat', () => {
    expect(vanSlyke(3.6, 2.5, 1)).toMatchObject({ ok: false });
    expect(vanSlyke(3.6, 2.5, Number.NaN)).toMatchObject({ ok: false });
    expect(vanSlyke(0, 2.5, 0.4)).toEqual({ ok: false, why: 'fat and casein must be above 0' });
  });

  it('tells moister cheese as more of it, and back again', () => {
    const drier = vanSlyke(4, 2.6, 0.37);
    const moister = vanSlyke(4, 2.6, 0.5);
    if (!drier.ok || !moister.ok) throw new Error('no yield');
    expect(atMoisture(drier.yield_kgPer100kg, 37, 50)).toBeCloseTo(moister.yield_kgPer100kg, 12);
  });
});

describe('soapBatch()', () => {
  it('never turns all of the oil, and always carries its cautions', () => {
    for (const spare of [0, 0.049, 1, Number.NaN])
      expect(soapBatch([{ oil: 'olive', weight: 100 }], spare).ok).toBe(false);
    const oils = Object.keys(LYE_PER_OIL) as SoapOil[];
    fc.assert(
      fc.property(fc.constantFrom(...oils), fc.double({ min: 1, max: 5000, noNaN: true }), (oil, weight) => {
        const batch = soapBatch([{ oil, weight }]);
        if (!batch.ok) throw new Error(batch.why);
        expect(batch.lye).toBeLessThan(weight * LYE_PER_OIL[oil]);
        expect(batch.cautions).toContain('lye-adults-only');
      }),
    );
  });

  it('has no batch without oil', () => {
    expect(soapBatch([])).toEqual({ ok: false, why: 'a batch needs oil' });
    expect(soapBatch([{ oil: 'olive', weight: 10 }, { oil: 'lard', weight: -1 }])).toMatchObject({ ok: false }); // prettier-ignore
  });
});

describe('overrun()', () => {
  it('is the air, and nothing where something is wrong', () => {
    expect(overrun(2, 3)).toBe(0.5);
    expect(overrun(2, 2)).toBe(0);
    expect(overrun(0, 1)).toBeNull();
    expect(overrun(2, 1.9)).toBeNull();
  });
});
