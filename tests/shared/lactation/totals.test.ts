// Daily sums and test-interval totals: rules that hold for any record.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dailySum } from '../../../shared/lactation/dailySum.ts';
import { monthlyTests, testIntervalFat, testIntervalTotal } from '../../../shared/lactation/testInterval.ts';

const recordArb = fc
  .uniqueArray(fc.record({ t: fc.integer({ min: 1, max: 305 }), y: fc.double({ min: 0, max: 9, noNaN: true }) }), {
    minLength: 1,
    maxLength: 80,
    selector: ({ t }) => t,
  })
  .map((points) => points.sort((a, b) => a.t - b.t)); // prettier-ignore
const testsOf = (points: readonly { t: number; y: number }[]) => points.map(({ t, y }) => ({ t, milk: y }));

describe('the daily sum', () => {
  it('bridges each gap day by day along a straight line', () => {
    fc.assert(
      fc.property(recordArb, (points) => {
        let [bridged, days] = [0, 0];
        points.slice(1).forEach((end, index) => {
          const start = points[index] ?? end;
          for (let t = start.t + 1; t < end.t; t += 1) {
            bridged += start.y + ((end.y - start.y) * (t - start.t)) / (end.t - start.t);
            days += 1;
          }
        });
        const sum = dailySum(points);
        expect(sum?.bridged).toBeCloseTo(bridged, 8);
        expect(sum?.bridgedDays).toBe(days);
        expect(sum?.measured).toBeCloseTo(
          points.reduce((all, { y }) => all + y, 0),
          8,
        );
        expect(sum?.total).toBeCloseTo((sum?.measured ?? 0) + bridged, 8);
      }),
    );
  });

  it('adds nothing before the first or after the last day', () => {
    expect(dailySum([{ t: 100, y: 3 }])).toEqual({ measured: 3, measuredDays: 1, bridged: 0, bridgedDays: 0, total: 3, longestGap_days: 0, first_day: 100, last_day: 100 }); // prettier-ignore
  });

  it('stops at day 305, and names the longest gap', () => {
    const sum = dailySum([{ t: 1, y: 1 }, { t: 4, y: 1 }, { t: 300, y: 1 }, { t: 306, y: 9 }, { t: 0, y: 9 }]); // prettier-ignore
    expect(sum).toMatchObject({ measured: 3, bridgedDays: 297, longestGap_days: 295, last_day: 300 });
  });

  it('takes the later of two yields for a day, and leaves out what is no yield', () => {
    expect(dailySum([{ t: 5, y: 1 }, { t: 5, y: 2 }])?.total).toBe(2); // prettier-ignore
    const odd = [{ t: 5.5, y: 1 }, { t: 5, y: NaN }, { t: 5, y: -1 }, { t: NaN, y: 1 }, { t: 5, y: Infinity }]; // prettier-ignore
    expect(dailySum(odd)).toBeNull();
  });
});

