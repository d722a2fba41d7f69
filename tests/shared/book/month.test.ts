// The month against a second, slow way over the rows, and its sums against the figures of the contract.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookUnit, monthsOf, monthSpan, monthView, type CellState } from '../../../shared/book/month.ts';
import { isoDate } from '../../../shared/calendar/day.ts';
import { figuresOf } from '../../../shared/herd/figures.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { bookOf, day } from '../../support/bookOf.ts';
import { dateOf, datesBetween, plainEntries, plainExpected } from '../../support/plainHerd.ts';
import { asDouble, sumOf } from '../../support/fraction.ts';
import { caseArb } from '../../support/randomBook.ts';

const US = { units: 'us', recordUnit: 'cup' } as const;
const METRIC = { units: 'metric', recordUnit: 'L' } as const;
const view = (kiddings: string[], rows: string[], today: string, month = today.slice(0, 7)) => {
  const book = bookOf(kiddings, rows);
  return monthView(book, openLedger(book, day(today)), US, month);
};
const KIDDED = 'clover 2026-03-01 apart 2026-03-20 weaned 2026-05-02';
const stateOf = (month: ReturnType<typeof view>, date: string, milking: 'am' | 'pm'): CellState | undefined =>
  month.does[0]?.days[Number(date.slice(8)) - 1]?.[milking].state;

describe('a month of the book', () => {
  it('has the days of its month, and is none in any other text', () => {
    expect(monthSpan('2028-02')).toEqual({ from: day('2028-02-01'), to: day('2028-02-29') });
    expect(['2026-13', '2026-00', '2026-5', '', '2026-05-01', 'constructor'].map(monthSpan)).toEqual(
      Array.from({ length: 6 }, () => null),
    );
    expect(() => view([KIDDED], [], '2026-05-10', '2026-99')).toThrow('"2026-99" is no month.');
  });

  it('tells expected and not entered from not expected, from today and from days ahead', () => {
    const month = view([KIDDED], ['2026-05-01 am clover 9 cup', '2026-05-02 am clover 8 cup'], '2026-05-04');
    expect([
      stateOf(month, '2026-05-01', 'am'),
      stateOf(month, '2026-05-01', 'pm'),
      stateOf(month, '2026-05-02', 'pm'),
      stateOf(month, '2026-05-04', 'am'),
      stateOf(month, '2026-05-05', 'am'),
    ]).toEqual(['entered', 'none', 'missing', 'open', 'ahead']);
    expect(month.missing).toBe(3);
    expect(month.days[3]).toMatchObject({ date: '2026-05-04', open: 2, missing: 0, whole: false });
    expect(month.days[0]?.whole).toBe(true);
  });

  it('hides no row: what a correction stands over is there, newest first', () => {
    const rows = [
      '2026-05-03 am clover 9 cup @1000',
      '2026-05-03 am clover 90 cup @3000',
      '2026-05-03 am clover 8 cup',
      '2026-05-03 am clover 10 cup withheld @9000',
    ];
    const cell = view([KIDDED], rows, '2026-05-10').does[0]?.days[2]?.am;
    expect(cell?.row).toMatchObject({ shown: 10, use: 'withheld', line: 5 });
    expect(cell?.older.map(({ shown }) => shown)).toEqual([90, 9, 8]);
  });

  it('shows a struck-out milking as one to be entered where it is expected, else as struck out', () => {
    const rows = ['2026-05-01 pm clover 9 cup @1', '2026-05-01 pm clover - @2', '2026-05-03 am clover - @2'];
    const month = view([KIDDED], rows, '2026-05-10');
    expect(stateOf(month, '2026-05-01', 'pm')).toBe('struck');
    expect(month.does[0]?.days[0]?.pm.older[0]?.shown).toBe(9);
    expect(stateOf(month, '2026-05-03', 'am')).toBe('missing');
    expect(month.sum).toEqual({ all: 0, kept: 0, rows: 0 });
  });

  it('sums all milk and kept milk by doe, day and month', () => {
    const rows = [
      '2026-05-01 am clover 9 1/2 cup',
      '2026-05-02 am clover 8 cup fed',
      '2026-05-02 pm clover 7 1/4 cup lost',
      '2026-05-02 am heather 1 qt',
    ];
    const month = view([KIDDED], rows, '2026-05-10');
    expect(month.sum).toEqual({ all: 28.75, kept: 13.5, rows: 4 });
    expect(month.days[1]?.sum).toEqual({ all: 19.25, kept: 4, rows: 3 });
    expect(month.does.map(({ id, sum }) => [id, sum.all])).toEqual([
      ['clover', 24.75],
      ['heather', 4],
    ]);
  });

  it('leaves out does of whom nothing is expected and nothing written, and rows after its day', () => {
    const month = view([KIDDED, 'fern 2026-08-01'], ['2026-05-20 am clover 9 cup'], '2026-05-10');
    expect(month.does.map(({ id }) => id)).toEqual(['clover']);
    expect(month.sum.rows).toBe(0);
  });

  it('is written in the unit of the book, where the pages use its system', () => {
    expect(bookUnit({ units: 'us', recordUnit: 'lb' })).toBe('lb');
    expect(bookUnit({ units: 'metric', recordUnit: 'kg' })).toBe('kg');
    expect(bookUnit({ units: 'us', recordUnit: 'kg' })).toBe('cup');
    expect(bookUnit({ units: 'metric', recordUnit: 'cup' })).toBe('L');
  });

  it('is empty and whole in an empty book', () => {
    const month = view([], [], '2026-05-10');
    expect(month).toMatchObject({ does: [], missing: 0, total_L: 0, months: [] });
    expect(month.days).toHaveLength(31);
  });
});

