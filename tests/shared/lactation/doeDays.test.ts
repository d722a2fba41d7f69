// The lactations of a doe and the days that count in them: by example, and against plain sentences over random books.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { lactationsOf, LONGEST_days, pointsOf, type Lactation } from '../../../shared/lactation/doeDays.ts';
import { fitWood } from '../../../shared/lactation/fitWood.ts';
import { lactationTotals } from '../../../shared/lactation/lactationTotals.ts';
import { timelineOf } from '../../../shared/lactation/timeline.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { asDouble } from '../../support/fraction.ts';
import { daysFromTo, dateOf, PlainBook } from '../../support/plainHerd.ts';
import { caseArb } from '../../support/randomBook.ts';

function lactations(kiddings: readonly string[], rows: readonly string[], asOf: string): Lactation[] {
  const book = bookOf(kiddings, rows);
  return lactationsOf(book, openLedger(book, day(asOf)), 'clover');
}
const told = ({ number, last, end, twice: full, days, dryDays, lateDays }: Lactation) => ({
  number,
  last: dateOf(last),
  end,
  twice: full && `${dateOf(full.from)} ${dateOf(full.to)}`,
  days: days.map(({ t, yield_L }) => `${t}: ${yield_L}`).join(', '),
  dryDays,
  lateDays,
});

describe('the days that count', () => {
  it('are those of full milking with both entries, whatever became of the milk', () => {
    const rows = [
      // With her kids, then nights apart: not her whole yield, though one day even has an evening entry.
      '2026-03-05 am clover 2 L',
      '2026-03-21 am clover 2 L',
      '2026-03-22 am clover 2 L',
      '2026-03-22 pm clover 1 L',
      // Weaned on the first of May.
      '2026-05-01 am clover 2 L',
      '2026-05-01 pm clover 1.5 L withheld',
      '2026-05-02 am clover 2 L',
      '2026-05-03 am clover 2 L lost',
      '2026-05-03 pm clover 0 L',
      '2026-05-04 am clover 2 L',
      '2026-05-04 pm clover -',
      // Dry.
      '2026-05-10 am clover 1 L',
      '2026-05-10 pm clover 1 L',
    ];
    const [one, ...none] = lactations(['clover 2026-03-01 apart 2026-03-21 weaned 2026-05-01 dry 2026-05-10'], rows, '2026-06-01'); // prettier-ignore
    expect(none).toEqual([]);
    expect(one && told(one)).toEqual({ number: 1, last: '2026-05-09', end: 'dry', twice: '2026-05-01 2026-05-09', days: '61: 3.5, 63: 2', dryDays: 0, lateDays: 0 }); // prettier-ignore
  });

  it('are counted from the next kidding in a year with two', () => {
    const rows = twice('clover', dates('2026-01-02', '2026-01-04')).concat(twice('clover', dates('2026-08-02', '2026-08-03'))); // prettier-ignore
    const both = lactations(['clover 2026-01-01 dry 2026-12-01', 'clover 2026-08-01'], rows, '2026-08-10');
    expect(both.map(told)).toEqual([
      { number: 1, last: '2026-07-31', end: 'kidding', twice: '2026-01-02 2026-07-31', days: '1: 4, 2: 4, 3: 4', dryDays: 0, lateDays: 0 },
      { number: 2, last: '2026-08-10', end: null, twice: '2026-08-02 2026-08-10', days: '1: 4, 2: 4', dryDays: 0, lateDays: 0 },
    ]); // prettier-ignore
  });

  it('leave out zeros at the end, where she was dry without a date, and keep zeros between', () => {
    const rows = [
      ...twice('clover', dates('2026-01-02', '2026-01-03')),
      ...twice('clover', ['2026-01-04'], '0 L'),
      ...twice('clover', ['2026-01-05']),
      ...twice('clover', dates('2026-01-06', '2026-01-09'), '0 L'),
    ];
    const [one] = lactations(['clover 2026-01-01'], rows, '2026-02-01');
    expect(one && told(one)).toMatchObject({ days: '1: 4, 2: 4, 3: 0, 4: 4', dryDays: 4, end: null });
    if (!one) return;
    expect(lactationTotals(one).daily).toMatchObject({ measured: 12, measuredDays: 4, last_day: 4 });
  });

  it('keep a lactation of nothing but zeros, and the fit says so', () => {
    const [one] = lactations(['clover 2026-01-01'], twice('clover', dates('2026-01-02', '2026-01-20'), '0 L'), '2026-02-01'); // prettier-ignore
    expect(one?.days).toHaveLength(19);
    expect(one && fitWood(pointsOf(one))).toEqual({ ok: false, why: { kind: 'allZero', days: 19 } });
  });

  it('end after two years where no dry date and no kidding is written down, in ten years of milk', () => {
    const [one] = lactations(['clover 2016-01-01'], twice('clover', dates('2016-01-02', '2025-12-31')), '2026-01-01'); // prettier-ignore
    expect(one?.days.at(-1)?.t).toBe(LONGEST_days);
    expect(one?.lateDays).toBe(3652 - LONGEST_days);
    expect(one && lactationTotals(one).daily?.measuredDays).toBe(305);
    const total = one && lactationTotals(one).testInterval;
    expect(total?.ok && total.total).toBeCloseTo(305 * 4, 9);
  });

  it('are none without a kidding, before it, or with one row', () => {
    expect(lactations([], twice('clover', dates('2026-01-02', '2026-01-03')), '2026-02-01')).toEqual([]);
    expect(lactations(['clover 2026-03-01'], [], '2026-02-01')).toEqual([]);
    const [one] = lactations(['clover 2026-01-01'], ['2026-01-05 am clover 2 L'], '2026-02-01');
    expect(one?.days).toEqual([]);
    expect(one && fitWood(pointsOf(one))).toMatchObject({ ok: false, why: { kind: 'tooFew', days: 0 } });
    expect(one && lactationTotals(one)).toMatchObject({ daily: null, testInterval: { ok: false } });
  });

  it('count once where a kidding is written twice', () => {
    const rows = twice('clover', ['2026-05-03']);
    const all = lactations(['clover 2026-05-01', 'clover 2026-05-01 weaned 2026-05-03'], rows, '2026-05-09');
    expect(all.map(({ days }) => days.length)).toEqual([1]);
    expect(all[0]?.kidding.weaned).toBe(day('2026-05-03'));
  });
});

