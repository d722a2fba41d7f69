// Numbered milkings of which some are drawn by lot.
import { whole, type Shown } from '../quantity/grade.ts';
import { count, msg, type Message } from '../sheet/message.ts';
import type { Cell, TablePicture } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';

const PER_ROW = 7;

/** A table in which each milking stands under its number, seven to a row. */
export function lotTable(shown: readonly Shown[], heading: Message): TablePicture {
  const numbers = shown.map((_, index) => whole(index + 1));
  const rowOf = <T>(from: readonly T[], row: number): readonly T[] =>
    from.slice(row * PER_ROW, (row + 1) * PER_ROW);
  const rows = Math.ceil(shown.length / PER_ROW);
  const cells = Array.from({ length: rows }, (_, row): readonly (readonly Cell[])[] => [
    ...(row === 0 ? [] : [[msg('sheet.column.lot'), ...fill(rowOf(numbers, row))]]),
    [heading, ...fill(rowOf(shown, row))],
  ]).flat();
  return {
    is: 'table',
    columns: [
      msg('sheet.column.lot'),
      ...rowOf(numbers, 0).map(({ num }) => msg('sheet.label.number', { number: count(num) })),
    ],
    rows: cells,
  };
}

/** A row that is as long as the others. */
function fill(cells: readonly Shown[]): Cell[] {
  const empty = Array.from({ length: PER_ROW - cells.length }, () => msg('sheet.label.nothing'));
  return [...cells, ...empty];
}

/** Some different lots of 1 to `of`, in order. */
export function drawLots({ chance }: TaskContext, of: number, size: number): number[] {
  const all = Array.from({ length: of }, (_, index) => index + 1);
  return chance
    .shuffle(all)
    .slice(0, size)
    .sort((a, b) => a - b);
}
