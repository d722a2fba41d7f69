// What is drawn on a sheet: every figure as its numbers, so that it can be redrawn from them.
import type { Shown, SheetUnit } from '../quantity/grade.ts';
import type { DrawnPicture } from './drawnPicture.ts';
import type { Message } from './message.ts';

/** Whose face stands beside a figure: breed and id choose how she looks. */
export interface Face {
  readonly breed: string;
  readonly id: string;
}

/** A label that is a name, or words. */
export type Label = string | Message;

/** Cups in rows, to be counted. */
export interface CupsPicture {
  readonly is: 'cups';
  readonly groups: readonly {
    readonly label: Label | null;
    readonly face: Face | null;
    readonly count: number;
  }[];
  readonly perRow: number;
}
/** A picture graph: one drawn cup stands for one cup. */
export interface PictureGraph {
  readonly is: 'picture-graph';
  readonly title: Message;
  readonly rows: readonly { readonly label: Label; readonly face: Face | null; readonly count: number }[];
}
/** Jars marked at each cup, to be coloured; `filled` cups are coloured in the key. */
export interface JarsPicture {
  readonly is: 'jars';
  readonly cupsPerJar: number;
  readonly jars: number;
  readonly filled: number;
}
/** Number cards, each with whose it is. */
export interface CardsPicture {
  readonly is: 'cards';
  readonly cards: readonly {
    readonly label: Label;
    readonly face: Face | null;
    readonly value: Shown;
    readonly unit: SheetUnit;
  }[];
}
/** A number line with `parts` steps a unit; marks stand in the key. */
export interface NumberLinePicture {
  readonly is: 'number-line';
  readonly from: number;
  readonly to: number;
  readonly parts: number;
  readonly unit: SheetUnit;
  readonly marks: readonly Shown[];
}
/** Bars on a scale. */
export interface BarsPicture {
  readonly is: 'bars';
  readonly title: Message;
  readonly unit: SheetUnit;
  readonly scale: number;
  readonly top: number;
  readonly bars: readonly { readonly label: Label; readonly value: Shown }[];
}
/** Clock faces. */
export interface ClocksPicture {
  readonly is: 'clocks';
  readonly clocks: readonly { readonly label: Message; readonly time: string }[];
}
/** A cell: a number, words, a place to write (its answer stands in the key), or one for what a child measures. */
export type Cell = Shown | Message | { readonly blank: Shown } | { readonly free: true };
/** A table with a heading over each column. */
export interface TablePicture {
  readonly is: 'table';
  readonly columns: readonly Message[];
  readonly rows: readonly (readonly Cell[])[];
}
/** A dot plot: the axis alone, or with its dots. */
export interface DotPlotPicture {
  readonly is: 'dot-plot';
  readonly from: Shown;
  readonly to: Shown;
  readonly step: Shown;
  /** Every how many steps a number stands under the axis. */
  readonly labelEvery: number;
  readonly unit: SheetUnit;
  readonly values: readonly Shown[];
  /** Most dots on one place, for the height. */
  readonly most: number;
  /** Length of a step on paper where a ruler should find it; else the axis is as long as its place. */
  readonly step_mm?: number;
}
/** Points over days, with a line where there is one. */
export interface ScatterPicture {
  readonly is: 'scatter';
  readonly points: readonly { readonly x: number; readonly y: Shown }[];
  readonly line: { readonly slope: Shown; readonly intercept: Shown } | null;
  readonly yLabel: Message;
  readonly xLabel: Message;
  /** A residual plot has its axis in the middle; without points it is to be drawn. */
  readonly zeroLine: boolean;
  readonly bare: boolean;
}
/** Cards with words, in a mixed order, each with a box for its place. */
export interface StepsPicture {
  readonly is: 'steps';
  readonly steps: readonly { readonly words: Message; readonly place: number }[];
}
/** Boxes on a grid of three columns and two rows, with numbered arrows from one to another. */
export interface FlowPicture {
  readonly is: 'flow';
  readonly boxes: readonly { readonly label: Message; readonly column: number; readonly row: number }[];
  /** `from` and `to` are places in `boxes`. */
  readonly arrows: readonly { readonly from: number; readonly to: number; readonly number: number }[];
}
/** A square of inheritance: a parent's two forms over the columns, the other's beside the rows. */
export interface SquarePicture {
  readonly is: 'square';
  readonly top: { readonly label: Message; readonly forms: readonly [string, string] };
  readonly side: { readonly label: Message; readonly forms: readonly [string, string] };
  /** What belongs in the cells, row by row; empty on the sheet, written in the key. */
  readonly cells: readonly (readonly string[])[];
}
/** Box plots over one axis. */
export interface BoxPlotsPicture {
  readonly is: 'box-plots';
  readonly from: Shown;
  readonly to: Shown;
  readonly step: Shown;
  readonly unit: SheetUnit;
  readonly boxes: readonly {
    readonly label: Label;
    readonly low: Shown;
    readonly q1: Shown;
    readonly median: Shown;
    readonly q3: Shown;
    readonly high: Shown;
  }[];
}
/** Points over days or weeks from zero on, with a lactation curve a·x^b·e^(−cx), a line, or both. */
export interface CurvePicture {
  readonly is: 'curve';
  readonly points: readonly { readonly x: number; readonly y: Shown }[];
  readonly wood: { readonly a: Shown; readonly b: Shown; readonly c: Shown } | null;
  readonly line: { readonly slope: Shown; readonly intercept: Shown } | null;
  /** Last place of the axis of x. */
  readonly last: number;
  readonly yLabel: Message;
  readonly xLabel: Message;
}

/** Any figure of a sheet. */
export type Picture =
  | CupsPicture
  | PictureGraph
  | JarsPicture
  | CardsPicture
  | NumberLinePicture
  | BarsPicture
  | ClocksPicture
  | TablePicture
  | DotPlotPicture
  | ScatterPicture
  | StepsPicture
  | FlowPicture
  | SquarePicture
  | BoxPlotsPicture
  | CurvePicture
  | DrawnPicture;