describe('the test-interval total', () => {
  it('of a level record is days times yield, however it is tested', () => {
    fc.assert(
      fc.property(recordArb, fc.integer({ min: 0, max: 60 }), (points, after) => {
        const level = points.map(({ t }) => ({ t, milk: 2.5 }));
        const total = testIntervalTotal(level, { after, to: 305 });
        if (total.ok) expect(total.total).toBeCloseTo(2.5 * (305 - after), 8);
        else expect(points.every(({ t }) => t <= after)).toBe(true);
      }),
    );
  });

  it('has intervals that fill the span and add up to it', () => {
    fc.assert(
      fc.property(recordArb, (points) => {
        const total = testIntervalTotal(testsOf(points));
        if (!total.ok) throw new Error(total.why);
        expect(total.intervals).toHaveLength(points.length + 1);
        expect(total.intervals.reduce((sum, { days }) => sum + days, 0)).toBe(305);
        expect(total.intervals.reduce((sum, { amount }) => sum + amount, 0)).toBeCloseTo(total.total, 8);
        expect(total.intervals.slice(1).every(({ after }, index) => after === total.intervals[index]?.to)).toBe(true); // prettier-ignore
      }),
    );
  });

  it('with a test every day is the daily sum but for half of each end', () => {
    const points = Array.from({ length: 305 }, (_, index) => ({ t: index + 1, y: 1 + (index % 7) }));
    const [sum, total] = [dailySum(points), testIntervalTotal(testsOf(points))];
    expect(total.ok && total.total).toBeCloseTo((sum?.total ?? 0) + (points[0]?.y ?? 0) / 2 - (points[304]?.y ?? 0) / 2, 8); // prettier-ignore
  });

  it('with one test is that yield on all days, with none a reason', () => {
    expect(testIntervalTotal([{ t: 40, milk: 2 }])).toMatchObject({ total: 610, tests: 1 });
    expect(testIntervalTotal([])).toEqual({ ok: false, why: 'noTests' });
    expect(testIntervalTotal([{ t: 306, milk: 2 }])).toEqual({ ok: false, why: 'noTests' });
    expect(testIntervalTotal([{ t: 5, milk: NaN }])).toEqual({ ok: false, why: 'noTests' });
    expect(testIntervalTotal([{ t: 5, milk: 2 }], { after: 9, to: 9 })).toEqual({ ok: false, why: 'noDays' });
  });

  it('leaves out tests on or before the day that the span begins after', () => {
    const tests = [{ t: 10, milk: 9 }, { t: 60, milk: 9 }, { t: 61, milk: 2 }]; // prettier-ignore
    expect(testIntervalTotal(tests, { after: 60, to: 100 })).toMatchObject({ total: 80, tests: 1 });
  });

  it('does not mind the order, or two tests on a day', () => {
    const tests = [{ t: 60, milk: 3 }, { t: 20, milk: 2 }]; // prettier-ignore
    expect(testIntervalTotal(tests)).toEqual(testIntervalTotal([...tests].reverse()));
    expect(testIntervalTotal([{ t: 60, milk: 3 }, { t: 60, milk: 3 }])).toMatchObject({ ok: true, total: 915 }); // prettier-ignore
  });
});

describe('fat by the test-interval method', () => {
  it('weighs each percent by its milk', () => {
    // 10 days at 4 L and 2 %, 10 days at 1 L and 6 %: the middle interval takes the mean of the grams.
    const tests = [{ t: 5, milk: 4, fat_pct: 2 }, { t: 15, milk: 1, fat_pct: 6 }]; // prettier-ignore
    const fat = testIntervalFat(tests, { after: 0, to: 20 });
    expect(fat).toMatchObject({ ok: true, milk: 50, fatTests: 2 });
    expect(fat.ok && fat.fat).toBeCloseTo(5 * 0.08 + 10 * 0.07 + 5 * 0.06, 12);
    expect(fat.ok && fat.fat_pct).toBeCloseTo(2.8, 12);
  });

  it('leaves out what was not tested for fat, but counts its milk', () => {
    const tests = [{ t: 5, milk: 4, fat_pct: 0 }, { t: 10, milk: 4, fat_pct: 3 }, { t: 15, milk: 4, fat_pct: null }, { t: 18, milk: 4 }]; // prettier-ignore
    expect(testIntervalFat(tests, { after: 0, to: 20 })).toMatchObject({ milk: 80, fatTests: 1, fat_pct: 3 });
    expect(testIntervalFat([{ t: 5, milk: 4 }])).toEqual({ ok: false, why: 'noTests' });
    expect(testIntervalFat([{ t: 5, milk: 0, fat_pct: 3 }])).toMatchObject({
      ok: true,
      fat: 0,
      fat_pct: null,
    });
  });
});

describe('monthly tests of a daily record', () => {
  it('are day 15 and every 30th from there, where the record has them', () => {
    const points = Array.from({ length: 305 }, (_, index) => ({ t: index + 1, y: index }));
    expect(monthlyTests(points).map(({ t }) => t)).toEqual([15, 45, 75, 105, 135, 165, 195, 225, 255, 285]);
    expect(
      monthlyTests(points.filter(({ t }) => t !== 45))
        .map(({ t }) => t)
        .slice(0, 2),
    ).toEqual([15, 75]);
    expect(monthlyTests([{ t: 0, y: 1 }, { t: -15, y: 1 }])).toEqual([]); // prettier-ignore
  });
});
