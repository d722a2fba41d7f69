// A row that was just written, as anyone on the farm's network may hear it: without its note.
import type { EntryEvent } from '../../shared/book/types.ts';
import { figuresOf, type FiguresFile } from '../../shared/herd/figures.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import type { Use } from '../../shared/herd/types.ts';
import type { Amount } from '../../shared/quantity/amount.ts';
import type { KeptBook } from './book/keeper.ts';

/** What the stream is told of a row on disk. */
export interface WrittenRow {
  readonly doe: string;
  readonly date: string;
  readonly milking: EntryEvent['milking'];
  /** Null where an entry was struck out. */
  readonly amount: Amount | null;
  readonly use: Use;
}

/** The herd that a row is told of: names, and the contract's numbers with the row counted in. */
export interface ToldHerd {
  readonly does: readonly { readonly id: string; readonly name: string }[];
  /** Null while a file cannot be read, since then something may be missing in them. */
  readonly figures: FiguresFile | null;
}

/** The herd as the book's writer holds it in memory: adding up takes a thousandth of a second, reading files thirty. */
export function herdInMemory({ book, asOf }: KeptBook, isWhole: boolean): ToldHerd {
  return { does: book.does, figures: isWhole ? figuresOf(book, openLedger(book, asOf)) : null };
}

/** The event of a row. */
export function entryEvent(row: WrittenRow, { does, figures }: ToldHerd): EntryEvent {
  const { doe, date, milking, amount, use } = row;
  const total_L = (figure: string) => figures?.figures[figure]?.value ?? null;
  return {
    doe,
    name: does.find(({ id }) => id === doe)?.name ?? doe,
    date,
    milking,
    amount: amount && { num: amount.num, den: amount.den, unit: amount.unit },
    use,
    dayTotal_L: total_L('herd.day.total'),
    weekTotal_L: total_L('herd.week.total'),
    window: figures?.window ?? null,
    today: figures?.asOf ?? null,
  };
}
