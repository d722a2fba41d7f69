// What must hold of the outlook of any book, however odd.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { BREED_YEARS } from '../../../shared/outlook/breeds.ts';
import { openOutlook, outlook } from '../../../shared/outlook/outlook.ts';
import { dateOf, plainExpected } from '../../support/plainHerd.ts';
import { caseArb, type Case } from '../../support/randomBook.ts';

const aheadArb = fc.oneof(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 5000 }));
const told = ({ book, asOf }: Case, after: number) => openOutlook(book, openLedger(book, asOf), []).on(asOf + after); // prettier-ignore

describe('the outlook of any book', () => {
  it('is finite, never below zero, its middle inside its range and equal to its parts', () => {
    fc.assert(
      fc.property(caseArb, aheadArb, (one, after) => {
        const { does, herd } = told(one, after);
        expect(does.map(({ doe }) => doe)).toEqual(one.book.does.map(({ id }) => id));
        for (const doe of [...does, herd]) {
          if (!doe.ok) continue;
          const { low_L, middle_L, high_L } = doe;
          expect([low_L, middle_L, high_L].every(Number.isFinite)).toBe(true);
          expect(0 <= low_L && low_L <= middle_L && middle_L <= high_L).toBe(true);
          if (!('parts' in doe) || !doe.parts) continue;
          const { level_LPerDay, curve, change } = doe.parts;
          expect(level_LPerDay * curve * change).toBeCloseTo(middle_L, -Math.log10(middle_L) + 9);
        }
      }),
    );
  });

  it('expects milk of a doe on the days and in the way that the contract says, but for the rest before kidding', () => {
    fc.assert(
      fc.property(caseArb, aheadArb, (one, after) => {
        for (const doe of told(one, after).does) {
          if (!doe.ok) continue;
          const milkings = plainExpected(one.book.kiddings, doe.doe, dateOf(one.asOf + after));
          const way = { 'twice a day': 2, 'nights apart': 1 }[doe.event.kind as string] ?? 0;
          if (doe.event.kind !== 'rest before kidding') expect(way).toBe(milkings.length);
          expect(doe.middle_L > 0).toBe(way > 0);
        }
      }),
    );
  });

  it('adds its does up, and has a range no wider than their extremes together', () => {
    fc.assert(
      fc.property(caseArb, aheadArb, (one, after) => {
        const { does, herd } = told(one, after);
        if (!herd.ok) return;
        const sum = does.reduce((total, doe) => total + (doe.ok ? doe.middle_L : 0), 0);
        expect(Math.abs(herd.middle_L - sum)).toBeLessThanOrEqual(1e-9 * sum);
        expect([...herd.does, ...herd.without].every((id) => does.some(({ doe }) => doe === id))).toBe(true);
        expect(herd.alike).toBeGreaterThanOrEqual(0);
        expect(herd.alike).toBeLessThanOrEqual(0.9);
      }),
    );
  });

  it('is the same whatever the order of the rows, and whatever is written after the day', () => {
    fc.assert(
      fc.property(caseArb, aheadArb, (one, after) => {
        const rows = [...one.book.rows].reverse().filter((row) => row.day <= one.asOf);
        expect(told({ ...one, book: { ...one.book, rows } }, after)).toEqual(told(one, after));
      }),
    );
  });

  it('is the same asked for many days at once as for each by itself', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const ledger = openLedger(book, asOf);
        const days = [asOf - 1, asOf, asOf + 1, asOf + 40];
        const opened = openOutlook(book, ledger, BREED_YEARS);
        expect(outlook(book, ledger, days)).toEqual(days.map((day) => opened.on(day)));
      }),
      { numRuns: 30 },
    );
  });
});
