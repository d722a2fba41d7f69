// A lactation's milk told in two ways that are never mixed: the sum of its days, and the test-interval total.
import { dailySum, type DailySum } from './dailySum.ts';
import { pointsOf, type Lactation } from './doeDays.ts';
import { monthlyTests, testIntervalTotal, type TestTotal } from './testInterval.ts';
import { STANDARD_DAYS } from './wood.ts';

/** Both totals of a lactation's days of full milking up to day 305, L. They differ, and are meant to. */
export interface LactationTotals {
  readonly daily: DailySum | null;
  readonly testInterval: TestTotal;
}

/**
 * The daily sum with its gaps bridged, and what monthly testing would have made of the same days. A doe
 * that suckled counts from her first day of full milking, as ICAR counts her milking-only period
 * (Section 16, from memory); one that is still milked counts to her last day in the book, since the
 * rule's last interval runs to the end of a lactation and she has none yet.
 */
export function lactationTotals(lactation: Lactation): LactationTotals {
  const points = pointsOf(lactation);
  const { kidding, twice, end, days } = lactation;
  const after = twice === null ? 0 : Math.max(0, twice.from - kidding.day - 1);
  const lastMilk = end === null || lactation.dryDays > 0 ? (days.at(-1)?.day ?? kidding.day) : null;
  const last = (lastMilk ?? twice?.to ?? kidding.day) - kidding.day;
  const to = Math.min(STANDARD_DAYS, last);
  return { daily: dailySum(points), testInterval: testIntervalTotal(monthlyTests(points), { after, to }) };
}
