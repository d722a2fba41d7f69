// The estimate of a single missed milking: by hand, its reasons, its range, and that no sum knows of it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeFigures } from '../../../shared/herd/figures.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { milkingsByDoe, missedMilking, type MissedMilking } from '../../../shared/lactation/missedMilking.ts';
import { bookOf, dates, day } from '../../support/bookOf.ts';
import { caseArb } from '../../support/randomBook.ts';
import { normals } from '../../support/woodPoints.ts';

const DATES = dates('2026-05-01', '2026-05-29');
const HOLE = '2026-05-15';

function estimate(book: Book, date = HOLE, milking: 'am' | 'pm' = 'pm', asOf = '2026-06-30'): MissedMilking {
  const ledger = openLedger(book, day(asOf));
  return missedMilking(
    ledger,
    milkingsByDoe(ledger).get('clover') ?? new Map(),
    'clover',
    day(date),
    milking,
  );
}

/** Three parts in the morning and two in the evening, of a day's milk that may change. */
function rows(day_L: (index: number) => number, without: readonly string[]): string[] {
  return DATES.flatMap((date, index) => [
    `${date} am clover ${(day_L(index) * 0.6).toFixed(3)} L`,
    `${date} pm clover ${(day_L(index) * 0.4).toFixed(3)} L`,
  ]).filter((line) => !without.some((start) => line.startsWith(start)));
}
const twice = 'clover 2026-04-01';

describe('a missed milking', () => {
  it('is found from her morning, her share and the days beside', () => {
    // A day's milk that grows by 0.1 L: both guesses are right, so the estimate is, and the range is next to nothing.
    const told = estimate(
      bookOf(
        [twice],
        rows((index) => 2 + index / 10, [`${HOLE} pm`]),
      ),
    );
    if (!told.ok) throw new Error(told.why);
    expect(told.estimate_L).toBeCloseTo(0.4 * 3.4, 6);
    expect(told.amShare).toBeCloseTo(0.6, 9);
    expect(told).toMatchObject({ estimate: true, from: 'both', triedOn: 28 });
    expect(told.high_L - told.low_L).toBeLessThan(0.1);
  });

  it('is the mean of the two guesses where they differ', () => {
    // Milk of 2 L a day, and a morning of 1.8 L on the day: 1.2 L by the share, 0.8 L by the days beside.
    const day_L = (index: number) => (DATES[index] === HOLE ? 3 : 2);
    const told = estimate(bookOf([twice], rows(day_L, [`${HOLE} pm`])));
    expect(told.ok && told.estimate_L).toBeCloseTo(1, 6);
  });

  it('of a morning uses the share the other way round', () => {
    const told = estimate(
      bookOf(
        [twice],
        rows(() => 2.5, [`${HOLE} am`]),
      ),
      HOLE,
      'am',
    );
    expect(told.ok && told.estimate_L).toBeCloseTo(1.5, 6);
  });

  it('with the whole day missing comes from the days beside, near ones first', () => {
    const missing = [HOLE, '2026-05-14'];
    const told = estimate(
      bookOf(
        [twice],
        rows((index) => 2 + index / 10, missing),
      ),
    );
    // Two days before and one after: on a straight line between them.
    expect(told).toMatchObject({ ok: true, from: 'daysBeside', amShare: null });
    expect(told.ok && told.estimate_L).toBeCloseTo(0.4 * 3.4, 6);
  });

  it('with nobody beside it comes from the other milking', () => {
    const around = ['12', '13', '14', '16', '17', '18'].map((one) => `2026-05-${one}`);
    const told = estimate(
      bookOf(
        [twice],
        rows(() => 2, [...around, `${HOLE} pm`]),
      ),
    );
    expect(told).toMatchObject({ ok: true, from: 'otherMilking' });
    expect(told.ok && told.estimate_L).toBeCloseTo(0.8, 6);
  });

  it('of nights apart comes from the mornings beside', () => {
    const mornings = DATES.filter((date) => date !== HOLE).map((date) => `${date} am clover 1.5 L`);
    const told = estimate(bookOf(['clover 2026-04-01 apart 2026-05-01'], mornings), HOLE, 'am');
    expect(told).toMatchObject({ ok: true, from: 'daysBeside', estimate_L: 1.5, low_L: 1.5, high_L: 1.5 });
  });

  it('stays in her phase: mornings with kids at foot say nothing of full milking', () => {
    const before = DATES.slice(0, 14).map((date) => `${date} am clover 0.5 L`);
    const after = rows(() => 2, DATES.slice(0, 15));
    const told = estimate(bookOf([`clover 2026-04-01 apart 2026-05-01 weaned ${HOLE}`], [...before, ...after]), HOLE, 'am'); // prettier-ignore
    expect(told.ok && told.estimate_L).toBeCloseTo(1.2, 6);
  });
});

