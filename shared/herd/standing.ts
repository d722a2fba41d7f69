// Which row of the milk book stands: the latest entered for each doe, date and milking.
import type { MilkingRow } from './types.ts';

/** The standing rows, and every pair that `entered` cannot tell apart. */
export interface Standing {
  /** One row for each doe, date and milking, in the order first met; struck-out entries are left out. */
  readonly rows: readonly MilkingRow[];
  /** Pairs for the same doe, date and milking with the same `entered`: an error that a person must settle. */
  readonly clashes: readonly (readonly [MilkingRow, MilkingRow])[];
}

/** A doe's day and milking as one small whole number: small keys keep a map quick. */
const slotOf = (row: MilkingRow) => row.day * 2 + (row.milking === 'pm' ? 1 : 0);

const writtenAt = (row: MilkingRow) => row.entered_ms ?? Number.NEGATIVE_INFINITY;

/**
 * Finds the standing row of each doe, date and milking: the one with the latest `entered` (a row
 * without counts as oldest). A standing row without an amount strikes the entry out.
 * Source: the farm folder's contract.
 */
export function standingRows(rows: readonly MilkingRow[]): Standing {
  const places = new Map<string, Map<number, number>>();
  const latest: MilkingRow[] = [];
  const rivals = new Map<number, MilkingRow[]>();
  for (const row of rows) {
    let own = places.get(row.doe);
    if (own === undefined) places.set(row.doe, (own = new Map<number, number>()));
    const slot = slotOf(row);
    const place = own.get(slot);
    const before = place === undefined ? undefined : latest[place];
    if (place === undefined || before === undefined) {
      own.set(slot, latest.length);
      latest.push(row);
      continue;
    }
    const group = rivals.get(place);
    if (group) group.push(row);
    else rivals.set(place, [before, row]);
    if (writtenAt(row) > writtenAt(before)) latest[place] = row;
  }
  return {
    rows: latest.filter((row) => row.amount !== null),
    clashes: [...rivals.values()].flatMap(tiedPairs),
  };
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
