// Lactation totals against the ICAR example and against totals that R made of real lactations.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../shared/herd/ledger.ts';
import { dailySum } from '../../shared/lactation/dailySum.ts';
import { lactationsOf, pointsOf } from '../../shared/lactation/doeDays.ts';
import { monthlyTests, testIntervalFat, testIntervalTotal } from '../../shared/lactation/testInterval.ts';
import { readFarm } from '../../src/farm/readFarm.ts';
import { day } from '../support/bookOf.ts';
import { NOT_HERE, openData, plainCsv } from '../support/handouts.ts';

describe('the worked example of the test-interval method', () => {
  // ICAR Guidelines, Section 2, Procedure 2 (2020), tables of the Test Interval Method: calving on 25 March,
  // counted to 31 December. Inputs from memory; that the intervals match the calendar and add up to 281 days bears
  // them out. Interim values worked out by hand in Python.
  const CALVED = day('2025-03-25');
  const tests = (
    [
      ['2025-04-08', 28.2, 3.65],
      ['2025-05-06', 24.8, 3.45],
      ['2025-06-05', 26.6, 3.4],
      ['2025-07-07', 23.2, 3.55],
      ['2025-08-02', 20.2, 3.85],
      ['2025-08-30', 17.8, 4.05],
      ['2025-09-25', 13.2, 4.45],
      ['2025-10-27', 9.6, 4.65],
      ['2025-11-22', 5.8, 4.95],
      ['2025-12-20', 4.4, 5.25],
    ] as const
  ).map(([date, milk, fat_pct]) => ({ t: day(date) - CALVED, milk, fat_pct }));
  const span = { after: 0, to: day('2025-12-31') - CALVED };
  const milk = testIntervalTotal(tests, span);
  const fat = testIntervalFat(tests, span);
  if (!milk.ok || !fat.ok) throw new Error('no total');

  it('counts 281 days in eleven intervals', () => {
    expect(milk.days).toBe(281);
    expect(milk.intervals.map(({ days }) => days)).toEqual([14, 28, 30, 32, 26, 28, 26, 32, 26, 28, 11]);
  });

  it('credits each interval with the mean of its ends', () => {
    const credits = [394.8, 742.0, 771.0, 796.8, 564.2, 532.0, 403.0, 364.8, 200.2, 142.8, 48.4];
    milk.intervals.forEach(({ amount }, index) => expect(amount).toBeCloseTo(credits[index] ?? 0, 9));
  });

  it('totals 4960 kg of milk', () => {
    expect(milk.total).toBeCloseTo(4960, 9);
  });

  it('totals 189.5 kg of fat, 3.82 percent', () => {
    expect(fat.milk).toBeCloseTo(4960, 9);
    expect(fat.fat).toBeCloseTo(189.523, 3);
    expect(fat.fat_pct).toBeCloseTo(3.821, 3);
  });

  it('does not average percents, which would make 189.90 kg', () => {
    const wrong = milk.intervals.reduce((sum, { amount }, index) => {
      const [before, after] = [tests[Math.max(0, index - 1)], tests[Math.min(tests.length - 1, index)]];
      return sum + (amount * ((before?.fat_pct ?? 0) + (after?.fat_pct ?? 0))) / 200;
    }, 0);
    expect(wrong).toBeCloseTo(189.9, 1);
    expect(Math.abs(fat.fat - wrong)).toBeGreaterThan(0.3);
  });

  it('is the same in a leap year, since no test is before March', () => {
    const later = tests.map((test) => ({ ...test }));
    expect(day('2028-12-31') - day('2028-03-25')).toBe(span.to);
    expect(testIntervalTotal(later, span)).toEqual(milk);
  });
});

// Totals of 54 lactations of `milkman` (R package doBy, GPL-2 or later; Friggens et al. 2007), made with R. Days with
// both milkings are at hand for nine of them: six as series of fits, four as a farm folder (one is in both).
const folder = openData('lactation');
const herd = openData('herd-ampm');
const totals = folder ? plainCsv(join(folder, 'reference_305d_totals.csv')) : [];
const KG_PER_L = 1.03;

interface Cow {
  readonly cow: string;
  readonly points: readonly { readonly t: number; readonly y: number }[];
  readonly amShare: number | null;
}

