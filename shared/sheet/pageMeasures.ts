// Sizes of a sheet by grade band, in points and millimetres. The page styles and the layout both read them.
import type { Band } from '../quantity/grade.ts';

/** Paper that a sheet is printed on. */
export type Paper = 'letter' | 'a4';
/** Both papers. */
export const PAPERS: readonly Paper[] = Object.freeze(['letter', 'a4']);

/** Sizes of a band: type, boxes and rules grow smaller as children grow older. */
export interface BandMeasures {
  readonly body_pt: number;
  /** Line height over type size. */
  readonly line: number;
  /** Answer box: height, and width for one number. */
  readonly box_mm: number;
  readonly boxWidth_mm: number;
  /** Distance of ruled writing lines. */
  readonly rule_mm: number;
  /** Least open room to work. */
  readonly working_mm: number;
  /** Width of a counted cup. */
  readonly cup_mm: number;
  /** Distance of grid lines in graphs. */
  readonly cell_mm: number;
  readonly gap_mm: number;
}

/** Type and rulings by band: x-height of 3.5 mm at the youngest, college ruling at the oldest. */
export const BAND_MEASURES: Readonly<Record<Band, BandMeasures>> = Object.freeze({
  'k-2': { body_pt: 20.5, line: 1.32, box_mm: 16, boxWidth_mm: 26, rule_mm: 13, working_mm: 30, cup_mm: 11.8, cell_mm: 10, gap_mm: 6 },
  '3-5': { body_pt: 16, line: 1.35, box_mm: 12, boxWidth_mm: 24, rule_mm: 9.5, working_mm: 16, cup_mm: 8, cell_mm: 6, gap_mm: 6 },
  '6-8': { body_pt: 12.5, line: 1.4, box_mm: 10, boxWidth_mm: 26, rule_mm: 8.7, working_mm: 15, cup_mm: 6, cell_mm: 5, gap_mm: 5.5 },
  '9-12': { body_pt: 11.5, line: 1.4, box_mm: 9, boxWidth_mm: 26, rule_mm: 7.5, working_mm: 15, cup_mm: 6, cell_mm: 5, gap_mm: 5.5 },
}); // prettier-ignore

/** The written-on part of a page: the same width on both papers, so that a graph keeps its millimetres. */
export const LIVE_WIDTH_MM = 180;
/** Page margins: sides leave the live width; the foot holds farm, seed and page number. */
export const PAGE_MEASURES: Readonly<Record<Paper, {
  readonly width_mm: number; readonly height_mm: number;
  readonly top_mm: number; readonly foot_mm: number; readonly side_mm: number;
}>> = Object.freeze({
  letter: { width_mm: 215.9, height_mm: 279.4, top_mm: 11, foot_mm: 16, side_mm: 17.95 },
  a4: { width_mm: 210, height_mm: 297, top_mm: 14, foot_mm: 18, side_mm: 15 },
}); // prettier-ignore

/** Height of the written-on part of a page, mm. */
export function liveHeight_mm(paper: Paper): number {
  const { height_mm, top_mm, foot_mm } = PAGE_MEASURES[paper];
  return height_mm - top_mm - foot_mm;
}

/** Points to millimetres: 72 points an inch of 25.4 mm. */
export function mmOfPt(points: number): number {
  return (points * 25.4) / 72;
}
