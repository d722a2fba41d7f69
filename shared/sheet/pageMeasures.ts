// Sizes of a sheet by grade and size of print, in points and millimetres. The page styles and the layout both read them.
import type { UnitSystem } from '../herd/types.ts';
import type { Grade } from '../tasks/standards.ts';

/** Paper that a sheet is printed on. */
export type Paper = 'letter' | 'a4';
/** Both papers. */
export const PAPERS: readonly Paper[] = Object.freeze(['letter', 'a4']);

/** The paper of a farm's country, by the units that it measures in. */
export function paperOf(units: UnitSystem): Paper {
  return units === 'us' ? 'letter' : 'a4';
}

/** Ordinary print, or large print for readers with low vision. */
export type PrintSize = 'ordinary' | 'large';
/** Both sizes of print. */
export const PRINT_SIZES: readonly PrintSize[] = Object.freeze(['ordinary', 'large']);

/** Sizes for a grade: type, boxes and rules grow smaller as children grow older. */
export interface BandMeasures {
  readonly body_pt: number;
  /** Line height over type size. */
  readonly line: number;
  /** Most letters on a line of running text. */
  readonly longest: number;
  /** Answer box: height, and width for one number. */
  readonly box_mm: number;
  readonly boxWidth_mm: number;
  /** A row to write in, from its base line up to its top line. */
  readonly rule_mm: number;
  /** What is left free between two rows to write in. */
  readonly skip_mm: number;
  /** Part of the rows to write in that a task asks for; the rest goes on the back of the page. */
  readonly rows: number;
  /** Whether a row to write in has a top line and a dashed line in the middle. */
  readonly midLine: boolean;
  /** Least open room to work. */
  readonly working_mm: number;
  /** Width of a counted cup. */
  readonly cup_mm: number;
  /** Distance of grid lines in graphs. */
  readonly cell_mm: number;
  readonly gap_mm: number;
}

type Measures = Omit<BandMeasures, 'skip_mm' | 'rows'>;

// Type of 24 points in Andika has an x-height of 4.2 mm, at which children of 7 to 9 read sentences well (Wilkins and
// others 2009 tried 4.2 and 5.0 mm). Rulings of 1, 5/8, 1/2, 3/8, 11/32 and 9/32 inch: stationery practice, from memory.
// Boxes, line heights and longest lines: common practice, no source.
const KINDERGARTEN: Measures =
  { body_pt: 24, line: 1.6, longest: 35, box_mm: 20, boxWidth_mm: 30, rule_mm: 25, midLine: true, working_mm: 34, cup_mm: 12, cell_mm: 12, gap_mm: 6 }; // prettier-ignore
const GRADE_2: Measures =
  { body_pt: 20, line: 1.5, longest: 45, box_mm: 16, boxWidth_mm: 26, rule_mm: 13, midLine: true, working_mm: 30, cup_mm: 11.8, cell_mm: 10, gap_mm: 6 }; // prettier-ignore
const GRADES_3_5: Measures =
  { body_pt: 16, line: 1.45, longest: 55, box_mm: 12, boxWidth_mm: 24, rule_mm: 9.5, midLine: false, working_mm: 16, cup_mm: 8, cell_mm: 7, gap_mm: 6 }; // prettier-ignore
const GRADES_6_8: Measures =
  { body_pt: 12.5, line: 1.4, longest: 65, box_mm: 10, boxWidth_mm: 26, rule_mm: 8.7, midLine: false, working_mm: 15, cup_mm: 6, cell_mm: 5, gap_mm: 5.5 }; // prettier-ignore
const GRADES_9_12: Measures =
  { body_pt: 11.5, line: 1.35, longest: 70, box_mm: 9, boxWidth_mm: 26, rule_mm: 7.1, midLine: false, working_mm: 15, cup_mm: 6, cell_mm: 5, gap_mm: 5.5 }; // prettier-ignore

function ordinary(grade: Grade): Measures {
  if (grade === 0) return KINDERGARTEN;
  if (grade === 1) return { ...KINDERGARTEN, rule_mm: 16 };
  if (grade === 2) return GRADE_2;
  if (grade <= 5) return GRADES_3_5;
  return grade <= 8 ? GRADES_6_8 : GRADES_9_12;
}

