// Weeks of a lactation: means of whole days, the newest long enough, and a curve only where its peak may be told.
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { lactationWeeks } from '../../../shared/lactation/lactationWeeks.ts';
import { woodAt } from '../../../shared/lactation/wood.ts';
import { bookOf, dates, day } from '../../support/bookOf.ts';

const WOOD = { a: 2, b: 0.25, c: 0.005 };
const START = '2026-03-01';
/** Both milkings of each day from `from` days after kidding on, on the curve. */
const curved = (doe: string, from: number, to: number): string[] =>
  dates('2026-03-01', '2026-12-31')
    .map((date, t) => ({ date, t }))
    .filter(({ t }) => t >= from && t <= to)
    .flatMap(({ date, t }) => {
      const half = Math.round((woodAt(WOOD, t) * 1000) / 2);
      return [`${date} am ${doe} ${half} mL`, `${date} pm ${doe} ${half} mL`];
    });
const open = (kiddings: string[], rows: string[], asOf = '2026-10-01') => {
  const book = bookOf(kiddings, rows);
  return lactationWeeks(book, openLedger(book, day(asOf)));
};
const kidded = (doe: string) => `${doe} ${START} apart 2026-03-03 weaned 2026-03-04`;

describe('lactationWeeks', () => {
  it('gives the mean whole day of each week since kidding', () => {
    const [ada] = open([kidded('ada')], curved('ada', 4, 150));
    const week = ada?.weeks.find((one) => one.week === 5);
    const days = [28, 29, 30, 31, 32, 33, 34].map((t) => 2 * Math.round((woodAt(WOOD, t) * 1000) / 2));
    expect(week?.mean_mL).toBe(Math.round(days.reduce((sum, one) => sum + one, 0) / 7));
  });

  it('tells the curve that the days were made from, in mL a day', () => {
    const [ada] = open([kidded('ada')], curved('ada', 4, 150));
    expect(ada?.wood?.b).toBeCloseTo(WOOD.b, 2);
    expect(ada?.wood?.c).toBeCloseTo(WOOD.c, 3);
    expect((ada?.wood?.a ?? 0) / 1000).toBeCloseTo(WOOD.a, 1);
  });

  it('tells no curve of a stretch that only falls', () => {
    const [ada] = open([kidded('ada')], curved('ada', 120, 190));
    expect(ada?.weeks.length).toBeGreaterThanOrEqual(8);
    expect(ada?.wood).toBeNull();
  });

  it('leaves out weeks of fewer than four whole days, and does with fewer than eight weeks', () => {
    const rows = curved('ada', 4, 150).filter((row) => !/2026-04-(0[5-9]|1[0-1]) pm/.test(row));
    const [ada] = open([kidded('ada')], rows);
    expect(ada?.weeks.map(({ week }) => week)).not.toContain(6);
    expect(open([kidded('ada')], curved('ada', 4, 40))).toEqual([]);
    expect(open([], [])).toEqual([]);
  });

  it('gives four does at most, the longest first', () => {
    const does = ['a', 'b', 'c', 'd', 'e'];
    const found = open(
      does.map(kidded),
      does.flatMap((doe, index) => curved(doe, 4, 90 + 10 * index)),
    );
    expect(found.map(({ doe }) => doe)).toEqual(['e', 'd', 'c', 'b']);
  });
});
