// Corrections and strikes: which row stands, and which pairs nobody can tell apart.
import { describe, expect, it } from 'vitest';
import { computeFigures } from '../../../shared/herd/figures.ts';
import { standingRows } from '../../../shared/herd/standing.ts';
import { bookOf, day, row } from '../../support/bookOf.ts';

const standing = (texts: readonly string[]) => standingRows(texts.map((text, index) => row(text, index + 2)));
const linesOf = (texts: readonly string[]) => standing(texts).rows.map((one) => one.line);
const clashesOf = (texts: readonly string[]) =>
  standing(texts).clashes.map((pair) => pair.map((one) => one.line));

describe('standingRows', () => {
  it('lets the row entered last stand, wherever it is written', () => {
    const texts = ['2026-06-01 am a 1 L @5', '2026-06-01 am a 2 L @9', '2026-06-01 am a 3 L @7'];
    expect(linesOf(texts)).toEqual([3]);
    expect(linesOf([...texts].reverse())).toEqual([3]);
  });

  it('counts a row without a time of entry as oldest', () => {
    expect(linesOf(['2026-06-01 am a 1 L', '2026-06-01 am a 2 L @0'])).toEqual([3]);
    expect(linesOf(['2026-06-01 am a 1 L @0', '2026-06-01 am a 2 L'])).toEqual([2]);
  });

  it('strikes an entry out by an empty amount, and lets a later row restore it', () => {
    expect(linesOf(['2026-06-01 am a 1 L @1', '2026-06-01 am a - @2'])).toEqual([]);
    expect(linesOf(['2026-06-01 am a - @2', '2026-06-01 am a 3 L @3', '2026-06-01 am a 1 L @1'])).toEqual([
      3,
    ]);
  });

  it('does not strike by an older empty amount', () => {
    expect(linesOf(['2026-06-01 am a -', '2026-06-01 am a 1 L @1'])).toEqual([3]);
  });

  it('keeps does, dates and milkings apart', () => {
    const texts = [
      '2026-06-01 am a 1 L',
      '2026-06-01 pm a 1 L',
      '2026-06-02 am a 1 L',
      '2026-06-01 am b 1 L',
    ];
    expect(standing(texts)).toMatchObject({ rows: { length: 4 }, clashes: [] });
  });

  it('names both rows of a pair with the same time of entry, or with none', () => {
    expect(clashesOf(['2026-06-01 am a 1 L', '2026-06-01 am a 2 L'])).toEqual([[2, 3]]);
    expect(clashesOf(['2026-06-01 am a 1 L @4', '2026-06-01 am a 2 L @3', '2026-06-01 am a 2 L @4'])).toEqual(
      [[2, 4]],
    );
  });

  it('names a pair even where a third row is newer than both', () => {
    expect(clashesOf(['2026-06-01 am a 1 L', '2026-06-01 am a 2 L', '2026-06-01 am a 3 L @4'])).toEqual([
      [2, 3],
    ]);
  });

  it('names equal rows and two strikes as well: no row is dropped silently', () => {
    expect(clashesOf(['2026-06-01 am a 1 L @1', '2026-06-01 am a 1 L @1'])).toEqual([[2, 3]]);
    expect(clashesOf(['2026-06-01 am a - @1', '2026-06-01 am a - @1'])).toEqual([[2, 3]]);
  });

  it('names every row beyond the first, so that a person can settle all at once', () => {
    const texts = ['2026-06-01 am a 1 L', '2026-06-01 am a 2 L', '2026-06-01 am a 3 L'];
    expect(new Set(clashesOf(texts).flat())).toEqual(new Set([2, 3, 4]));
  });
});

describe('a struck-out entry in the figures', () => {
  it('is missing again, and its milk is gone', () => {
    const rows = ['2026-06-01 am a 1 L @1', '2026-06-01 pm a 2 L @1', '2026-06-01 pm a - @2'];
    const { figures, wholeDay } = computeFigures(bookOf(['a 2026-05-31'], rows), day('2026-06-01'));
    expect(wholeDay).toBe(false);
    expect(figures['herd.week.total']).toMatchObject({ value: 1, rows: 1 });
    expect(figures['herd.week.missing']?.value).toBe(1);
  });
});
