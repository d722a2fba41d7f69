// The figures of random books, against the contract worked out slowly.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeFigures } from '../../../shared/herd/figures.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { asDouble, exact, sumOf, times } from '../../support/fraction.ts';
import { dateOf, datesBetween, daysLater, PlainBook, plainFigures } from '../../support/plainHerd.ts';
import { caseArb, type Case } from '../../support/randomBook.ts';

const RUNS = 600;

function close(actual: number | null, expected: number | null, what: string): void {
  if (expected === null || actual === null) expect(actual, what).toBe(expected);
  else expect(Math.abs(actual - expected), `${what}: ${actual} for ${expected}`).toBeLessThanOrEqual(1e-14 * Math.abs(expected)); // prettier-ignore
}

function compareFigures({ book, asOf }: Case): void {
  const plain = plainFigures(book, asOf);
  const built = computeFigures(book, asOf);
  expect(built.asOf).toBe(plain.asOf);
  expect(built.window).toEqual(plain.window);
  expect(built.wholeDay).toBe(plain.wholeDay);
  // The contract knows no third state; an empty book has neither.
  expect(built.state).toBe(plain.state ?? 'empty');
  expect(Object.keys(built.figures)).toEqual(expect.arrayContaining(Object.keys(plain.figures)));
  for (const [id, expected] of Object.entries(plain.figures)) {
    const actual = built.figures[id];
    close(actual?.value ?? null, expected.value, id);
    if (expected.rows !== undefined) expect(actual?.rows, `rows of ${id}`).toBe(expected.rows);
  }
}

describe('computeFigures over random books', () => {
  it('gives what the contract says, worked out slowly', () => {
    fc.assert(fc.property(caseArb, compareFigures), { numRuns: RUNS });
  });

  it('does not mind the order of the rows', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const turned = { ...book, rows: [...book.rows].reverse(), kiddings: [...book.kiddings].reverse() };
        expect(computeFigures(turned, asOf)).toEqual(computeFigures(book, asOf));
      }),
      { numRuns: 150 },
    );
  });

  it('does not count what is dated after the day it is made for', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const upTo = { ...book, rows: book.rows.filter((row) => row.day <= asOf), kiddings: book.kiddings.filter((one) => one.day <= asOf) }; // prettier-ignore
        expect(computeFigures(upTo, asOf)).toEqual(computeFigures(book, asOf));
      }),
      { numRuns: 150 },
    );
  });

  it('meets milking and resting, whole and unwhole last days, and empty books', () => {
    const met = new Set<string>();
    const look = ({ book, asOf }: Case) => {
      const { state, wholeDay } = plainFigures(book, asOf);
      met.add(`${state} ${wholeDay}`);
    };
    fc.assert(fc.property(caseArb, look), { numRuns: 400, seed: 20260521 });
    expect([...met].sort()).toEqual([
      'milking false',
      'milking true',
      'null false',
      'resting false',
      'resting true',
    ]);
  });
});

describe('weekView over random books', () => {
  it('lays out the same week, slowly', () => {
    fc.assert(fc.property(caseArb, compareWeek), { numRuns: 300 });
  });
});

function compareWeek({ book, asOf }: Case): void {
  const plain = new PlainBook(book, asOf);
  const view = weekView(book, openLedger(book, asOf));
  const last = plain.lastDay()?.date ?? null;
  const week = last === null ? [] : datesBetween(daysLater(last, -6), last);
  const month = last === null ? [] : datesBetween(daysLater(last, -27), last);
  expect(view.asOf).toBe(dateOf(asOf));
  expect(view.days.map((one) => one.date)).toEqual(week);
  expect(view.recentDays.map((one) => one.date)).toEqual(month.filter((date) => plain.on(date).length > 0));
  for (const one of [...view.days, ...view.recentDays]) {
    close(one.total_mL, asDouble(times(plain.total([one.date]), exact(1000))), one.date);
    expect([one.rows, one.whole]).toEqual([plain.on(one.date).length, plain.isWhole(one.date)]);
  }
  for (const use of ['kept', 'withheld', 'fed', 'lost'] as const) {
    const litres = week.flatMap((date) => plain.on(date)).filter((one) => one.use === use);
    close(view.uses_mL[use], asDouble(times(sumOf(litres.map((one) => one.litres)), exact(1000))), use);
  }
  expect(view.does.map((doe) => doe.id)).toEqual(book.does.map((doe) => doe.id));
  for (const doe of view.does) {
    const entries = week.flatMap((date) => plain.on(date, doe.id));
    const missing = week.flatMap((date) => plain.missing(doe.id, date).map((milking) => ({ date, milking })));
    expect(doe.missing).toEqual(missing);
    close(doe.total_mL, entries.length === 0 ? null : asDouble(times(plain.total(week, doe.id), exact(1000))), doe.id); // prettier-ignore
    const inOrder = entries.map((one) => `${one.date} ${one.milking}`).sort();
    expect(doe.milkings.map((one) => `${one.date} ${one.milking}`)).toEqual(inOrder);
  }
}
