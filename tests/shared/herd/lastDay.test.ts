// Which day and week the figures speak of.
import { describe, expect, it } from 'vitest';
import { computeFigures } from '../../../shared/herd/figures.ts';
import { findLastDay } from '../../../shared/herd/lastDay.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';

const CLOVER = 'clover 2026-03-01 weaned 2026-04-01';
const JUNE = dates('2026-06-01', '2026-06-10');

const lastOf = (book: ReturnType<typeof bookOf>, asOf: string) => {
  const { state, wholeDay, window } = computeFigures(book, day(asOf));
  return { state, wholeDay, to: window?.to ?? null };
};

describe('findLastDay', () => {
  it('takes a day only when every expected milking is entered', () => {
    const book = bookOf([CLOVER], [...twice('clover', JUNE), '2026-06-11 am clover 2 L']);
    expect(lastOf(book, '2026-06-11')).toEqual({ state: 'milking', wholeDay: true, to: '2026-06-10' });
  });

  it('takes asOf itself once it is whole', () => {
    const book = bookOf([CLOVER], twice('clover', JUNE));
    expect(lastOf(book, '2026-06-10').to).toBe('2026-06-10');
  });

  it('needs every doe of whom a milking was expected, and no others', () => {
    const rows = [...twice('clover', JUNE), ...twice('bess', JUNE.slice(0, -1))];
    expect(lastOf(bookOf([CLOVER, 'bess 2026-03-01 weaned 2026-04-01'], rows), '2026-06-10').to).toBe(
      '2026-06-09',
    );
    const dry = 'bess 2026-03-01 weaned 2026-04-01 dry 2026-06-10';
    expect(lastOf(bookOf([CLOVER, dry], rows), '2026-06-10').to).toBe('2026-06-10');
  });

  it('counts an entry whatever its use', () => {
    const book = bookOf([CLOVER], ['2026-06-10 am clover 2 L lost', '2026-06-10 pm clover 2 L withheld']);
    expect(lastOf(book, '2026-06-10')).toEqual({ state: 'milking', wholeDay: true, to: '2026-06-10' });
  });

  it('does not call a day whole on which nothing was expected', () => {
    const book = bookOf(['clover 2026-03-01 weaned 2026-04-01 dry 2026-06-10'], ['2026-06-10 am clover 1 L']);
    expect(lastOf(book, '2026-06-12')).toEqual({ state: 'milking', wholeDay: false, to: '2026-06-10' });
  });

  it('finds a whole day on the first of the 14 days that end on asOf', () => {
    const rows = [...twice('clover', ['2026-06-10']), '2026-06-20 am clover 2 L'];
    expect(lastOf(bookOf([CLOVER], rows), '2026-06-23')).toEqual({
      state: 'milking',
      wholeDay: true,
      to: '2026-06-10',
    });
  });

  it('falls back on the newest entry where no day of the 14 is whole', () => {
    const rows = [...twice('clover', ['2026-06-10']), '2026-06-20 am clover 2 L'];
    expect(lastOf(bookOf([CLOVER], rows), '2026-06-24')).toEqual({
      state: 'milking',
      wholeDay: false,
      to: '2026-06-20',
    });
  });

  it('rests from the day on which the last day lies 14 days back', () => {
    const book = bookOf(['clover 2026-03-01 weaned 2026-04-01 dry 2026-06-11'], twice('clover', JUNE));
    expect(lastOf(book, '2026-06-23')).toEqual({ state: 'milking', wholeDay: true, to: '2026-06-10' });
    expect(lastOf(book, '2026-06-24')).toEqual({ state: 'resting', wholeDay: true, to: '2026-06-10' });
    expect(lastOf(book, '2026-12-24')).toEqual({ state: 'resting', wholeDay: true, to: '2026-06-10' });
  });

  it('goes back to the last whole day, past unwhole entries that are old too', () => {
    const rows = [...twice('clover', ['2026-06-10']), '2026-06-20 am clover 2 L'];
    expect(lastOf(bookOf([CLOVER], rows), '2026-07-20')).toEqual({
      state: 'resting',
      wholeDay: true,
      to: '2026-06-10',
    });
  });

  it('tells an old book without any whole day by its newest entry', () => {
    const book = bookOf([CLOVER], ['2026-06-10 am clover 2 L']);
    expect(lastOf(book, '2026-12-01')).toEqual({ state: 'resting', wholeDay: false, to: '2026-06-10' });
  });

  it('has no window in an empty book, nor before the first row', () => {
    const empty = { state: 'empty', wholeDay: false, to: null };
    expect(lastOf(bookOf([]), '2026-06-10')).toEqual(empty);
    expect(lastOf(bookOf([CLOVER]), '2026-06-10')).toEqual(empty);
    expect(lastOf(bookOf([CLOVER], twice('clover', JUNE)), '2026-05-31')).toEqual(empty);
  });

  it('ends a window of seven days on the last day', () => {
    const { window } = findLastDay(openLedger(bookOf([CLOVER], twice('clover', JUNE)), day('2026-06-12')));
    expect(window).toEqual({ from: day('2026-06-04'), to: day('2026-06-10') });
  });
});