/** Large print: type of 20 points or more (guidelines ask for 18), boxes a quarter taller, rows and cells for a thick pen. */
function enlarged(one: Measures): Measures {
  const body_pt = Math.max(20, one.body_pt * 1.17);
  return {
    ...one,
    body_pt,
    line: Math.max(1.3, Math.min(one.line, 1.4)),
    longest: Math.min(one.longest, 50),
    box_mm: one.box_mm * 1.25,
    boxWidth_mm: Math.max(30, one.boxWidth_mm),
    rule_mm: Math.max(13, one.rule_mm),
    working_mm: one.working_mm * 1.25,
    cell_mm: 12,
  };
}

/** Sizes of a sheet for a grade in a size of print. */
export function measuresFor(grade: Grade, print: PrintSize): BandMeasures {
  const measures = print === 'large' ? enlarged(ordinary(grade)) : ordinary(grade);
  // Half a row stays free between rows where children learn to write, and where the pen is thick.
  const skips = grade <= 2 || print === 'large';
  return { ...measures, rows: 1, skip_mm: skips ? measures.rule_mm / 2 : 0 };
}

/** How close a sheet is set: parts of the type and of what is left free. */
export interface Setting {
  readonly type: number;
  readonly free: number;
  readonly rows: number;
}
/** As the grade asks for, and closer ones for a sheet with a task that fills more than a page. Large print keeps its 18 points. */
export const SETTINGS: readonly Setting[] = Object.freeze([
  { type: 1, free: 1, rows: 1 },
  { type: 0.95, free: 0.75, rows: 1 },
  { type: 0.9, free: 0.5, rows: 1 },
  { type: 0.9, free: 0.5, rows: 0.7 },
  { type: 0.9, free: 0, rows: 0.5 },
  { type: 0.9, free: 0, rows: 0.3 },
]);

/** Sizes set closer. */
export function setCloser(m: BandMeasures, { type, free, rows }: Setting): BandMeasures {
  return {
    ...m,
    body_pt: m.body_pt * type,
    rows: m.rows * rows,
    skip_mm: m.skip_mm * free,
    working_mm: m.working_mm * (free + 1) * 0.5,
    gap_mm: m.gap_mm * (free + 1) * 0.5,
  };
}

/** Rows to write in for a task that asks for so many: at least two, where it asks for two. */
export function rowsOf(lines: number, m: BandMeasures): number {
  return Math.max(Math.min(2, lines), Math.round(lines * m.rows));
}

/** The written-on part of a page: the same width on both papers, so that a graph keeps its millimetres. */
export const LIVE_WIDTH_MM = 180;
/** Page margins: sides leave the live width; printers leave about a quarter of an inch white (from memory). */
export const PAGE_MEASURES: Readonly<Record<Paper, {
  readonly width_mm: number; readonly height_mm: number;
  readonly top_mm: number; readonly bottom_mm: number; readonly side_mm: number;
}>> = Object.freeze({
  letter: { width_mm: 215.9, height_mm: 279.4, top_mm: 10.5, bottom_mm: 10, side_mm: 17.95 },
  a4: { width_mm: 210, height_mm: 297, top_mm: 13, bottom_mm: 11, side_mm: 15 },
}); // prettier-ignore

/** Height of the foot of each page with farm, week, seed, code and page number, mm. */
export const FOOT_MM = 9;

/** Height of the printed part of a page with its foot, mm. */
export function pageHeight_mm(paper: Paper): number {
  const { height_mm, top_mm, bottom_mm } = PAGE_MEASURES[paper];
  return height_mm - top_mm - bottom_mm;
}

/** Height of a page that is left for tasks, mm. */
export function liveHeight_mm(paper: Paper): number {
  return pageHeight_mm(paper) - FOOT_MM;
}

/** Points to millimetres: 72 points an inch of 25.4 mm. */
export function mmOfPt(points: number): number {
  return (points * 25.4) / 72;
}

// Mean width of a letter of running text in Andika over its type size, measured on sentences of the sheets.
const LETTER_EM = 0.48;

/** Width that a line of running text may fill, mm, for the longest line of a grade. */
export function textWidth_mm(m: BandMeasures): number {
  return m.longest * LETTER_EM * mmOfPt(m.body_pt);
}
