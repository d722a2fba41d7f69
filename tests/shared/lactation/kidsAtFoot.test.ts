// What the kids likely took: the range by hand, its reasons, and that it never touches a sum.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../../shared/herd/types.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import {
  KID_FACTS,
  kidDay_L,
  kidsTaken,
  leftToKids_L,
  type KidFacts,
} from '../../../shared/lactation/kidsAtFoot.ts';
import { bookOf, dates, day } from '../../support/bookOf.ts';
import { dateOf } from '../../support/plainHerd.ts';
import { caseArb } from '../../support/randomBook.ts';

// Round facts for sums by hand: a kid of 4 kg that gains 0.1 kg a day to 8 kg, and takes 0.1 to 0.2 of its weight.
const ROUND: KidFacts = {
  share_low: 0.1, share_high: 0.2, birth_kg: 4, weaned_kg: 8, weaned_days: 40, harvest_low: 0.5, harvest_high: 0.75, milk_kgPerL: 1,
}; // prettier-ignore

function taken(book: Book, asOf: string, facts = ROUND) {
  return kidsTaken(book, openLedger(book, day(asOf)), 'clover', facts);
}
const withKids = (book: Book, kids: number | null): Book => ({
  ...book,
  kiddings: book.kiddings.map((one) => ({ ...one, kids })),
});

describe('one kid', () => {
  it('takes a part of its weight, which grows evenly to weaning', () => {
    expect(kidDay_L(0, ROUND)).toEqual({ low: 0.4, high: 0.8 });
    expect(kidDay_L(20, ROUND)?.low).toBeCloseTo(0.6, 12);
    expect(kidDay_L(40, ROUND)?.high).toBeCloseTo(1.6, 12);
    expect([-1, 41, NaN].map((age) => kidDay_L(age, ROUND))).toEqual([null, null, null]);
  });

  it('by the facts used takes 1 to 2 L a day at some weeks of age, as advice has it', () => {
    // Extension advice, from memory: about 1 to 2 L a day from two to eight weeks. Half to twice of that will do.
    for (const age of [14, 28, 42, 56]) {
      const range = kidDay_L(age);
      expect(range?.low).toBeGreaterThan(0.5);
      expect(range?.high).toBeLessThan(2);
    }
    expect(kidDay_L(56)?.high).toBeCloseTo((9 * 0.2) / 1.03, 12);
  });
});

describe('what a morning leaves', () => {
  it('is the rest of the day', () => {
    expect(leftToKids_L(3, ROUND)).toEqual({ low: 1, high: 3 });
    expect(leftToKids_L(0, ROUND)).toEqual({ low: 0, high: 0 });
    const { low, high } = leftToKids_L(1.2, KID_FACTS);
    expect([1.2 / (1.2 + low), 1.2 / (1.2 + high)]).toEqual([
      expect.closeTo(0.6, 12),
      expect.closeTo(0.4, 12),
    ]);
  });
});

