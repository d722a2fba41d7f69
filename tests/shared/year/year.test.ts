// The year of a doe and of the herd, told from what the book holds and what it leaves open.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../shared/calendar/day.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { doeYear, type YearMark } from '../../../shared/year/doeYear.ts';
import { bredFor, dryOffFor, dueFrom } from '../../../shared/year/gestation.ts';
import { herdYear } from '../../../shared/year/herdYear.ts';
import { nextKidding, type Breeding } from '../../../shared/year/nextKidding.ts';
import { seasonName, seasonsOf } from '../../../shared/year/seasons.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { caseArb } from '../../support/randomBook.ts';

const bred = (doe: string, date: string): Breeding[] => [{ doe, day: day(date) }];
const NONE: Breeding[] = [];
const yearOf = (kiddings: string[], asOf: string, breedings = NONE) =>
  doeYear(bookOf(kiddings), day(asOf), 'clover', breedings);
const told = (kiddings: string[], asOf: string, breedings = NONE) =>
  yearOf(kiddings, asOf, breedings).events.map(
    ({ what, day, from, to, basis, of }) =>
      `${of === 'the next one' ? 'next: ' : ''}${what} ${isoDate(day)} (${day - from}/${to - day}) ${basis}`,
  );

describe('dueFrom(), bredFor(), dryOffFor()', () => {
  it('go back and forth', () => {
    expect(bredFor(dueFrom(1000).day)).toBe(1000);
    expect(dueFrom(1000).day - dryOffFor(dueFrom(1000).day)).toBe(60);
  });
});

describe('nextKidding()', () => {
  const next = (kiddings: string[], asOf: string, breedings = NONE) =>
    nextKidding(bookOf(kiddings).kiddings, breedings, day(asOf));

  it('takes a kidding that the book dates ahead before anything else', () => {
    const found = next(['clover 2026-03-01', 'clover 2027-03-10'], '2026-12-01', bred('clover', '2026-10-20'));
    expect(found).toMatchObject({ basis: 'book', day: day('2027-03-10'), from: day('2027-03-05'), to: day('2027-03-15') });
  }); // prettier-ignore

  it('counts from her latest breeding, unless she has kidded since', () => {
    const breedings = [...bred('clover', '2026-09-24'), ...bred('clover', '2026-10-15')];
    expect(next(['clover 2026-03-01'], '2026-12-01', breedings)).toMatchObject({
      basis: 'counted',
      day: day('2027-03-14'),
    });
    expect(next(['clover 2026-03-01'], '2026-05-01', bred('clover', '2025-10-01'))).toMatchObject({
      basis: 'common practice',
    });
  });

  it('says that a due date has passed', () => {
    expect(next(['clover 2026-03-01'], '2027-03-20', bred('clover', '2026-10-15'))).toEqual({
      ok: false,
      why: 'her due date has passed without a new row',
    });
  });

  it('falls back on her own interval, or a year where that is odd', () => {
    const days = (...kiddings: string[]) => {
      const found = next(kiddings, '2026-05-01');
      return found.ok && found.day - day('2026-03-01');
    };
    expect(days('clover 2025-03-31', 'clover 2026-03-01')).toBe(335);
    expect(days('clover 2025-09-01', 'clover 2026-03-01')).toBe(365);
    expect(days('clover 2023-03-01', 'clover 2026-03-01')).toBe(365);
    expect(days('clover 2026-03-01')).toBe(365);
  });

  it('has no next kidding for a doe without one, or whose last is long ago', () => {
    expect(next([], '2026-05-01')).toEqual({ ok: false, why: 'no kidding of hers is in the book' });
    expect(next(['clover 2016-03-01'], '2026-05-01')).toMatchObject({
      why: 'her last kidding is more than a year ago',
    });
    expect(next([], '2026-12-01', bred('clover', '2026-10-15'))).toMatchObject({
      ok: true,
      basis: 'counted',
    });
  });
});

