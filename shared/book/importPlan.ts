// What each milking of an imported file would become beside what the book has: new, known already, or a correction.
import { isoDate } from '../calendar/day.ts';
import type { MilkingRow, MilkingTime, Use } from '../herd/types.ts';
import { amount_mL, type Amount } from '../quantity/amount.ts';
import { markOf } from './mark.ts';
import type { Found, FoundMilking, LeftOut, PlannedRow, Told } from './importTypes.ts';

/** What the book says of a milking. */
export interface BookLookup {
  /** The row written last, be it an amount or a strike; null where there is none. */
  readonly latest: (doe: string, day: number, milking: MilkingTime) => MilkingRow | null;
  readonly expected: (doe: string, day: number, milking: MilkingTime) => boolean;
  /** Whether she was under treatment on that day. */
  readonly treated: (doe: string, day: number) => boolean;
}

/** The whole plan; `left` and the twins of a file are rows that are not written and why. */
export interface ImportPlan {
  readonly rows: readonly PlannedRow[];
  readonly left: readonly LeftOut[];
  readonly twins: readonly { readonly line: number; readonly column: number; readonly told: Told }[];
}

/** Lays the file's milkings beside the book; `corrections` are the keys that somebody chose, `*` for all. */
export function planImport(
  milkings: Found['milkings'],
  book: BookLookup,
  corrections: readonly string[],
): ImportPlan {
  const { kept, left, twins } = oneEach(milkings);
  const chosen = new Set(corrections);
  return { rows: kept.map((one) => planned(one, book, chosen)).filter((one) => one !== null), left, twins };
}

/** One milking for each doe, date and time: the one that the file says was written last. */
function oneEach(milkings: readonly FoundMilking[]): {
  kept: FoundMilking[];
  left: LeftOut[];
  twins: ImportPlan['twins'][number][];
} {
  const groups = new Map<string, FoundMilking[]>();
  for (const one of milkings) {
    const key = `${one.day} ${one.milking} ${one.doe}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  const kept: FoundMilking[] = [];
  const left: LeftOut[] = [];
  const twins: ImportPlan['twins'][number][] = [];
  const at = (one: FoundMilking) => one.entered_ms ?? Number.NEGATIVE_INFINITY;
  for (const group of groups.values()) {
    const newest = group.reduce((best, one) => (at(one) > at(best) ? one : best));
    const rivals = group.filter((one) => at(one) === at(newest));
    if (rivals.length > 1) {
      for (const one of rivals.slice(1)) {
        const told = { key: 'fault.twin', slots: { line: rivals[0]?.line ?? 0 } };
        twins.push({ line: one.line, column: one.column, told });
      }
    } else kept.push(newest);
    for (const one of group.filter((other) => at(other) < at(newest)))
      left.push({
        line: one.line,
        column: one.column,
        told: { key: 'left.older', slots: { line: newest.line } },
      });
  }
  return { kept, left, twins };
}

function planned(found: FoundMilking, book: BookLookup, chosen: ReadonlySet<string>): PlannedRow | null {
  const { doe, day, milking, read } = found;
  const before = book.latest(doe, day, milking);
  // A strike of something that was never there would be a row about nothing.
  if (read === null && !before?.amount) return null;
  const treated = book.treated(doe, day);
  const use = found.use ?? (treated ? 'withheld' : 'kept');
  const kind = before === null ? 'new' : isSame(before, read, use) ? 'known' : 'correction';
  const warnings = [...found.warnings];
  if (read && !book.expected(doe, day, milking)) warnings.push({ key: 'warn.notExpected', slots: {} });
  if (treated && found.use === null) warnings.push({ key: 'warn.treated', slots: {} });
  if (treated && found.use === 'kept') warnings.push({ key: 'warn.treatedKept', slots: {} });
  const isOlder = found.entered_ms !== null && (before?.entered_ms ?? -Infinity) > found.entered_ms;
  if (kind === 'correction' && isOlder) warnings.push({ key: 'warn.bookNewer', slots: {} });
  return {
    key: found.key,
    line: found.line,
    column: found.column,
    kind,
    doe,
    date: isoDate(day),
    milking,
    amount: found.amount,
    unit: found.unit,
    use,
    saidKept: found.use === 'kept',
    note: found.note,
    entered_ms: found.entered_ms,
    chosen: kind === 'new' || (kind === 'correction' && (chosen.has('*') || chosen.has(found.key))),
    before: before && { amount: before.amount, use: before.use },
    saw: markOf(before),
    warnings,
  };
}

/** Whether the book says the same, in whichever unit. */
function isSame(row: MilkingRow, amount: Amount | null, use: Use): boolean {
  if (row.amount === null || amount === null) return row.amount === amount;
  return row.use === use && amount_mL(row.amount).equals(amount_mL(amount));
}
