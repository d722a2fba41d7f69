// The herd's years as strips by month: one row a doe, phases of the book and of what is to come.
import { civilFromDay, dayFromCivil } from '../calendar/day.ts';
import type { PhaseSpan } from '../herd/expected.ts';
import type { DoeYear, YearEvent, YearMark } from '../year/doeYear.ts';
import { phaseStrip, type PhaseStrip } from './phaseStrip.ts';

/** A phase of the book or, after the page's day, what is expected. */
export interface YearSpan extends PhaseSpan {
  readonly expected: boolean;
}

/** A day with its range along the strip. */
export interface YearTick {
  readonly what: 'due' | 'most milk';
  readonly x: number;
  readonly from_x: number;
  readonly to_x: number;
}

/** One doe's row. */
export interface YearRow {
  readonly doe: string;
  readonly book: PhaseStrip['parts'];
  readonly expected: PhaseStrip['parts'];
  readonly ticks: readonly YearTick[];
}

/** One calendar year. */
export interface YearChart {
  readonly year: number;
  readonly months: PhaseStrip['months'];
  readonly today: number | null;
  readonly rows: readonly YearRow[];
}

/** Width that all places are counted along. */
export const YEAR_WIDTH = 640;

/** A doe's phases: the book's up to where it ends, then the expected ones to the end of her next lactation. */
export function yearSpans(phases: readonly PhaseSpan[], { events }: DoeYear): YearSpan[] {
  const at = (of: YearEvent['of'], what: YearMark) =>
    events.find((one) => one.of === of && one.what === what);
  const next = at('the next one', 'due');
  const due = next?.day ?? null;
  const dry = at('this lactation', 'dry');
  const before = (day: number | null | undefined) => (day ?? Number.POSITIVE_INFINITY) - 1;
  const book = phases.flatMap((span) => {
    const openEnd = span.to === null && span.phase !== 'dry' ? before(dry?.day) : Number.POSITIVE_INFINITY;
    const to = Math.min(span.to ?? Number.POSITIVE_INFINITY, openEnd, before(due));
    return to < span.from ? [] : [{ ...span, to: Number.isFinite(to) ? to : null, expected: false }];
  });
  return [...book, ...restSpan(at, book), ...nextSpans(at, next?.basis !== 'book')];
}

type FindEvent = (of: YearEvent['of'], what: YearMark) => YearEvent | undefined;

// The rest that no row of the book begins: from the likely last milking, or from where the book ends.
function restSpan(at: FindEvent, book: readonly YearSpan[]): YearSpan[] {
  const [dry, due] = [at('this lactation', 'dry'), at('the next one', 'due')];
  if (!dry || dry.basis === 'book' || !due) return [];
  const bookEnd = Math.max(...book.map(({ to }) => to ?? Number.NEGATIVE_INFINITY));
  const from = Math.max(dry.day, bookEnd + 1);
  return from < due.day ? [{ phase: 'dry', from, to: due.day - 1, expected: true }] : [];
}

function nextSpans(at: FindEvent, expected: boolean): YearSpan[] {
  const day = (what: YearMark) => at('the next one', what)?.day ?? null;
  const [due, weaned, dry] = [day('due'), day('weaned'), day('dry')];
  if (due === null || dry === null) return [];
  const starts: [PhaseSpan['phase'], number | null][] = [
    ['with kids', due],
    ['nights apart', day('apart')],
    ['twice a day', weaned ?? day('first milk')],
  ];
  const known = starts.flatMap(([phase, from]) => (from === null ? [] : [{ phase, from }]));
  // A later phase that starts as soon leaves no day to the one before it.
  return known.flatMap(({ phase, from }, index) => {
    const to = Math.min(dry, ...known.slice(index + 1).map((later) => later.from)) - 1;
    return to < from ? [] : [{ phase, from, to, expected }];
  });
}

/** Charts of some calendar years, those that hold a phase. */
export function yearCharts(
  does: readonly { readonly year: DoeYear; readonly spans: readonly YearSpan[] }[],
  years: readonly number[],
  asOf: number,
): YearChart[] {
  return years.flatMap((year) => {
    const [from, to] = [dayFromCivil(year, 1, 1), dayFromCivil(year, 12, 31)];
    const strip = (spans: readonly PhaseSpan[]) => phaseStrip(spans, from, to, asOf, YEAR_WIDTH);
    const rows = does.map(({ year: own, spans }) => ({
      doe: own.doe,
      book: strip(spans.filter((span) => !span.expected)).parts,
      expected: strip(spans.filter((span) => span.expected)).parts,
      ticks: ticksOf(own, from, to),
    }));
    const { months, today } = strip([]);
    return rows.some((row) => row.book.length + row.expected.length > 0)
      ? [{ year, months, today, rows }]
      : [];
  });
}

function ticksOf({ events }: DoeYear, from: number, to: number): YearTick[] {
  const at = (day: number) => ((Math.min(Math.max(day, from), to + 1) - from) / (to - from + 1)) * YEAR_WIDTH;
  return events.flatMap(({ what, day, from: low, to: high }) =>
    (what === 'due' || what === 'most milk') && from <= day && day <= to
      ? [{ what, x: at(day + 0.5), from_x: at(low), to_x: at(high + 1) }]
      : [],
  );
}

/** The calendar years that a page shows: the one before the page's day, its own, and the next. */
export function shownYears(asOf: number): number[] {
  const { year } = civilFromDay(asOf);
  return [year - 1, year, year + 1];
}
