// The milk book as the labels' page holds it: standing rows of some days, and which milk must not be drunk.
import { dayNumber } from '../calendar/day.ts';
import type { BookState, Treatment } from '../book/types.ts';
import { firstFreeDay, isTreated } from '../herd/treated.ts';
import type { MilkingTime, Use } from '../herd/types.ts';
import { amount_mL } from '../quantity/amount.ts';
import type { PouredMilk } from './jars.ts';

/** A standing row. */
export interface LabelRow {
  readonly doe: string;
  /** ISO date. */
  readonly date: string;
  readonly milking: MilkingTime;
  readonly volume_mL: number;
  readonly use: Use;
}

/** What labels are made from. */
export interface LabelBook {
  /** The farm's day, ISO. */
  readonly today: string;
  readonly does: readonly { readonly id: string; readonly name: string }[];
  readonly rows: readonly LabelRow[];
  readonly treatments: readonly Treatment[];
}

/** The desk's book for labels. */
export function labelBook({ today, does, rows, treatments }: BookState): LabelBook {
  return {
    today,
    does: does.map(({ id, name }) => ({ id, name })),
    rows: rows.map(({ doe, date, milking, amount, use }) => ({
      doe,
      date,
      milking,
      volume_mL: amount_mL(amount).valueOf(),
      use,
    })),
    treatments,
  };
}

/** The milk of one milking, in the order of the does. */
export function milkOf(book: LabelBook, date: string, milking: MilkingTime): PouredMilk[] {
  return book.does.flatMap(({ id, name }) =>
    book.rows
      .filter((row) => row.doe === id && row.date === date && row.milking === milking)
      .map(({ volume_mL, use }) => ({ doe: id, name, volume_mL, use })),
  );
}

/** The newest milking of the book, or the morning of its day where it has none. */
export function newestMilking({ rows, today }: LabelBook): { date: string; milking: MilkingTime } {
  const place = ({ date, milking }: LabelRow) => `${date} ${milking}`;
  const newest = rows
    .filter(({ date }) => date <= today)
    .reduce<LabelRow | null>((best, row) => (best === null || place(row) > place(best) ? row : best), null);
  return newest ? { date: newest.date, milking: newest.milking } : { date: today, milking: 'am' };
}

/** The first day, a day number, whose milk of a doe may be kept again; null while nobody has set it, or where no treatment holds. */
export function keptAgainFrom(
  treatments: readonly Treatment[],
  doe: string | null,
  day: number,
): number | null {
  return doe !== null && isTreated(treatments, doe, day) ? firstFreeDay(treatments, doe, day) : null;
}

/** The names of does whose milk is entered as kept while they are under treatment. */
export function keptThoughTreated(book: LabelBook, milk: readonly PouredMilk[], date: string): string[] {
  const day = dayNumber(date);
  if (day === null) return [];
  return milk
    .filter((one) => one.use === 'kept' && one.doe !== null && isTreated(book.treatments, one.doe, day))
    .map(({ name }) => name);
}