describe('doeYear()', () => {
  it('takes from the book what it has, and counts the rest from a breeding', () => {
    expect(told(['clover 2026-03-01 apart 2026-03-22 weaned 2026-05-10'], '2026-12-01', bred('clover', '2026-10-15'))).toMatchInlineSnapshot(`
      [
        "kidded 2026-03-01 (0/0) book",
        "apart 2026-03-22 (0/0) book",
        "first milk 2026-03-22 (0/0) book",
        "most milk 2026-04-12 (14/14) counted",
        "weaned 2026-05-10 (0/0) book",
        "dry 2027-01-13 (5/5) counted",
        "next: due 2027-03-14 (5/5) counted",
        "next: apart 2027-04-04 (5/5) common practice",
        "next: first milk 2027-04-04 (5/5) common practice",
        "next: most milk 2027-04-25 (19/19) counted",
        "next: weaned 2027-05-23 (12/12) common practice",
        "next: dry 2028-01-13 (70/5) common practice",
      ]
    `);
  }); // prettier-ignore

  it('leaves what is not known to common practice', () => {
    expect(told(['clover 2026-03-01 apart 2026-03-22'], '2026-04-01')).toMatchInlineSnapshot(`
      [
        "kidded 2026-03-01 (0/0) book",
        "apart 2026-03-22 (0/0) book",
        "first milk 2026-03-22 (0/0) book",
        "most milk 2026-04-12 (14/14) counted",
        "weaned 2026-05-10 (7/7) common practice",
        "dry 2026-12-31 (65/0) common practice",
        "next: due 2027-03-01 (21/21) common practice",
        "next: apart 2027-03-22 (21/21) common practice",
        "next: first milk 2027-03-22 (21/21) common practice",
        "next: most milk 2027-04-12 (35/35) common practice",
        "next: weaned 2027-05-10 (28/28) common practice",
        "next: dry 2027-12-31 (86/21) common practice",
      ]
    `);
  });

  it('knows no nights apart for kids on the bottle, now and next time', () => {
    const marks: YearMark[] = yearOf(['clover 2026-03-01'], '2026-05-01').events.map(({ what }) => what);
    expect(marks).not.toContain('apart');
    expect(marks.filter((what) => what === 'first milk')).toHaveLength(2);
    expect(told(['clover 2026-03-01'], '2026-05-01')).toContain('first milk 2026-03-02 (0/0) book');
  });

  it('has no milk of a doe that was dried off at once', () => {
    expect(told(['clover 2026-03-01 dry 2026-03-01'], '2026-03-02')[0]).toBe('kidded 2026-03-01 (0/0) book');
    expect(told(['clover 2026-03-01 dry 2026-03-01'], '2026-03-02')).not.toContain(
      'first milk 2026-03-02 (0/0) book',
    );
    expect(told(['clover 2026-03-10 dry 2026-03-10'], '2026-03-02')).toEqual([
      'next: due 2026-03-10 (5/5) book',
      'next: dry 2026-03-10 (0/0) book',
    ]);
  });

  it('measures her rest where the book dates both ends', () => {
    const rest = (dry: string) =>
      yearOf([`clover 2026-03-01 weaned 2026-05-01 dry ${dry}`, 'clover 2027-03-10'], '2026-12-01').rest;
    expect(rest('2027-01-10')).toEqual({ days: 59, isShort: false });
    expect(rest('2027-01-25')).toEqual({ days: 44, isShort: true });
    expect(yearOf(['clover 2026-03-01 dry 2026-10-01'], '2026-12-01').rest).toBeNull();
  });
});

