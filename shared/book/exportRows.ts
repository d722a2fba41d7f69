// The rows of the book for an export: those that stand or all of them, of a span of days, in the order of days.
import { standingRows } from '../herd/standing.ts';
import type { Book, MilkingRow, Use } from '../herd/types.ts';
import { BOOK_HEADING, csvRow, noteOf } from './csvRow.ts';

/** What is asked for; days are day numbers, null for no end. */
export interface ExportSpan {
  readonly from: number | null;
  readonly to: number | null;
  /** `all` has older rows and struck-out ones too. */
  readonly rows: 'standing' | 'all';
}

/** The rows in the order of day, milking, doe, and time of entry. */
export function exportRows(book: Book, { from, to, rows }: ExportSpan): MilkingRow[] {
  const order = new Map(book.does.map(({ id }, index) => [id, index]));
  const inSpan = book.rows.filter(({ day }) => (from === null || from <= day) && (to === null || day <= to));
  const written = rows === 'all' ? inSpan : [...standingRows(inSpan).rows];
  const at = (row: MilkingRow) => row.entered_ms ?? Number.NEGATIVE_INFINITY;
  return written.sort(
    (a, b) =>
      a.day - b.day ||
      (a.milking === b.milking ? 0 : a.milking === 'am' ? -1 : 1) ||
      (order.get(a.doe) ?? 0) - (order.get(b.doe) ?? 0) ||
      (at(a) === at(b) ? 0 : at(a) - at(b)),
  );
}

/** An amount as it stands in a cell: a fraction keeps its parts. */
export function amountText({ amount }: Pick<MilkingRow, 'amount'>): string | null {
  return amount && (amount.den === 1 ? String(amount.num) : `${amount.num}/${amount.den}`);
}

/**
 * What an export says under `use`: nothing where milk is kept and nobody wrote so, as in the book, so that it means the
 * same when it comes back; what treatments withhold is said, since they do not go along.
 */
export function exportedUse({ use, unsaid }: Pick<MilkingRow, 'use' | 'unsaid'>): Use | null {
  return unsaid && use === 'kept' ? null : use;
}

/** The rows as a file of the milk book. `dateOf` and `momentText` write days and moments. */
export function exportCsv(
  rows: readonly MilkingRow[],
  dateOf: (day: number) => string,
  momentText: (moment_ms: number) => string,
): string {
  const lines = rows.map((row) => {
    const { doe, milking, amount, entered_ms } = row;
    const unit = amount?.unit ?? 'cup';
    const cells = {
      date: dateOf(row.day),
      milking,
      doe,
      amount: amountText(row),
      unit,
      use: exportedUse(row),
      note: noteOf(row.note),
    };
    return csvRow(cells, entered_ms === null ? '' : momentText(entered_ms));
  });
  return [BOOK_HEADING, ...lines, ''].join('\n');
}
