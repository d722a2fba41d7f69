// The page of needs: bars to one scale, a quart beside a litre, pasture, goat beside cow.
import { describe, expect, it } from 'vitest';
import { doeNeeds, herdNeeds } from '../../../shared/feed/needs.ts';
import { comparedRows, needsRows, pastureRows, perMeasure } from '../../../shared/feed/needsPage.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Doe } from '../../../shared/herd/types.ts';
import { bookOf, day } from '../../support/bookOf.ts';

const doe = (id: string, weight_kg: number | null): Doe => ({
  id,
  name: id,
  breed: '',
  born: null,
  weight_kg,
});
const milk = { ok: true, milk_L: 3, days: 7 } as const;

describe('needsRows()', () => {
  it('gives the heaviest doe the whole bar and the others their part', () => {
    const rows = needsRows([doeNeeds(doe('a', 60), 'twice a day', milk), doeNeeds(doe('b', 30), 'twice a day', milk)], 'metric'); // prettier-ignore
    expect(rows.map(({ high_pct }) => high_pct)).toEqual([100, 50]);
    // 4 and 5 % of 60 kg.
    expect(rows[0]?.feed).toEqual({ low: expect.closeTo(2.4, 9) as number, high: 3, unit: 'kg' });
    expect(rows[0]?.low_pct).toBeCloseTo(80, 9);
  });

  it('has no feed and no bar where the weight is not known', () => {
    const [row] = needsRows([doeNeeds(doe('a', null), 'twice a day', milk)], 'us');
    expect(row).toMatchObject({ feed: null, weight: null, low_pct: 0, high_pct: 0 });
  });
});

describe('perMeasure()', () => {
  it('tells a litre in kilograms, and the same for a quart in pounds', () => {
    expect(perMeasure({ low: 1, high: 2 }, 'kg', 'metric')).toEqual({ low: 1, high: 2, unit: 'kg' });
    // 0.946352946 L a quart, 0.45359237 kg a pound.
    const quart = perMeasure({ low: 1, high: 2 }, 'kg', 'us');
    expect(quart.low).toBeCloseTo(0.946352946 / 0.45359237, 9);
    // A quart of water for a quart of milk is a litre for a litre.
    expect(perMeasure({ low: 1, high: 2 }, 'L', 'us').high).toBeCloseTo(2, 12);
  });
});

describe('pastureRows()', () => {
  const book = { ...bookOf(['a 2026-03-01']), does: [doe('a', 45.359237)] };
  const needs = herdNeeds(book, openLedger(book, day('2026-05-21')));

  it('is the rule of the handbook: head × 100 lb × 0.04 × 30 days ÷ forage', () => {
    const [thin] = pastureRows(needs, 'us');
    expect(thin?.forage).toBe(500);
    expect(thin?.area.high).toBeCloseTo((1 * 100 * 0.04 * 30) / 500, 9);
  });

  it('is the same land in hectares', () => {
    const [us, metric] = [pastureRows(needs, 'us')[0], pastureRows(needs, 'metric')[0]];
    expect((metric?.area.low ?? 0) / (us?.area.low ?? 1)).toBeCloseTo(0.40468564224, 9);
    expect((metric?.forage ?? 0) / (us?.forage ?? 1)).toBeCloseTo(1.12085, 5);
  });

  it('says nothing where no weight is known', () => {
    const unknown = { ...book, does: [doe('a', null)] };
    expect(pastureRows(herdNeeds(unknown, openLedger(unknown, day('2026-05-21'))), 'us')).toEqual([]);
  });
});

describe('comparedRows()', () => {
  it('has the longer side of each row whole', () => {
    const { rows } = comparedRows();
    for (const row of rows) expect(Math.max(row.goat_pct.high, row.cow_pct.high)).toBeCloseTo(100, 9);
    expect(rows.some(({ less }) => less === 'goat') && rows.some(({ less }) => less === 'cow')).toBe(true);
  });
});