describe('seasonsOf()', () => {
  const SUMMER = dates('2025-04-01', '2025-04-20');
  const book = bookOf(
    ['clover 2025-03-31 dry 2025-04-21', 'clover 2026-03-31'],
    [
      ...twice('clover', SUMMER.slice(0, 10), '1 L'),
      ...twice('clover', SUMMER.slice(10), '2 L'),
      ...twice('clover', dates('2026-04-01', '2026-04-05')),
    ],
  );
  const seasons = (asOf: string, of: Book = book) => seasonsOf(openLedger(of, day(asOf)));

  it('start, peak and stop as the book says', () => {
    const [first, second] = seasons('2026-04-05');
    expect(first).toMatchObject({
      from: day('2025-04-01'), to: day('2025-04-20'), firstMilk: day('2025-04-01'), ended: true, wholeDays: 20, total_L: 60,
      peak: { ok: true, from: day('2025-04-11'), to: day('2025-04-17'), mean_LPerDay: 4 },
    }); // prettier-ignore
    expect(second).toMatchObject({ ended: false, peak: { ok: false, why: 'no seven whole days in a row' } });
    expect(seasons('2026-04-05').map(seasonName)).toEqual(['2025', '2026']);
  });

  it('are not cut by days that nobody wrote down', () => {
    const holes = bookOf(['clover 2025-03-31'], [...twice('clover', ['2025-04-01']), ...twice('clover', ['2025-06-01'])]); // prettier-ignore
    expect(seasons('2025-06-01', holes)).toHaveLength(1);
  });

  it('are none in an empty book, and one without milk has no first milk', () => {
    expect(seasons('2026-01-01', bookOf([]))).toEqual([]);
    expect(seasons('2025-04-05', bookOf(['clover 2025-03-31']))).toMatchObject([{ firstMilk: null, total_L: 0, peak: { ok: false } }]); // prettier-ignore
  });
});

describe('herdYear()', () => {
  const at = (kiddings: string[], asOf: string) => {
    const book = bookOf(kiddings);
    return herdYear(book, openLedger(book, day(asOf)));
  };

  it('stops with the last doe, and starts with the first', () => {
    const year = at(['clover 2026-03-01 dry 2026-10-01', 'bell 2026-03-20 dry 2026-11-05'], '2026-06-01');
    expect(year.stop).toMatchObject({ ok: true, day: day('2026-11-05'), basis: 'book', does: 2 });
    expect(year.coming).toMatchObject({ ok: true, start: { day: day('2027-03-02'), does: 2, basis: 'common practice' }, overlaps: false }); // prettier-ignore
    expect(year.peakAhead).toBe(false);
    expect(at(['clover 2026-05-20 dry 2026-11-01'], '2026-06-01').peakAhead).toBe(true);
  });

  it('says when a herd is never without milk', () => {
    const year = at(['clover 2026-03-01 dry 2026-12-20', 'bell 2025-12-01 dry 2026-09-01'], '2026-06-01');
    expect(year.coming).toMatchObject({ overlaps: true });
  });

  it('has a reason for all that it cannot tell', () => {
    const none = at([], '2026-06-01');
    expect(none.stop).toEqual({ ok: false, why: 'no doe is in milk' });
    expect(none.coming).toEqual({ ok: false, why: 'no next kidding can be told for any doe' });
    const old = at(['clover 2016-03-01'], '2026-06-01');
    expect(old.stop).toEqual({
      ok: false,
      why: 'no dry date is in the book and the usual length has passed',
    });
    expect(old.leftOut).toEqual([{ doe: 'clover', why: 'her last kidding is more than a year ago' }]);
  });

  it('keeps every day inside its range, and events in order, for any book', () => {
    const ordered = (range: { day: number; from: number; to: number }) =>
      range.from <= range.day && range.day <= range.to;
    fc.assert(
      fc.property(caseArb, fc.integer({ min: -200, max: 60 }), ({ book, asOf }, ago) => {
        const first = book.does[0]?.id ?? 'x';
        const year = herdYear(book, openLedger(book, asOf), [{ doe: first, day: asOf + ago }]);
        for (const { events } of year.does) {
          expect(events.every(ordered)).toBe(true);
          expect(events.map((one) => one.day)).toEqual(events.map((one) => one.day).sort((a, b) => a - b));
        }
        if (year.coming.ok) {
          expect([year.coming.start, year.coming.most, year.coming.stop].every(ordered)).toBe(true);
          expect(year.coming.start.day).toBeLessThan(year.coming.stop.day);
        }
        expect(year.does.filter(({ next }) => !next.ok)).toHaveLength(year.leftOut.length);
      }),
      { numRuns: 100 },
    );
  });
});
