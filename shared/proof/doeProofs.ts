// The sums behind one doe's figures.
import { civilFromDay, dayFromCivil } from '../calendar/day.ts';
import { isWhole } from '../herd/ledger.ts';
import { meanSums, weekSums, type Span, type Sums } from './herdProofs.ts';
import { amountText, dayGroups, dayText, entriesIn, gapsIn, groupsBy } from './lines.ts';
import type { ProofInput } from './types.ts';

/** Her milk of the window, day by day. */
export function doeWeekSums(input: ProofInput, span: Span, doe: string): Sums {
  return weekSums(input, span, ({ row }) => row.doe === doe, doe);
}

/** All her milkings of the window beside the largest one. */
export function doeBestSums(input: ProofInput, span: Span, doe: string): Sums {
  const entries = entriesIn(input, span, ({ row }) => row.doe === doe);
  const largest = entries.reduce((most, { grains }) => (grains > most ? grains : most), 0n);
  const days = [...groupsBy(entries, ({ row }) => row.day)];
  return {
    steps: [
      ...days.map(([day, own]) => ({
        label: dayText(input, day),
        sum: own.map(({ grains }) => amountText(input, grains)).join(' , '),
      })),
      { label: '', key: 'max', sum: amountText(input, largest) },
    ],
    groups: dayGroups(input, entries),
    gaps: gapsIn(input, span, doe),
  };
}

/** Her mean day: the days on which no expected milking is missing, added and divided. */
export function doeMeanSums(input: ProofInput, span: Span, doe: string): Sums {
  const days = input.ledger.doeDays.get(doe);
  return meanSums(input, span, ({ row }) => row.doe === doe && isWhole(days?.get(row.day)), doe);
}

/** The days since her kidding, counted month by month. */
export function daysInMilkSums(input: ProofInput, span: Span): Sums {
  const monthName = new Intl.DateTimeFormat(input.lang, { month: 'long', timeZone: 'UTC' });
  const parts: { label: string; days: number }[] = [];
  let from = span.from;
  while (from <= span.to) {
    const { year, month } = civilFromDay(from);
    const nextMonth = dayFromCivil(month === 12 ? year + 1 : year, (month % 12) + 1, 1);
    // The day of kidding itself is day 0: the first month counts the days after it.
    const to = Math.min(nextMonth - 1, span.to);
    const before = from === span.from ? from : from - 1;
    // Kidded on the last day of a month, she has no day of that month.
    if (to > before || from === span.to)
      parts.push({ label: monthName.format(new Date(Date.UTC(year, month - 1, 1))), days: to - before });
    from = nextMonth;
  }
  const sum = parts.map(({ days }) => days).join(' + ');
  return {
    steps: [
      ...parts.map(({ label, days }) => ({ label, sum: String(days) })),
      { label: '', sum: parts.length > 1 ? `${sum} = ${span.to - span.from}` : String(span.to - span.from) },
    ],
    groups: [],
    gaps: [],
  };
}
