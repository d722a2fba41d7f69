// What does take, by weight, phase and milk.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodyWeight } from '../../../shared/feed/bodyWeight.ts';
import { goatAndCow, lessOf } from '../../../shared/feed/goatAndCow.ts';
import { pasture_acres } from '../../../shared/feed/land.ts';
import { doeNeeds, herdNeeds } from '../../../shared/feed/needs.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book, Doe } from '../../../shared/herd/types.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { caseArb } from '../../support/randomBook.ts';

const doe = (id: string, weight_kg: number | null, breed = ''): Doe => ({ id, name: id, breed, born: null, weight_kg }); // prettier-ignore
const WEEK = dates('2026-06-10', '2026-06-17');
const weighed = (book: Book, weights: Record<string, number | null>): Book => ({
  ...book,
  does: book.does.map((one) => ({ ...one, weight_kg: weights[one.id] ?? null })),
});
const needs = (book: Book) => herdNeeds(book, openLedger(book, day('2026-06-17')));

describe('bodyWeight()', () => {
  it("is the farm's own figure, else the breed's, else nothing", () => {
    expect(bodyWeight(doe('a', 58, 'Alpine'))).toEqual({ ok: true, weight_kg: { low: 58, high: 58 }, from: 'does.csv' }); // prettier-ignore
    const dwarf = bodyWeight(doe('a', null, ' nigerian DWARF '));
    expect(dwarf.ok && [dwarf.from, dwarf.weight_kg.low, dwarf.weight_kg.high]).toEqual(['breed', 60 * 0.45359237, 80 * 0.45359237]); // prettier-ignore
    for (const breed of ['', 'mixed', 'constructor'])
      expect(bodyWeight(doe('a', null, breed)).ok).toBe(false);
  });
});

describe('doeNeeds()', () => {
  it('feeds a resting doe less than one in milk, and waters a doe with milk more', () => {
    const dry = doeNeeds(doe('a', 60), 'dry', { ok: true, milk_L: 0, days: 0 });
    const milking = doeNeeds(doe('a', 60), 'twice a day', { ok: true, milk_L: 3, days: 7 });
    expect(dry.dryFeed_kg).toEqual({ low: 60 * 0.02, high: 60 * 0.03 });
    expect(milking.dryFeed_kg).toEqual({ low: 2.4, high: 3 });
    expect(milking.water_L?.low).toBeGreaterThan(dry.water_L?.low ?? Infinity);
    expect(dry.concentrate_kg).toEqual({ low: 0, high: 0 });
  });

  it('has no water where her milk is not known, and no feed where her weight is not', () => {
    const nursing = doeNeeds(doe('a', null), 'with kids', { ok: false, why: 'her kids drink part of it' });
    expect([nursing.dryFeed_kg, nursing.water_L, nursing.concentrate_kg]).toEqual([null, null, null]);
  });
});

describe('herdNeeds()', () => {
  const milked = bookOf(
    ['clover 2026-03-01', 'bell 2026-03-01 dry 2026-05-01'],
    twice('clover', WEEK, '2 L'),
  );

  it('counts the doe that rests into the litre', () => {
    const found = needs(weighed(milked, { clover: 60, bell: 50 }));
    expect(found.animalUnits).toBeCloseTo(0.3, 12);
    if (!found.perLitre.ok) throw new Error(found.perLitre.why);
    expect(found.perLitre).toMatchObject({ milk_L: 4, does: 2, leftOut: [] });
    expect(found.perLitre.dryFeed_kg.low).toBeCloseTo((60 * 0.04 + 50 * 0.02) / 4, 12);
  });

  it('leaves a nursing doe, and one of no known weight, out of the litre by name', () => {
    const nursing = bookOf(['clover 2026-03-01', 'bell 2026-06-01 apart 2026-07-01'], twice('clover', WEEK));
    expect(needs(weighed(nursing, { clover: 60, bell: 50 })).perLitre).toMatchObject({ does: 1, leftOut: ['bell'] }); // prettier-ignore
    const found = needs(weighed(nursing, { bell: 50 }));
    expect(found.perLitre).toEqual({ ok: false, why: 'no doe with a known need gives milk' });
    expect(found.dryFeed_kg.does).toBe(1);
  });

  it('says why of a doe without a whole day, and of a herd at rest', () => {
    const partly = bookOf(['clover 2026-03-01'], ['2026-06-16 am clover 2 L']);
    expect(needs(partly).does[0]?.milk).toEqual({ ok: false, why: 'no whole day of hers is in the week' });
    expect(needs(bookOf([])).perLitre).toEqual({ ok: false, why: 'no doe with a known need gives milk' });
  });

  it('has an answer without a NaN for any book', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const numbers = JSON.stringify(herdNeeds(book, openLedger(book, asOf)), (_, value: unknown) => {
          if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${value}`);
          return value;
        });
        expect(numbers).toContain('"does"');
      }),
      { numRuns: 60 },
    );
  });
});

describe('goatAndCow()', () => {
  it('tells per animal and per kilogram, and that they disagree', () => {
    const { rows, disagree, notes } = goatAndCow();
    expect(new Set(rows.map(({ per }) => per))).toEqual(new Set(['animal', 'kg of milk']));
    expect(rows.find(({ what, per }) => what === 'methane' && per === 'animal')?.less).toBe('goat');
    expect(rows.find(({ what }) => what === 'climate')?.less).toBe('cow');
    expect(disagree).toBe(true);
    expect(notes).toContain('ghg-why');
    for (const row of rows) expect(row.facts.length).toBeGreaterThan(0);
  });

  it('calls alike what meets or lies within a tenth', () => {
    const at = (low: number, high = low) => ({ low, high });
    expect(lessOf(at(1, 3), at(2, 9))).toBe('alike');
    expect(lessOf(at(0.95), at(1))).toBe('alike');
    expect(lessOf(at(0.89), at(1))).toBe('goat');
    expect(lessOf(at(1.2), at(1))).toBe('cow');
  });
});

describe('pasture_acres()', () => {
  it('has no answer where nothing grows', () => {
    expect(pasture_acres({ head: 4, weight_lb: 135, days: 180, forage_lbPerAcre: 0 })).toBeNull();
    expect(pasture_acres({ head: 0, weight_lb: 135, days: 180, forage_lbPerAcre: 4000 })).toBe(0);
  });
});
