// How a table stands on the page: set closer, turned on its side or set smaller where it is too wide, and how tall it gets.
import type { Words } from '../words/words.ts';
import { linesOf, textWidth_em } from './lines.ts';
import { mmOfPt, type BandMeasures } from './pageMeasures.ts';
import type { Cell, TablePicture } from './picture.ts';
import { numberPieces, plainText, tellText } from './tell.ts';

/** A table as it is set. */
export interface TableFit {
  readonly columns: readonly Cell[];
  readonly rows: readonly (readonly Cell[])[];
  /** White left and right of what stands in a cell, mm. */
  readonly side_mm: number;
  /** Type over the type of the sheet. */
  readonly scale: number;
  /** Least size of a cell to write in, mm. */
  readonly blankWidth_mm: number;
  readonly blankHeight_mm: number;
  readonly height_mm: number;
}

const ROOM_MM = 164;
const SIDES_MM = [2.6, 1.2] as const;
const BLANK_WIDTHS_MM = [22, 14] as const;
/** White above and below, mm, and the line between rows. */
const AIR_MM = 2.8;
const LINE = 1.2;
/** A table taller than this is set in two halves or turned, where there is the width for it: in type of 18 points or more, and in smaller. */
const TALL_MM = { large: 55, small: 90 } as const;
/** Type is not set smaller than this part of the sheet's. */
const LEAST_SCALE = 0.7;
/** Column heads are bold, which runs a little wider. */
const BOLD = 1.07;

/** The text of a cell; empty where it is to be written in. */
export function cellText(cell: Cell, words: Words): string {
  if ('key' in cell) return tellText(words, cell);
  return 'num' in cell ? plainText(numberPieces(cell)) : '';
}

/** Whether a cell is to be written in. */
export function isOpen(cell: Cell): boolean {
  return 'blank' in cell || 'free' in cell;
}

/**
 * Fits a table into the width of a task. As it is written, or with less white, where no cell needs a second line and it is
 * not too tall; else turned or in two halves, whichever is the least tall; then with wrapped words, at last in smaller type.
 */
export function tableFit(picture: TablePicture, words: Words, m: BandMeasures): TableFit {
  const side = turned(picture);
  const ways = [picture, side, folded(picture), folded(side)];
  const [first, ...others] = ways.map((way) => setIn(way, words, m, 0, 1));
  const tall_mm = TALL_MM[m.body_pt >= 17.9 ? 'large' : 'small'];
  if (first && first.full_mm <= ROOM_MM && first.table.height_mm <= tall_mm) return first.table;
  const close = setIn(picture, words, m, 1, 1);
  if (close.full_mm <= ROOM_MM && close.table.height_mm <= tall_mm) return close.table;
  const unbroken = [first, ...others].filter((one) => one !== undefined && one.full_mm <= ROOM_MM);
  const [best] = unbroken.sort((one, other) => (one?.table.height_mm ?? 0) - (other?.table.height_mm ?? 0));
  if (best) return best.table;
  // Sentences in cells wrap; a table of them is not turned.
  for (const tight of [0, 1] as const) {
    const fit = setIn(picture, words, m, tight, 1);
    if (fit.least_mm <= ROOM_MM) return fit.table;
  }
  const { least_mm } = setIn(picture, words, m, 1, 1);
  return setIn(picture, words, m, 1, Math.max(LEAST_SCALE, ROOM_MM / least_mm)).table;
}

/** The lower half of the rows beside the upper, under heads of their own. */
function folded({ columns, rows }: Pick<TableFit, 'columns' | 'rows'>): Pick<TableFit, 'columns' | 'rows'> {
  const half = Math.ceil(rows.length / 2);
  return {
    columns: [...columns, ...columns],
    rows: rows.slice(0, half).map((row, index) => [...row, ...(rows[half + index] ?? [])]),
  };
}

function turned({ columns, rows }: Pick<TableFit, 'columns' | 'rows'>): Pick<TableFit, 'columns' | 'rows'> {
  const across = columns.map((column, place): Cell[] => [
    column,
    ...rows.flatMap((row) => row.slice(place, place + 1)),
  ]);
  return { columns: across[0] ?? [], rows: across.slice(1) };
}

function setIn(
  { columns, rows }: Pick<TableFit, 'columns' | 'rows'>,
  words: Words,
  m: BandMeasures,
  tight: 0 | 1,
  scale: number,
): { readonly table: TableFit; readonly least_mm: number; readonly full_mm: number } {
  const type = mmOfPt(m.body_pt) * scale;
  const [side_mm, blankWidth_mm] = [SIDES_MM[tight], BLANK_WIDTHS_MM[tight]];
  const blankHeight_mm = Math.max(8.6, m.box_mm * 0.72);
  const all = [columns, ...rows];
  const wide = (text: string, row: number): number =>
    textWidth_em(text) * type * (row === 0 ? 0.86 * BOLD : 1);
  const spans = columns.map((_, place) => {
    const cells = all.map((row, index) => ({ cell: row[place], index }));
    const span = (measure: (text: string, row: number) => number): number =>
      Math.max(
        ...cells.map(({ cell, index }) =>
          cell === undefined ? 0 : isOpen(cell) ? blankWidth_mm - 2 * side_mm : measure(cellText(cell, words), index),
        ),
      ) + 2 * side_mm + 0.4; // prettier-ignore
    const longestWord = (text: string, row: number): number =>
      Math.max(0, ...text.split(' ').map((word) => wide(word, row)));
    return { least: span(longestWord), full: span(wide) };
  });
  const least_mm = spans.reduce((sum, { least }) => sum + least, 0);
  const full_mm = spans.reduce((sum, { full }) => sum + full, 0);
  // Too wide on one line: each column gives in by its share, as browsers do it.
  const share =
    full_mm <= ROOM_MM ? 1 : Math.max(0, (ROOM_MM - least_mm) / Math.max(1e-9, full_mm - least_mm));
  const inner = spans.map(({ least, full }) => least + (full - least) * share - 2 * side_mm - 0.4);
  const height_mm = all.reduce((sum, row, index) => {
    const part = index === 0 ? 0.86 * BOLD : 1;
    const lines = Math.max(
      ...row.map((cell, place) => linesOf(cellText(cell, words), (inner[place] ?? ROOM_MM) / (type * part) + 0.02)),
    );
    const fraction = row.some((cell) => cellText(cell, words).includes('/')) ? 1.4 : 0;
    const told = lines * type * (index === 0 ? 0.86 : 1) * LINE + AIR_MM + fraction;
    return sum + (row.some(isOpen) ? Math.max(told, blankHeight_mm) : told) + 0.35;
  }, 0.5); // prettier-ignore
  return {
    table: { columns, rows, side_mm, scale, blankWidth_mm, blankHeight_mm, height_mm },
    least_mm,
    full_mm,
  };
}