describe('the totals of a lactation', () => {
  it('begin with full milking where she suckled, and end where she does', () => {
    const rows = twice('clover', dates('2026-03-03', '2026-07-31'), '1 L');
    const [one] = lactations(['clover 2026-01-01 weaned 2026-03-03 dry 2026-08-01'], rows, '2026-09-01');
    const totals = one && lactationTotals(one);
    // 2 L a day on 151 days, tested on days 75, 105, … of the lactation.
    expect(totals?.testInterval.ok && totals.testInterval.days).toBe(151);
    expect(totals?.testInterval.ok && totals.testInterval.total).toBeCloseTo(302, 9);
    expect(totals?.daily).toMatchObject({ measured: 302, bridgedDays: 0, first_day: 61, last_day: 211 });
  });

  it('end with her last milk where zeros stand between it and her dry date', () => {
    const rows = [...twice('clover', dates('2026-01-02', '2026-04-30'), '1 L'), ...twice('clover', dates('2026-05-01', '2026-05-20'), '0 L')]; // prettier-ignore
    const [one] = lactations(['clover 2026-01-01 dry 2026-06-01'], rows, '2026-12-31');
    const totals = one && lactationTotals(one);
    expect(totals?.testInterval.ok && totals.testInterval.days).toBe(119);
  });

  it('of a doe in milk reach to her last day in the book', () => {
    const rows = twice('clover', dates('2026-01-02', '2026-04-30'), '1 L');
    const [one] = lactations(['clover 2026-01-01'], rows, '2026-12-31');
    const totals = one && lactationTotals(one);
    expect(totals?.testInterval.ok && totals.testInterval.days).toBe(119);
    expect(totals?.daily?.total).toBeCloseTo(238, 9);
  });
});

describe('over random books', () => {
  it('the days are those that the plain sentences choose', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const plain = new PlainBook(book, asOf);
        const ledger = openLedger(book, asOf);
        for (const { id } of book.does) {
          const kidded = book.kiddings.filter((one) => one.doe === id).map((one) => dateOf(one.day));
          const wanted = plain.dates
            .filter((date) => plain.expected(id, date).length === 2 && plain.isComplete(id, date))
            .map((date) => {
              const last =
                kidded
                  .filter((one) => one <= date)
                  .sort()
                  .at(-1) ?? date;
              return { date, t: daysFromTo(last, date), yield_L: asDouble(plain.total([date], id)) };
            });
          const lactations = lactationsOf(book, ledger, id);
          const days = lactations.flatMap((one) => one.days);
          const left = lactations.reduce((sum, one) => sum + one.dryDays, 0);
          expect(days.length + left).toBe(wanted.length);
          for (const { day: number, t, yield_L } of days) {
            const same = wanted.find(({ date }) => date === dateOf(number));
            expect(t).toBe(same?.t);
            expect(Math.abs(yield_L - (same?.yield_L ?? -1))).toBeLessThanOrEqual(1e-14 * yield_L);
          }
          const kept = new Set(days.map((one) => dateOf(one.day)));
          const dropped = wanted.filter(({ date }) => !kept.has(date));
          expect(dropped.filter(({ yield_L }) => yield_L > 0)).toEqual([]);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('the timeline has every day from the first kidding once, in the phase that is expected', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const plain = new PlainBook(book, asOf);
        const milkings = { 'with kids': 0, 'nights apart': 1, 'twice a day': 2, dry: 0 };
        for (const { id } of book.does) {
          const spans = timelineOf(book, id, asOf).flatMap((one) => one.spans);
          const first = Math.min(...book.kiddings.filter((one) => one.doe === id).map((one) => one.day));
          expect(spans.reduce((sum, one) => sum + one.to - one.from + 1, 0)).toBe(Math.max(0, Number.isFinite(first) ? asOf - first + 1 : 0)); // prettier-ignore
          spans.forEach(({ from, to }, index) => {
            expect(from).toBe(index === 0 ? first : (spans[index - 1]?.to ?? 0) + 1);
            expect(to).toBeGreaterThanOrEqual(from);
          });
          for (const span of spans)
            for (const number of [span.from, span.to])
              expect(plain.expected(id, dateOf(number))).toHaveLength(milkings[span.phase]);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('nothing crashes and no number is out of reach', () => {
    const numbers = (value: unknown): number[] =>
      typeof value === 'number'
        ? [value]
        : value !== null && typeof value === 'object'
          ? Object.values(value).flatMap(numbers)
          : [];
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const ledger = openLedger(book, asOf);
        for (const { id } of book.does)
          for (const one of lactationsOf(book, ledger, id)) {
            const answers = [fitWood(pointsOf(one)), lactationTotals(one)];
            expect(numbers(answers).every(Number.isFinite)).toBe(true);
          }
      }),
      { numRuns: 200 },
    );
  });
});
