// Label sheets by their measures, and where each label lies on the paper.
import { PAGE_MEASURES, type Paper } from '../sheet/pageMeasures.ts';

/** How a measure is told: the unit that people hold to the paper, and the numbers as they write them. */
export interface ToldSize {
  readonly unit: 'in' | 'mm';
  readonly width: string;
  readonly height: string;
}

/** A sheet of labels that are all alike. Lengths are millimetres from the paper's upper left corner. */
export interface LabelSheet {
  /** Names the sheet in an address. */
  readonly id: string;
  readonly paper: Paper;
  readonly columns: number;
  readonly rows: number;
  readonly width_mm: number;
  readonly height_mm: number;
  /** Left and upper edge of the first label. */
  readonly left_mm: number;
  readonly top_mm: number;
  /** What is free between two labels side by side, and between two rows. */
  readonly across_mm: number;
  readonly down_mm: number;
  readonly told: ToldSize;
}

/** A label that is a page of its own, for a printer that prints one label after another. */
export interface SingleLabel {
  readonly id: string;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly told: ToldSize;
}

const INCH_MM = 25.4;
const inch = (n: number) => n * INCH_MM;

/**
 * Sheets that are sold in many places, by their plain measures: four on Letter, three on A4. The margins are those that put
 * the labels in the middle of the paper. Common practice, no source.
 */
export const COMMON_SHEETS: readonly LabelSheet[] = Object.freeze([
  { id: 'letter-3x10', paper: 'letter', columns: 3, rows: 10, width_mm: inch(2 + 5 / 8), height_mm: inch(1), left_mm: inch(3 / 16), top_mm: inch(1 / 2), across_mm: inch(1 / 8), down_mm: 0, told: { unit: 'in', width: '2⅝', height: '1' } },
  { id: 'letter-2x7', paper: 'letter', columns: 2, rows: 7, width_mm: inch(4), height_mm: inch(4 / 3), left_mm: inch(5 / 32), top_mm: inch(5 / 6), across_mm: inch(3 / 16), down_mm: 0, told: { unit: 'in', width: '4', height: '1⅓' } },
  { id: 'letter-2x5', paper: 'letter', columns: 2, rows: 5, width_mm: inch(4), height_mm: inch(2), left_mm: inch(5 / 32), top_mm: inch(1 / 2), across_mm: inch(3 / 16), down_mm: 0, told: { unit: 'in', width: '4', height: '2' } },
  { id: 'letter-2x3', paper: 'letter', columns: 2, rows: 3, width_mm: inch(4), height_mm: inch(10 / 3), left_mm: inch(5 / 32), top_mm: inch(1 / 2), across_mm: inch(3 / 16), down_mm: 0, told: { unit: 'in', width: '4', height: '3⅓' } },
  { id: 'a4-3x7', paper: 'a4', columns: 3, rows: 7, width_mm: 63.5, height_mm: 38.1, left_mm: 7.2, top_mm: 15.15, across_mm: 2.55, down_mm: 0, told: { unit: 'mm', width: '63.5', height: '38.1' } },
  { id: 'a4-2x7', paper: 'a4', columns: 2, rows: 7, width_mm: 99.1, height_mm: 38.1, left_mm: 4.65, top_mm: 15.15, across_mm: 2.5, down_mm: 0, told: { unit: 'mm', width: '99.1', height: '38.1' } },
  { id: 'a4-2x4', paper: 'a4', columns: 2, rows: 4, width_mm: 99.1, height_mm: 67.7, left_mm: 4.65, top_mm: 13.1, across_mm: 2.5, down_mm: 0, told: { unit: 'mm', width: '99.1', height: '67.7' } },
] satisfies LabelSheet[]); // prettier-ignore

/** Labels of a roll, one by one, by their plain measures. Common practice, no source. */
export const COMMON_SINGLES: readonly SingleLabel[] = Object.freeze([
  { id: 'one-2x1', width_mm: inch(2), height_mm: inch(1), told: { unit: 'in', width: '2', height: '1' } },
  { id: 'one-3x2', width_mm: inch(3), height_mm: inch(2), told: { unit: 'in', width: '3', height: '2' } },
  { id: 'one-62x29', width_mm: 62, height_mm: 29, told: { unit: 'mm', width: '62', height: '29' } },
  { id: 'one-50x30', width_mm: 50, height_mm: 30, told: { unit: 'mm', width: '50', height: '30' } },
] satisfies SingleLabel[]); // prettier-ignore

/** The smallest label that holds what must stand on a jar, mm. */
export const LEAST_LABEL = Object.freeze({ width_mm: 35, height_mm: 20 });

/** Why a sheet cannot be. */
export type SheetFault = 'too small' | 'too wide' | 'too high';

// Measures are told to a sixteenth of an inch or a tenth of a millimetre; sums of them may be a little over the paper.
const HAIR_MM = 0.06;

/** What is wrong with a sheet's measures, or null. Rows, columns and gaps are taken to be sound numbers. */
export function sheetFault(sheet: Omit<LabelSheet, 'id' | 'told'>): SheetFault | null {
  const { paper, columns, rows, width_mm, height_mm, left_mm, top_mm, across_mm, down_mm } = sheet;
  if (width_mm < LEAST_LABEL.width_mm || height_mm < LEAST_LABEL.height_mm) return 'too small';
  const page = PAGE_MEASURES[paper];
  if (left_mm + columns * width_mm + (columns - 1) * across_mm > page.width_mm + HAIR_MM) return 'too wide';
  if (top_mm + rows * height_mm + (rows - 1) * down_mm > page.height_mm + HAIR_MM) return 'too high';
  return null;
}

/** A label's place: page, row and column from 0, and its upper left corner. */
export interface LabelPlace {
  readonly page: number;
  readonly row: number;
  readonly column: number;
  readonly x_mm: number;
  readonly y_mm: number;
}

/** Labels on one sheet. */
export function labelsASheet({ rows, columns }: Pick<LabelSheet, 'rows' | 'columns'>): number {
  return rows * columns;
}

/**
 * Places for `count` labels, left to right and then down, the first one on label `start` (from 1) of a sheet that is used
 * in part. A start past the sheet counts as its last label, one below 1 as the first.
 */
export function labelPlaces(sheet: LabelSheet, start: number, count: number): LabelPlace[] {
  const onSheet = labelsASheet(sheet);
  const first = Math.min(onSheet, Math.max(1, Math.floor(start))) - 1;
  return Array.from({ length: count }, (_, index) => {
    const place = first + index;
    const within = place % onSheet;
    const [row, column] = [Math.floor(within / sheet.columns), within % sheet.columns];
    return {
      page: Math.floor(place / onSheet),
      row,
      column,
      x_mm: sheet.left_mm + column * (sheet.width_mm + sheet.across_mm),
      y_mm: sheet.top_mm + row * (sheet.height_mm + sheet.down_mm),
    };
  });
}
