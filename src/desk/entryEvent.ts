// A row that was just written, as anyone on the farm's network may hear it: without its note.
import type { BoardFarm } from '../../shared/board/types.ts';
import type { EntryEvent } from '../../shared/book/types.ts';
import type { Use } from '../../shared/herd/types.ts';
import type { Amount } from '../../shared/quantity/amount.ts';

/** What the stream is told of a row on disk. */
export interface WrittenRow {
  readonly doe: string;
  readonly date: string;
  readonly milking: EntryEvent['milking'];
  /** Null where an entry was struck out. */
  readonly amount: Amount | null;
  readonly use: Use;
}

/** The event of a row; `isWhole` tells whether the farm's numbers hold it already. */
export function entryEvent(row: WrittenRow, farm: BoardFarm | undefined, isWhole: boolean): EntryEvent {
  const { doe, date, milking, amount, use } = row;
  const counted = isWhole ? farm?.figures : undefined;
  const total_L = (figure: string) => counted?.figures[figure]?.value ?? null;
  return {
    doe,
    name: farm?.does.find(({ id }) => id === doe)?.name ?? doe,
    date,
    milking,
    amount: amount && { num: amount.num, den: amount.den, unit: amount.unit },
    use,
    dayTotal_L: total_L('herd.day.total'),
    weekTotal_L: total_L('herd.week.total'),
    window: counted?.window ?? null,
    today: counted?.asOf ?? null,
  };
}
