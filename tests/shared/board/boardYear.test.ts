// The herd's months of milk, summed a second, slow way over random books.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardYear, lastMonths } from '../../../shared/board/boardYear.ts';
import { isoDate } from '../../../shared/calendar/day.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { asDouble, sumOf } from '../../support/fraction.ts';
import { dateOf, daysLater, plainEntries } from '../../support/plainHerd.ts';
import { caseArb } from '../../support/randomBook.ts';

const yearOf = (book: Book, asOf: number) => boardYear(book, openLedger(book, asOf));

/** The thirteen months by walking back from the day, one day at a time; each entry is looked up by its date's text. */
function slowMonths(book: Book, asOf: number) {
  const entries = plainEntries(book.rows, asOf);
  const months: string[] = [];
  for (let date = dateOf(asOf); months.length < 13; date = daysLater(date, -1))
    if (!months.includes(date.slice(0, 7))) months.unshift(date.slice(0, 7));
  return months.map((month) => {
    const own = entries.filter(({ date }) => date.startsWith(month));
    const total_L = own.length === 0 ? 0 : asDouble(sumOf(own.map(({ litres }) => litres)));
    return { month, total_mL: total_L * 1000, rows: own.length };
  });
}

describe('boardYear()', () => {
  it('sums the same months as a walk over every day, for any book', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const { months } = yearOf(book, asOf);
        const slow = slowMonths(book, asOf);
        expect(months.map(({ month, rows }) => [month, rows])).toEqual(
          slow.map(({ month, rows }) => [month, rows]),
        );
        for (const [i, { total_mL }] of months.entries())
          expect(total_mL).toBeCloseTo(slow[i]?.total_mL ?? Number.NaN, 6);
      }),
      { numRuns: 200 },
    );
  });

  it('leaves out what is later than the day, and what is older than a year', () => {
    const book = bookOf(
      ['ash 2025-01-10'],
      ['2025-05-31 am ash 9 L', '2025-06-01 am ash 1 L', '2026-06-30 am ash 2 L', '2026-07-01 am ash 4 L'],
    );
    const { months } = yearOf(book, day('2026-06-30'));
    expect(months).toHaveLength(13);
    expect(months[0]).toEqual({ month: '2025-06', total_mL: 1000, rows: 1 });
    expect(months[12]).toEqual({ month: '2026-06', total_mL: 2000, rows: 1 });
    expect(months.reduce((sum, { rows }) => sum + rows, 0)).toBe(2);
  });

  it('has thirteen empty months and nothing to come in an empty book', () => {
    const year = yearOf(bookOf([]), day('2026-12-08'));
    expect(year.months.map(({ rows, total_mL }) => rows + total_mL)).toEqual(Array(13).fill(0));
    expect([year.stop.ok, year.coming.ok]).toEqual([false, false]);
  });

  it('tells in December when milk comes back: a year after the last kids, and three weeks more', () => {
    // A doe kids about once a year and feeds her kids alone for three weeks: common practice, no source.
    const book = bookOf(
      ['ash 2026-02-20 weaned 2026-05-01 dry 2026-11-01'],
      twice('ash', dates('2026-10-20', '2026-10-31')),
    );
    const { stop, coming } = yearOf(book, day('2026-12-08'));
    expect(stop.ok).toBe(false);
    expect(coming.ok && isoDate(coming.start.day)).toBe('2027-03-13');
  });
});

describe('lastMonths()', () => {
  it('crosses the turn of a year, and keeps its length', () => {
    expect(lastMonths('2026-12-31', 13)).toHaveLength(13);
    expect(lastMonths('2026-12-31', 13)[0]).toBe('2025-12');
    expect(lastMonths('2026-01-01', 2)).toEqual(['2025-12', '2026-01']);
  });
});
