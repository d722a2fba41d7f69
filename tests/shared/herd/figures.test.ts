// The contract's figures on books small enough to add up by hand.
import { describe, expect, it } from 'vitest';
import { computeFigures, type Figure } from '../../../shared/herd/figures.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';

const WEEK = dates('2026-06-01', '2026-06-07');
const A = 'a 2026-03-01 weaned 2026-04-01';
const B = 'b 2026-03-01 apart 2026-04-01';

const of = (book: ReturnType<typeof bookOf>, asOf: string) => computeFigures(book, day(asOf)).figures;
const values = (figures: Readonly<Record<string, Figure>>, prefix: string) =>
  Object.fromEntries(
    Object.entries(figures)
      .filter(([id]) => id.startsWith(prefix))
      .map(([id, one]) => [id.slice(prefix.length), one.value]),
  );

describe('computeFigures', () => {
  it('adds up a week of two does', () => {
    const rows = [
      ...twice('a', WEEK, '2 L'),
      ...WEEK.map((date) => `${date} am b 500 mL`),
      '2026-06-07 pm b 250 mL fed',
    ];
    const figures = of(bookOf([A, B], rows), '2026-06-08');
    expect(values(figures, 'herd.')).toEqual({
      'day.total': 4.75, 'week.total': 31.75, 'week.kept': 31.5, 'week.missing': 0, 'week.dailyMean': 31.75 / 7,
      'week.does': 2, 'year.total': 31.75, 'best.day': 4.75,
    }); // prettier-ignore
    expect(values(figures, 'doe.a.')).toEqual({
      'week.total': 28,
      'week.best': 2,
      'week.dailyMean': 4,
      daysInMilk: 99,
    });
    expect(values(figures, 'doe.b.')).toEqual({ 'week.total': 3.75, 'week.best': 0.5, 'week.dailyMean': 3.75 / 7, daysInMilk: 99 }); // prettier-ignore
  });

  it('names unit, method, span and rows of every figure', () => {
    const figures = of(bookOf([A, B], twice('a', WEEK)), '2026-06-08');
    for (const [id, one] of Object.entries(figures)) {
      expect(['L', 'day', 'count'], id).toContain(one.unit);
      expect(one.method, id).toMatch(/^[A-Z].+\.$/);
      expect(Number.isInteger(one.rows), id).toBe(true);
      expect(one.span === null || one.span.from <= one.span.to, id).toBe(true);
    }
    expect(figures['herd.week.total']).toMatchObject({
      unit: 'L',
      rows: 14,
      span: { from: '2026-06-01', to: '2026-06-07' },
    });
    expect(figures['herd.week.missing']?.unit).toBe('count');
    expect(figures['herd.week.does']?.unit).toBe('count');
    expect(figures['doe.a.daysInMilk']?.unit).toBe('day');
  });

  it('counts missing milkings, and leaves days with one out of the means', () => {
    const rows = twice('a', WEEK).filter((text) => !text.startsWith('2026-06-03 pm'));
    const figures = of(bookOf([A], rows), '2026-06-07');
    expect(figures['herd.week.missing']?.value).toBe(1);
    expect(figures['herd.week.dailyMean']).toMatchObject({ value: 4, rows: 12 });
    expect(figures['doe.a.week.dailyMean']).toMatchObject({ value: 4, rows: 12 });
    expect(figures['herd.week.total']).toMatchObject({ value: 26, rows: 13 });
  });

  it('keeps a doe with all her milkings in her mean on a day that is not whole for the herd', () => {
    const rows = [...twice('a', WEEK), ...twice('b', WEEK.slice(1))];
    const figures = of(bookOf([A, 'b 2026-03-01 weaned 2026-04-01'], rows), '2026-06-07');
    expect(figures['doe.a.week.dailyMean']?.rows).toBe(14);
    expect(figures['herd.week.dailyMean']?.rows).toBe(24);
  });

  it('counts milk that was not expected, but asks for none of it', () => {
    const rows = [...WEEK.map((date) => `${date} am b 1 L`), '2026-06-07 pm b 3 L'];
    const figures = of(bookOf([B], rows), '2026-06-07');
    expect(figures['herd.day.total']?.value).toBe(4);
    expect(figures['doe.b.week.dailyMean']?.value).toBe(10 / 7);
    expect(figures['herd.week.missing']?.value).toBe(0);
  });

  it('gives a doe without an entry no milk rather than zero', () => {
    const figures = of(bookOf([A, 'c 2026-06-06 weaned 2026-07-01'], twice('a', WEEK)), '2026-06-07');
    expect(values(figures, 'doe.c.')).toEqual({
      'week.total': null,
      'week.best': null,
      'week.dailyMean': null,
      daysInMilk: 1,
    });
  });

  it('gives an entry of zero as an entry: nothing is missing, no doe has milk', () => {
    const figures = of(bookOf([A], twice('a', WEEK, '0 L')), '2026-06-07');
    expect(figures['herd.week.total']).toMatchObject({ value: 0, rows: 14 });
    expect(figures['herd.week.missing']?.value).toBe(0);
    expect(figures['herd.week.does']?.value).toBe(0);
    expect(figures['doe.a.week.total']?.value).toBe(0);
  });

  it('ends days in milk on the day she is dried off', () => {
    const book = bookOf(['a 2026-03-01 dry 2026-06-08'], twice('a', WEEK));
    expect(of(book, '2026-06-07')['doe.a.daysInMilk']?.value).toBe(98);
    expect(of(book, '2026-06-08')['doe.a.daysInMilk']?.value).toBeNull();
  });

  it('counts days in milk from the latest kidding that has happened', () => {
    const book = bookOf(['a 2025-03-01', 'a 2026-03-01', 'a 2027-03-01'], twice('a', WEEK));
    expect(of(book, '2026-06-07')['doe.a.daysInMilk']?.value).toBe(98);
    expect(of(book, '2025-03-01')['doe.a.daysInMilk']?.value).toBe(0);
    expect(of(book, '2025-02-28')['doe.a.daysInMilk']?.value).toBeNull();
  });

  it("stays in the last day's calendar year, and goes on to asOf within it", () => {
    const rows = [...twice('a', ['2025-12-31', '2026-01-01', '2026-01-02'], '1 L'), '2026-01-03 am a 1 L'];
    const book = bookOf(['a 2025-12-01 weaned 2025-12-02'], rows);
    expect(of(book, '2025-12-31')['herd.year.total']).toMatchObject({ value: 2, rows: 2 });
    expect(of(book, '2026-01-03')['herd.year.total']).toMatchObject({ value: 5, rows: 5 });
    const dried = bookOf(['a 2025-12-01 weaned 2025-12-02 dry 2026-01-01'], rows.slice(0, 2));
    expect(of(dried, '2026-02-01')['herd.year.total']).toMatchObject({
      value: 2,
      span: { from: '2025-01-01', to: '2025-12-31' },
    });
  });

  it('takes the best day from whole days alone, older ones included', () => {
    const rows = [...twice('a', ['2025-06-01'], '3 L'), ...twice('a', WEEK, '2 L'), '2026-06-08 am a 9 L'];
    const best = of(bookOf(['a 2025-03-01'], rows), '2026-06-08')['herd.best.day'];
    expect(best).toMatchObject({ value: 6, rows: 2, span: { from: '2025-06-01', to: '2025-06-01' } });
  });

  it('has null for every value of an empty book', () => {
    const { figures, state, window } = computeFigures(bookOf([]), day('2026-06-07'));
    expect([state, window]).toEqual(['empty', null]);
    expect(Object.keys(figures)).toHaveLength(8);
    for (const [id, one] of Object.entries(figures)) expect([id, one.value, one.rows]).toEqual([id, null, 0]);
  });
});
