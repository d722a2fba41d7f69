// The herd's months of milk and what comes next, for the board's pages about the year.
import { isoDate } from '../calendar/day.ts';
import { litres, type Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import { herdYear, type HerdYear } from '../year/herdYear.ts';

/** The herd's milk of one calendar month, as far as the book has it. */
export interface BoardMonth {
  /** `YYYY-MM`. */
  readonly month: string;
  readonly total_mL: number;
  /** Standing rows behind the total. */
  readonly rows: number;
}

/** The herd's year as the board shows it. */
export interface BoardYear {
  /** The calendar months that end with the one of `asOf`, oldest first; a month without a row has 0 rows. */
  readonly months: readonly BoardMonth[];
  /** When the running season stops. Days are day numbers. */
  readonly stop: HerdYear['stop'];
  /** The season to come. */
  readonly coming: HerdYear['coming'];
}

const MONTHS = 13;

/** Sums the ledger by calendar month, the last thirteen of them, and takes the coming season from the herd's year. */
export function boardYear(book: Book, ledger: Ledger): BoardYear {
  const sums = new Map<string, { grains: bigint; rows: number }>();
  for (const { row, grains } of ledger.entries) {
    const month = isoDate(row.day).slice(0, 7);
    const sum = sums.get(month) ?? { grains: 0n, rows: 0 };
    sums.set(month, { grains: sum.grains + grains, rows: sum.rows + 1 });
  }
  const { stop, coming } = herdYear(book, ledger);
  return {
    months: lastMonths(isoDate(ledger.asOf), MONTHS).map((month) => {
      const sum = sums.get(month);
      return { month, total_mL: sum ? litres(ledger, sum.grains) * 1000 : 0, rows: sum?.rows ?? 0 };
    }),
    stop,
    coming,
  };
}

/**
 * The calendar months that end with the month of a date, oldest first.
 * @example lastMonths('2026-02-11', 3) // => ['2025-12', '2026-01', '2026-02']
 */
export function lastMonths(date: string, count: number): string[] {
  const last = Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7)) - 1;
  return Array.from({ length: count }, (_, place) => {
    const at = last - (count - 1 - place);
    return `${String(Math.floor(at / 12)).padStart(4, '0')}-${String((at % 12) + 1).padStart(2, '0')}`;
  });
}