describe('any book', () => {
  it('has in its months what a plain walk over rows and days finds', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const ledger = openLedger(book, asOf);
        const entries = plainEntries(book.rows, asOf);
        for (const name of monthsOf(ledger)) {
          const month = monthView(book, ledger, METRIC, name);
          const mine = entries.filter(({ date }) => date.startsWith(name));
          expect(month.sum.rows).toBe(mine.length);
          expect(month.total_L).toBe(asDouble(sumOf(mine.map(({ litres }) => litres))));
          const kept = mine.filter(({ use }) => use === 'kept');
          expect(month.kept_L).toBe(asDouble(sumOf(kept.map(({ litres }) => litres))));
          const first = `${name}-01`;
          const last = month.days.at(-1)?.date ?? '';
          const missing = datesBetween(first, last < dateOf(asOf - 1) ? last : dateOf(asOf - 1)).flatMap(
            (date) =>
              book.does.flatMap(({ id }) =>
                plainExpected(book.kiddings, id, date).filter(
                  (milking) =>
                    !entries.some((one) => one.doe === id && one.date === date && one.milking === milking),
                ),
              ),
          );
          expect(month.missing).toBe(missing.length);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('shows every row of the month once', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const ledger = openLedger(book, asOf);
        const shown = monthsWithRows(book.rows.map((row) => row.day).filter((one) => one <= asOf)).flatMap(
          (name) =>
            monthView(book, ledger, US, name).does.flatMap((doe) =>
              doe.days.flatMap(({ am, pm }) => [am, pm].flatMap((cell) => [cell.row, ...cell.older])),
            ),
        );
        const known = new Set(book.does.map(({ id }) => id));
        const rows = book.rows.filter((row) => row.day <= asOf && known.has(row.doe));
        expect(shown.filter((row) => row !== null)).toHaveLength(rows.length);
      }),
      { numRuns: 60 },
    );
  });

  it('has months that add up to the year of the figures', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const ledger = openLedger(book, asOf);
        const year = figuresOf(book, ledger).figures['herd.year.total'];
        if (!year?.span) return;
        const own = year.span.from.slice(0, 4);
        const days = monthsOf(ledger)
          .filter((name) => name.startsWith(own))
          .flatMap((name) => monthView(book, ledger, METRIC, name).days);
        expect(days.reduce((sum, one) => sum + one.sum.rows, 0)).toBe(year.rows);
        const sum_L = days.reduce((sum, one) => sum + one.sum.all, 0);
        expect(Math.abs(sum_L - (year.value ?? 0))).toBeLessThanOrEqual(1e-9 * Math.max(1, sum_L));
      }),
      { numRuns: 60 },
    );
  });

  it('gives a day the total of the figures, to the last digit', () => {
    const rows = ['2026-05-02 am clover 9 1/3 cup', '2026-05-02 pm clover 2 lb', '2026-05-02 am fern 700 mL'];
    const book = bookOf([KIDDED], rows);
    const ledger = openLedger(book, day('2026-05-03'));
    const total = figuresOf(book, ledger).figures['herd.day.total']?.value;
    expect(monthView(book, ledger, METRIC, '2026-05').days[1]?.sum.all).toBe(total);
  });
});

function monthsWithRows(days: readonly number[]): string[] {
  return [...new Set(days.map((one) => isoDate(one).slice(0, 7)))];
}