describe('the kids of a kidding', () => {
  const KIDDING = 'clover 2026-03-01 apart 2026-03-11 weaned 2026-03-14';

  it('are summed day by day: by weight with her, by her mornings apart', () => {
    const rows = ['2026-03-11 am clover 3 L', '2026-03-12 am clover 6 L', '2026-03-14 am clover 9 L'];
    const [one, ...none] = taken(bookOf([KIDDING], rows), '2026-05-01');
    expect(none).toEqual([]);
    expect(one?.estimate).toBe(true);
    // Days 0 to 9: two kids of 4 kg to 4.9 kg, 44.5 kg of kid-days each, a tenth to a fifth of it in milk.
    expect(one?.spans[0]).toMatchObject({
      phase: 'with kids',
      days: { appetite: 10, harvest: 0 },
      open: false,
    });
    expect(one?.spans[0]?.low_L).toBeCloseTo(8.9, 9);
    expect(one?.spans[0]?.high_L).toBeCloseTo(17.8, 9);
    // 3 and 6 L leave 1 to 3 and 2 to 6; the morning of the 13th has no entry: two kids of 5.2 kg.
    expect(one?.spans[1]).toMatchObject({ phase: 'nights apart', days: { appetite: 1, harvest: 2 } });
    expect(one?.spans[1]?.low_L).toBeCloseTo(3 + 1.04, 9);
    expect(one?.spans[1]?.high_L).toBeCloseTo(9 + 2.08, 9);
    expect(one?.low_L).toBeCloseTo(12.94, 9);
    expect(one?.high_L).toBeCloseTo(28.88, 9);
    expect(one).toMatchObject({ unknownDays: 0, why: null });
  });

  it('are told up to the day of the book', () => {
    const [one] = taken(bookOf([KIDDING]), '2026-03-03');
    expect(one?.spans).toHaveLength(1);
    expect(one?.spans[0]).toMatchObject({ days: { appetite: 3, harvest: 0 }, open: true });
    expect(taken(bookOf([KIDDING]), '2026-02-28')).toEqual([]);
  });

  it('that nobody counted are told by her mornings alone', () => {
    const book = withKids(bookOf([KIDDING], ['2026-03-11 am clover 3 L']), null);
    expect(taken(book, '2026-05-01')[0]).toMatchObject({ low_L: 1, high_L: 3, unknownDays: 12, why: 'kidsNotCounted' }); // prettier-ignore
    expect(taken(withKids(bookOf([KIDDING]), null), '2026-05-01')[0]).toMatchObject({ low_L: null, high_L: null, unknownDays: 13 }); // prettier-ignore
  });

  it('that are none took nothing', () => {
    const book = withKids(bookOf([KIDDING], ['2026-03-11 am clover 3 L']), 0);
    expect(taken(book, '2026-05-01')[0]).toMatchObject({ low_L: 0, high_L: 0, unknownDays: 0, why: null });
  });

  it('past the weaning age are not guessed at', () => {
    const [one] = taken(bookOf(['clover 2026-03-01 weaned 2026-06-01']), '2026-07-01');
    expect(one).toMatchObject({ unknownDays: 92 - 41, why: 'pastWeaning' });
    expect(one?.spans[0]?.days.appetite).toBe(41);
  });

  it('of two kiddings in a year stand apart', () => {
    const both = taken(bookOf(['clover 2026-03-01 weaned 2026-03-11', 'clover 2026-10-01 weaned 2026-10-03']), '2026-12-01'); // prettier-ignore
    expect(both.map(({ kiddingDay, spans }) => [dateOf(kiddingDay), spans[0]?.days.appetite])).toEqual([['2026-03-01', 10], ['2026-10-01', 2]]); // prettier-ignore
  });
});

describe('over random books', () => {
  it('the range is in order, its days add up, and a longer book takes nothing back', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        for (const { id } of book.does) {
          const [now, later] = [asOf, asOf + 20].map((one) => kidsTaken(book, openLedger(book, one), id));
          now?.forEach((one, index) => {
            expect((one.low_L ?? 0) >= 0 && (one.high_L ?? 0) >= (one.low_L ?? 0)).toBe(true);
            expect(Number.isFinite(one.high_L ?? 0)).toBe(true);
            // A longer book may have a finer grain: the same litres then differ in their last place.
            expect((later?.[index]?.high_L ?? 0) * (1 + 1e-12) >= (one.high_L ?? 0)).toBe(true);
            for (const { days, unknownDays, from, to } of one.spans)
              expect(days.appetite + days.harvest + unknownDays).toBe(to - from + 1);
          });
        }
      }),
      { numRuns: 200 },
    );
  });

  it('a doe milked twice from the start had her kids for a day', () => {
    const book = bookOf(['clover 2026-03-01'], dates('2026-03-02', '2026-03-04').map((one) => `${one} am clover 1 L`)); // prettier-ignore
    expect(taken(book, '2026-05-01')[0]?.spans).toMatchObject([{ from: day('2026-03-01'), to: day('2026-03-01') }]); // prettier-ignore
  });
});
