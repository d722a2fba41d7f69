// The herd's years as strips: the book's phases, then what is to be expected, never two at a time.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../shared/calendar/day.ts';
import { shownYears, yearCharts, yearSpans, YEAR_WIDTH } from '../../../shared/drawing/yearChart.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { mostlyOn } from '../../../shared/year/basisOf.ts';
import { doeYear } from '../../../shared/year/doeYear.ts';
import { bookOf, day } from '../../support/bookOf.ts';
import { caseArb } from '../../support/randomBook.ts';

const spansOf = (book: Book, asOf: number, doe: string) => {
  const year = doeYear(book, asOf, doe);
  return { year, spans: yearSpans(openLedger(book, asOf).phases.get(doe) ?? [], year) };
};
const told = (kiddings: string[], asOf: string) =>
  spansOf(bookOf(kiddings), day(asOf), 'clover').spans.map(
    ({ phase, from, to, expected }) =>
      `${phase} ${isoDate(from)} ${to === null ? '…' : isoDate(to)}${expected ? ' ?' : ''}`,
  );

const asOf = day('2026-05-21');
const clover = spansOf(bookOf(['clover 2026-03-01']), asOf, 'clover');

describe('yearSpans()', () => {
  it('ends the open lactation where she is likely dried off, and goes on with the next', () => {
    expect(told(['clover 2026-03-01 apart 2026-03-22 weaned 2026-05-10'], '2026-05-21')).toEqual([
      'with kids 2026-03-01 2026-03-21',
      'nights apart 2026-03-22 2026-05-09',
      'twice a day 2026-05-10 2026-12-30',
      'dry 2026-12-31 2027-02-28 ?',
      'with kids 2027-03-01 2027-03-21 ?',
      'nights apart 2027-03-22 2027-05-09 ?',
      'twice a day 2027-05-10 2027-12-30 ?',
    ]);
  });

  it('lets the rest that the book dates run up to the next kids', () => {
    expect(told(['clover 2026-03-01 dry 2026-10-01'], '2026-05-21')).toEqual([
      'with kids 2026-03-01 2026-03-01',
      'twice a day 2026-03-02 2026-09-30',
      'dry 2026-10-01 2027-02-28',
      'with kids 2027-03-01 2027-03-01 ?',
      'twice a day 2027-03-02 2027-12-30 ?',
    ]);
  });

  it('puts no doe in two phases on one day, whatever the book holds', () => {
    fc.assert(
      fc.property(caseArb, (one) => {
        for (const { id } of one.book.does) {
          const { spans } = spansOf(one.book, one.asOf, id);
          const inOrder = [...spans].sort((a, b) => a.from - b.from);
          inOrder.forEach((span, index) => {
            expect(span.to === null || span.from <= span.to).toBe(true);
            const next = inOrder[index + 1];
            if (next) expect(span.to !== null && span.to < next.from).toBe(true);
          });
        }
      }),
    );
  });
});

describe('yearCharts()', () => {
  it('shows the years that hold a phase, with today in its own alone', () => {
    const charts = yearCharts([clover], shownYears(asOf), asOf);
    expect(charts.map(({ year, today }) => [year, today !== null])).toEqual([[2026, true], [2027, false]]); // prettier-ignore
  });

  it('keeps a range that runs over the new year on the strip', () => {
    for (const { rows } of yearCharts([clover], shownYears(asOf), asOf))
      for (const tick of rows.flatMap((row) => row.ticks)) {
        expect(tick.from_x).toBeGreaterThanOrEqual(0);
        expect(tick.x).toBeGreaterThanOrEqual(tick.from_x);
        expect(tick.to_x).toBeLessThanOrEqual(YEAR_WIDTH);
      }
  });
});

describe('mostlyOn()', () => {
  it('names what most days rest on', () => {
    const { year } = clover;
    expect(mostlyOn(year.events.filter(({ of }) => of === 'the next one'))).toBe('common practice');
    expect(mostlyOn(year.events.filter(({ what }) => what === 'kidded'))).toBe('book');
    expect(mostlyOn([])).toBe(null);
  });
});