function fromFits(dir: string): Cow[] {
  const text = readFileSync(join(dir, 'wood-reference.json'), 'utf8');
  const { series } = JSON.parse(text) as { series: { id: string; t: number[]; y: number[] }[] };
  return series
    .filter(({ id }) => id.startsWith('milkman.'))
    .map(({ id, t, y }) => ({
      cow: id.slice('milkman.'.length),
      points: t.map((one, index) => ({ t: one, y: y[index] ?? Number.NaN })),
      amShare: null,
    }));
}

/** The same cows through the farm reader, the ledger and the lactations, back in kg. */
function fromFarm(dir: string): Cow[] {
  const farm = readFarm(dir, { asOf: '2026-02-28', now_ms: 0 });
  if (!farm.ok) throw new Error('the herd does not read');
  const ledger = openLedger(farm.book, farm.asOf);
  return farm.book.does.map(({ id }) => {
    const [lactation] = lactationsOf(farm.book, ledger, id);
    if (!lactation) throw new Error(`${id} has no lactation`);
    const days = new Set(lactation.days.map((one) => one.day));
    const own = ledger.entries.filter(({ row }) => row.doe === id && days.has(row.day));
    const sum = (entries: typeof own) => Number(entries.reduce((all, { grains }) => all + grains, 0n));
    return {
      cow: id.slice(1).replace('-', '.'),
      points: pointsOf(lactation).map(({ t, y }) => ({ t, y: y * KG_PER_L })),
      amShare: sum(own.filter(({ row }) => row.milking === 'am')) / sum(own),
    };
  });
}

const cows = folder && herd ? [...fromFits(folder), ...fromFarm(herd)] : [];
const known = cows.flatMap((cow) => {
  const row = totals.find((one) => one['cowlact'] === cow.cow);
  return row ? [{ ...cow, row: (name: string) => Number(row[name]) }] : [];
});

describe.skipIf(known.length === 0)(`305-day totals made with R (${NOT_HERE})`, () => {
  it('are there for nine lactations, in two ways for one of them', () => {
    expect(new Set(known.map(({ cow }) => cow)).size).toBe(9);
    expect(known.length).toBe(10);
  });

  it.each(known)('daily sum, days and span of $cow', ({ points, row }) => {
    const sum = dailySum(points);
    expect(sum?.measured).toBeCloseTo(row('sum_my'), 6);
    expect(sum?.measuredDays).toBe(row('days'));
    expect(sum?.first_day).toBe(row('first_day'));
    expect(sum?.last_day).toBe(row('last_day'));
  });

  it.each(known)('daily sum with gaps bridged of $cow', ({ points, row }) => {
    const sum = dailySum(points);
    const at = (t: number | undefined) => points.find((one) => one.t === t)?.y ?? Number.NaN;
    // The column is the area under the days, from the middle of the first to the middle of the last.
    const halves = (at(sum?.first_day) + at(sum?.last_day)) / 2;
    expect((sum?.total ?? 0) - halves).toBeCloseTo(row('trapz_1_305'), 6);
    expect(sum?.bridgedDays).toBe(row('last_day') - row('first_day') + 1 - row('days'));
  });

  it.each(known)(
    'test-interval total of $cow, tested on day 15 and every 30th day from there',
    ({ points, row }) => {
      const total = testIntervalTotal(monthlyTests(points));
      expect(total.ok && total.total).toBeCloseTo(row('tim_30d_305'), 6);
      expect(total.ok && total.days).toBe(305);
    },
  );

  it.each(known)('best day of $cow', ({ points, row }) => {
    const best = points.reduce((a, b) => (b.y > a.y ? b : a));
    expect(best.t).toBe(row('peak_day'));
    expect(best.y).toBeCloseTo(row('peak_kg'), 6);
  });

  it.each(known.filter(({ amShare }) => amShare !== null))(
    'share of the morning of $cow',
    ({ amShare, row }) => {
      expect(amShare).toBeCloseTo(row('am_share'), 9);
    },
  );

  it.each(known)('the two totals of $cow are as far apart as R says', ({ points, row }) => {
    // The column holds the test-interval total against the daily sum stretched to 305 days.
    const [sum, tested] = [dailySum(points), testIntervalTotal(monthlyTests(points))];
    if (!sum || !tested.ok) throw new Error('no total');
    const stretched = (sum.measured * 305) / sum.measuredDays;
    expect((tested.total / stretched - 1) * 100).toBeCloseTo(row('tim_minus_sum_pct'), 6);
    expect(Math.abs(tested.total - sum.total)).toBeGreaterThan(0.001 * sum.total);
  });
});
