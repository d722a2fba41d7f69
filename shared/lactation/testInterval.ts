// The test-interval method: a lactation's milk, and its fat, from some days on which it was measured.

/** A day on which a doe's whole milk was measured. */
export interface TestDay {
  /** Days since kidding. */
  readonly t: number;
  /** Milk of that day, L or kg. */
  readonly milk: number;
  /** Parts of 100; null or left out where fat was not tested. */
  readonly fat_pct?: number | null;
}

/** The days that are counted: those after `after` up to and with `to`, in days since kidding. */
export interface TestSpan {
  /** 0 for a doe milked from kidding; for one that suckled, the day before her first day of full milking. */
  readonly after: number;
  readonly to: number;
}

/** One interval of the sum: `days` days at `perDay`. */
export interface TestInterval {
  readonly after: number;
  readonly to: number;
  readonly days: number;
  readonly perDay: number;
  readonly amount: number;
}

/** A total and the intervals it is made of, or why there is none. */
export type TestTotal =
  | { readonly ok: true; readonly total: number; readonly days: number; readonly tests: number; readonly intervals: readonly TestInterval[] }
  | { readonly ok: false; readonly why: 'noTests' | 'noDays' }; // prettier-ignore

/** From the first day after kidding to day 305, the standard lactation. */
export const STANDARD_SPAN: TestSpan = Object.freeze({ after: 0, to: 305 });

/**
 * The test-interval total: I0·M1 + Σ Ik·(Mk + Mk+1)/2 + In·Mn. The days up to the first test count at
 * the first test's yield, those after the last at the last's, those between at the mean of both.
 * Unit: that of `milk` times days. Tests outside the span are left out.
 * Source: ICAR Guidelines, Section 2, Procedure 2 (2020), §1; Sargent 1968.
 * @example testIntervalTotal([{ t: 10, milk: 3 }], { after: 0, to: 30 }).total // => 90
 */
export function testIntervalTotal(tests: readonly TestDay[], span: TestSpan = STANDARD_SPAN): TestTotal {
  return totalOf(
    tests.map(({ t, milk }) => ({ t, y: milk })),
    span,
  );
}

function totalOf(points: readonly { t: number; y: number }[], span: TestSpan): TestTotal {
  if (!(span.to > span.after)) return { ok: false, why: 'noDays' };
  const used = points
    .filter(({ t, y }) => t > span.after && t <= span.to && y >= 0 && Number.isFinite(y))
    .sort((a, b) => a.t - b.t);
  const [first, last] = [used[0], used.at(-1)];
  if (!first || !last) return { ok: false, why: 'noTests' };
  const bounds = [{ t: span.after, y: first.y }, ...used, { t: span.to, y: last.y }];
  const intervals = bounds.slice(1).map((end, index) => {
    const start = bounds[index] ?? end;
    const perDay = (start.y + end.y) / 2;
    const days = end.t - start.t;
    return { after: start.t, to: end.t, days, perDay, amount: days * perDay };
  });
  const total = intervals.reduce((sum, one) => sum + one.amount, 0);
  return { ok: true, total, days: span.to - span.after, tests: used.length, intervals };
}

/** Milk, fat and fat percent of a lactation by the test-interval method. Fat in the unit of milk times days. */
export type FatTotal =
  | { readonly ok: true; readonly milk: number; readonly fat: number; readonly fat_pct: number | null; readonly fatTests: number }
  | { readonly ok: false; readonly why: 'noTests' | 'noDays' }; // prettier-ignore

/**
 * Fat by the same rule applied to the weight of fat of each test (milk × percent), and the percent of the
 * lactation as all fat over all milk. Percents are never averaged: a rich day of little milk would weigh
 * as much as a thin day of much. Tests whose fat was not tested (null, or 0) tell nothing of fat.
 * Source: ICAR Guidelines, Section 2, Procedure 2 (from memory).
 */
export function testIntervalFat(tests: readonly TestDay[], span: TestSpan = STANDARD_SPAN): FatTotal {
  const milk = testIntervalTotal(tests, span);
  if (!milk.ok) return milk;
  const tested = tests.flatMap(({ t, milk: amount, fat_pct }) =>
    fat_pct !== null && fat_pct !== undefined && fat_pct > 0 ? [{ t, y: (amount * fat_pct) / 100 }] : [],
  );
  const fat = totalOf(tested, span);
  if (!fat.ok) return fat;
  const fat_pct = milk.total > 0 ? (fat.total / milk.total) * 100 : null;
  return { ok: true, milk: milk.total, fat: fat.total, fat_pct, fatTests: fat.tests };
}

/**
 * The days of a daily record that stand for monthly tests: the 15th after kidding and every 30th from
 * there, where the book has them.
 * @example monthlyTests([{ t: 14, y: 2 }, { t: 15, y: 3 }, { t: 45, y: 4 }]) // => [{ t: 15, milk: 3 }, { t: 45, milk: 4 }]
 */
export function monthlyTests(points: readonly { readonly t: number; readonly y: number }[]): TestDay[] {
  return points.filter(({ t }) => t >= 15 && (t - 15) % 30 === 0).map(({ t, y }) => ({ t, milk: y }));
}
