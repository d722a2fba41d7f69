// What is told of milkings of a doe under treatment that do not themselves say "withheld".
import { isoDate } from '../../shared/calendar/day.ts';
import { holdsOn } from '../../shared/herd/treated.ts';
import type { MilkingRow, Treatment, Use } from '../../shared/herd/types.ts';
import { counted, type Notice } from './fault.ts';
import { TREATMENTS_FILE } from './treatmentsTable.ts';

/** Gathers rows while the milk book is read, and tells of those that stand. */
export interface TreatedRows {
  readonly onTreated: (row: MilkingRow, written: Use | null) => void;
  /** One notice a treatment and kind, each naming its milkings; `standing` are the rows that stand. */
  readonly notices: (standing: readonly MilkingRow[], treatments: readonly Treatment[]) => Notice[];
}

const MOST_NAMED = 20;

/** A gathering for one reading. */
export function treatedRows(): TreatedRows {
  const met = new Map<MilkingRow, Use | null>();
  return {
    onTreated: (row, written) => void met.set(row, written),
    notices: (standing, treatments) => {
      const rowsOf = new Map<Treatment, MilkingRow[]>();
      for (const row of met.size === 0 ? [] : standing) {
        if (!met.has(row)) continue;
        const holding = treatments.find((one) => one.doe === row.doe && holdsOn(one, row.day));
        if (holding) rowsOf.set(holding, [...(rowsOf.get(holding) ?? []), row]);
      }
      return [...rowsOf].flatMap(([treatment, rows]) => {
        const having = (use: Use | null) => rows.filter((row) => met.get(row) === use);
        return [
          ...silent(treatment, having(null)),
          ...spoken(treatment, 'kept', having('kept')),
          ...spoken(treatment, 'fed', having('fed')),
        ];
      });
    },
  };
}

function silent(treatment: Treatment, rows: readonly MilkingRow[]): Notice[] {
  if (rows.length === 0) return [];
  const counts = rows.length === 1 ? 'counts' : 'count';
  const text = `${counted(rows.length, 'milking')} without a use ${counts} as withheld: ${named(rows)}.`;
  return [noticeOf(treatment, text)];
}

function spoken(treatment: Treatment, use: 'kept' | 'fed', rows: readonly MilkingRow[]): Notice[] {
  if (rows.length === 0) return [];
  const [say, stay] = rows.length === 1 ? ['says', 'stays'] : ['say', 'stay'];
  const text = `${counted(rows.length, 'milking')} ${say} ${use} and ${stay} so, since somebody wrote it: ${named(rows)}. If that was a slip, write withheld under use.`;
  return [noticeOf(treatment, text)];
}

function noticeOf({ doe, from, until, what, line }: Treatment, text: string): Notice {
  const span = `from ${isoDate(from)}${until === null ? ' on' : ` until ${isoDate(until)}`}`;
  const medicine = what === '' ? '' : ` (${what})`;
  return { file: TREATMENTS_FILE, line, text: `${doe} is under treatment${medicine} ${span}: ${text}` };
}

function named(rows: readonly MilkingRow[]): string {
  const inOrder = [...rows].sort((a, b) => a.day - b.day || (a.milking < b.milking ? -1 : 1));
  const names = inOrder.slice(0, MOST_NAMED).map(({ day, milking }) => `${isoDate(day)} ${milking}`);
  const more = rows.length - names.length;
  return `${names.join(', ')}${more > 0 ? ` and ${more.toLocaleString('en')} more` : ''}`;
}
