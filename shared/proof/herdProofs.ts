// The sums behind the herd's figures.
import { civilFromDay, dayNumber } from '../calendar/day.ts';
import type { ProofStep } from '../board/types.ts';
import { isWhole, type Entry } from '../herd/ledger.ts';
import {
  amountText,
  dayGroups,
  dayText,
  entriesIn,
  gapsIn,
  grainsOf,
  groupsBy,
  nameOf,
  quotientLine,
  sumLine,
  totalLine,
} from './lines.ts';
import type { Gap, ProofInput, RowGroup } from './types.ts';

/** The sums, rows and gaps of a figure. */
export interface Sums {
  readonly steps: readonly ProofStep[];
  readonly groups: readonly RowGroup[];
  readonly gaps: readonly Gap[];
}

/** A figure's span as day numbers. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Milk of one day, doe by doe. */
export function daySums(input: ProofInput, span: Span): Sums {
  const entries = entriesIn(input, span);
  const does = [...groupsBy(entries, ({ row }) => row.doe)];
  return {
    steps: [
      ...does.map(([id, own]) => sumLine(input, nameOf(input, id), own)),
      totalLine(
        input,
        does.map(([, own]) => own),
      ),
    ],
    groups: dayGroups(input, entries),
    gaps: gapsIn(input, span, null),
  };
}

/** Milk of some days, day by day: all of it, or the entries that pass a test; gaps of one doe or of all. */
export function weekSums(
  input: ProofInput,
  span: Span,
  keep?: (entry: Entry) => boolean,
  doe: string | null = null,
): Sums {
  const entries = entriesIn(input, span, keep);
  const days = [...groupsBy(entries, ({ row }) => row.day)];
  return {
    steps: [
      ...days.map(([day, own]) => sumLine(input, dayText(input, day), own)),
      totalLine(
        input,
        days.map(([, own]) => own),
      ),
    ],
    groups: dayGroups(input, entries),
    gaps: gapsIn(input, span, doe),
  };
}

/** The mean of the days of the entries that pass a test: their totals, added and divided. Other days stand in no line. */
export function meanSums(
  input: ProofInput,
  span: Span,
  keep: (entry: Entry) => boolean,
  doe: string | null = null,
): Sums {
  const { steps, groups, gaps } = weekSums(input, span, keep, doe);
  return { steps: [...steps.slice(0, -1), ...divided(input, entriesIn(input, span, keep))], groups, gaps };
}

/** The herd's mean over its whole days. */
export function herdMeanSums(input: ProofInput, span: Span): Sums {
  return meanSums(input, span, (entry) => isWhole(input.ledger.herdDays.get(entry.row.day)));
}

/** `sum ÷ days = mean` of the entries' days. */
function divided(input: ProofInput, entries: readonly Entry[]): ProofStep[] {
  const days = [...groupsBy(entries, ({ row }) => row.day).values()];
  if (days.length === 0) return [];
  return [totalLine(input, days), quotientLine(input, grainsOf(entries), days.length)];
}

/** Expected less entered, day by day. */
export function missingSums(input: ProofInput, span: Span): Sums {
  const steps: ProofStep[] = [];
  let all = 0;
  for (let day = span.from; day <= span.to; day += 1) {
    const { expected, entered } = input.ledger.herdDays.get(day) ?? { expected: 0, entered: 0 };
    steps.push({ label: dayText(input, day), sum: `${expected} − ${entered} = ${expected - entered}` });
    all += expected - entered;
  }
  return { steps: [...steps, { label: '', sum: String(all) }], groups: [], gaps: gapsIn(input, span, null) };
}

/** Every doe with milk, counted. */
export function doesSums(input: ProofInput, span: Span): Sums {
  const entries = entriesIn(input, span, ({ grains }) => grains > 0n);
  const does = [...groupsBy(entries, ({ row }) => row.doe)];
  return {
    steps: [
      ...does.map(([id, own], index) => ({
        label: `${index + 1}`,
        sum: `${nameOf(input, id)}: ${amountText(input, grainsOf(own))}`,
      })),
    ],
    groups: dayGroups(input, entries),
    gaps: gapsIn(input, span, null),
  };
}

/** A year's milk, month by month, with the days of each month beneath. */
export function yearSums(input: ProofInput, span: Span): Sums {
  const entries = entriesIn(input, span);
  const months = [...groupsBy(entries, ({ row }) => civilFromDay(row.day).month)];
  const monthName = new Intl.DateTimeFormat(input.lang, { month: 'long', timeZone: 'UTC' });
  const labelOf = (month: number) => monthName.format(new Date(Date.UTC(2001, month - 1, 1)));
  const dayLines = (own: readonly Entry[]) =>
    [...groupsBy(own, ({ row }) => row.day)].map(([day, ofDay]) => ({
      cells: [dayText(input, day), String(ofDay.length), amountText(input, grainsOf(ofDay))],
      place: null,
    }));
  return {
    steps: [
      ...months.map(([month, own]) => ({ label: labelOf(month), sum: amountText(input, grainsOf(own)) })),
      totalLine(
        input,
        months.map(([, own]) => own),
      ),
    ],
    groups: months.map(([month, own]) => ({ label: labelOf(month), rows: dayLines(own) })),
    gaps: gapsIn(input, span, null),
  };
}

/** The best whole day, doe by doe, and the three that come after it. */
export function bestSums(input: ProofInput, span: Span): Sums {
  const best = daySums(input, span);
  const others = [...input.ledger.herdDays]
    .filter(([day, sum]) => isWhole(sum) && day !== span.from)
    .sort(([, a], [, b]) => (b.grains > a.grains ? 1 : b.grains < a.grains ? -1 : 0))
    .slice(0, 3)
    .map(([day, sum]) => ({ label: dayText(input, day), sum: amountText(input, sum.grains) }));
  return { ...best, steps: [...best.steps, ...others] };
}

/** Day numbers of a figure's span. */
export function spanOf(span: { from: string; to: string } | null): Span | null {
  const from = span && dayNumber(span.from);
  const to = span && dayNumber(span.to);
  return from === null || to === null ? null : { from, to };
}
