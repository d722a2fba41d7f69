// The mark of a row: how a phone says which row it had before it when somebody entered another one.
import type { MilkingRow } from '../herd/types.ts';

/** Stands in a mark for a use that the file leaves open. */
export const UNSAID = 'unsaid';

/**
 * The same for the same row on every machine, and another one as soon as a correction stands; null where no row
 * stands. It holds when the row was written, its amount and its use as written: a treatment
 * that is written down later changes what an unsaid use counts as, and not the mark.
 */
export function markOf(row: MilkingRow | null | undefined): string | null {
  if (!row) return null;
  const amount = row.amount ? `${row.amount.num}/${row.amount.den} ${row.amount.unit}` : 'struck out';
  return `${row.entered_ms ?? 'no time'} ${amount} ${row.unsaid ? UNSAID : row.use}`;
}
