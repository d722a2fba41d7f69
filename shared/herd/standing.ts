// Which row of the milk book stands: the latest entered for each doe, date and milking.
import type { MilkingRow } from './types.ts';

/** The standing rows, and every pair that `entered` cannot tell apart. */
export interface Standing {
  /** One row for each doe, date and milking, in the order first met; struck-out entries are left out. */
  readonly rows: readonly MilkingRow[];
  /** Pairs for the same doe, date and milking with the same `entered`: an error that a person must settle. */
  readonly clashes: readonly (readonly [MilkingRow, MilkingRow])[];
}

const SLOTS_A_DAY = 2;
// Room for 5,000 years of days about 1970, so that doe, day and milking make one whole number.
const DAYS = 2_000_000;

function slotKey(row: MilkingRow, doeNumber: number): number {
  return (doeNumber * DAYS + row.day + DAYS / 2) * SLOTS_A_DAY + (row.milking === 'pm' ? 1 : 0);
}

const writtenAt = (row: MilkingRow) => row.entered_ms ?? Number.NEGATIVE_INFINITY;

/**
 * Finds the standing row of each doe, date and milking: the one with the latest `entered` (a row
 * without counts as oldest). A standing row without an amount strikes the entry out.
 * Source: the farm folder's contract.
 */
export function standingRows(rows: readonly MilkingRow[]): Standing {
  const doeNumbers = new Map<string, number>();
  const latest = new Map<number, MilkingRow>();
  const rivals = new Map<number, MilkingRow[]>();
  for (const row of rows) {
    let doeNumber = doeNumbers.get(row.doe);
    if (doeNumber === undefined) doeNumbers.set(row.doe, (doeNumber = doeNumbers.size));
    const key = slotKey(row, doeNumber);
    const before = latest.get(key);
    if (before === undefined) {
      latest.set(key, row);
      continue;
    }
    const group = rivals.get(key);
    if (group) group.push(row);
    else rivals.set(key, [before, row]);
    if (writtenAt(row) > writtenAt(before)) latest.set(key, row);
  }
  const standing: MilkingRow[] = [];
  for (const row of latest.values()) if (row.amount) standing.push(row);
  return { rows: standing, clashes: [...rivals.values()].flatMap(tiedPairs) };
}

/** Each later row of a group beside the first one that was written at the same moment. */
function tiedPairs(group: readonly MilkingRow[]): (readonly [MilkingRow, MilkingRow])[] {
  const firstAt = new Map<number, MilkingRow>();
  const pairs: (readonly [MilkingRow, MilkingRow])[] = [];
  for (const row of group) {
    const first = firstAt.get(writtenAt(row));
    if (first) pairs.push([first, row]);
    else firstAt.set(writtenAt(row), row);
  }
  return pairs;
}