describe('there is no estimate', () => {
  const full = rows(() => 2, []);
  it.each<[string, Book, string, 'am' | 'pm', string]>([
    ['of an entry', bookOf([twice], full), HOLE, 'pm', 'entered'],
    ['of a day with kids', bookOf(['clover 2026-05-10 weaned 2026-05-20'], []), HOLE, 'am', 'notExpected'],
    [
      'of an evening of nights apart',
      bookOf(['clover 2026-04-01 apart 2026-04-02'], []),
      HOLE,
      'pm',
      'notExpected',
    ],
    ['of a dry doe', bookOf(['clover 2026-04-01 dry 2026-05-01'], []), HOLE, 'pm', 'notExpected'],
    ['before she kidded', bookOf([twice], full), '2026-03-01', 'pm', 'notExpected'],
    ['after the day of the book', bookOf([twice], full), '2026-07-01', 'pm', 'notExpected'],
    ['far from any entry', bookOf([twice], full), '2026-06-20', 'pm', 'noMilkBeside'],
    ['in an empty book', bookOf([twice], []), HOLE, 'pm', 'noMilkBeside'],
    ['from one row', bookOf([twice], ['2026-05-14 pm clover 1 L']), HOLE, 'pm', 'tooFewDays'],
  ])('%s', (_, book, date, milking, why) => {
    expect(estimate(book, date, milking)).toEqual({ ok: false, why });
  });
});

describe('the range', () => {
  it('holds the truth about eight times in ten', () => {
    const normal = normals(11);
    let [told, held] = [0, 0];
    for (let round = 0; round < 400; round += 1) {
      const lines = DATES.flatMap((date) => [`${date} am clover ${Math.max(0, 1.8 + 0.2 * normal()).toFixed(3)} L`, `${date} pm clover ${Math.max(0, 1.2 + 0.2 * normal()).toFixed(3)} L`]); // prettier-ignore
      const truth = Number(/pm clover (\S+)/.exec(lines.find((line) => line.startsWith(`${HOLE} pm`)) ?? '')?.[1]); // prettier-ignore
      const book = bookOf([twice], lines.filter((line) => !line.startsWith(`${HOLE} pm`))); // prettier-ignore
      const one = estimate(book);
      if (!one.ok) continue;
      told += 1;
      if (one.low_L <= truth && truth <= one.high_L) held += 1;
    }
    expect(told).toBe(400);
    // Give or take 2 in 100 for 400 tries, and the tried days share their neighbours.
    expect(held / told).toBeGreaterThan(0.74);
    expect(held / told).toBeLessThan(0.88);
  });
});

describe('over random books', () => {
  it('it is a number at least 0 within its range, or a reason, for every milking expected and missing', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const ledger = openLedger(book, asOf);
        const before = JSON.stringify(computeFigures(book, asOf));
        const byDoe = milkingsByDoe(ledger);
        for (const { id } of book.does)
          for (let date = asOf - 40; date <= asOf + 1; date += 1)
            for (const milking of ['am', 'pm'] as const) {
              const one = missedMilking(ledger, byDoe.get(id) ?? new Map(), id, date, milking);
              if (!one.ok) continue;
              expect([one.low_L, one.estimate_L, one.high_L].every(Number.isFinite)).toBe(true);
              expect(0 <= one.low_L && one.low_L <= one.estimate_L && one.estimate_L <= one.high_L).toBe(
                true,
              );
              expect(one.triedOn).toBeGreaterThanOrEqual(5);
            }
        expect(JSON.stringify(computeFigures(book, asOf))).toBe(before);
      }),
      { numRuns: 100 },
    );
  });
});
