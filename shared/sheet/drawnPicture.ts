// Figures that a child draws into, sorts, or puts in order: each as its numbers and names, so that it can be redrawn from them.
import type { Shown } from '../quantity/grade.ts';
import type { Message } from './message.ts';
import type { Face, Label } from './picture.ts';

/** Clock faces; a face without hands is drawn by the child, and stands with them in the key. */
export interface DialsPicture {
  readonly is: 'dials';
  readonly dials: readonly { readonly label: Message; readonly time: string; readonly hands: boolean }[];
}
/** A bar graph of squares to colour: one square for each cup, the number beside it. */
export interface BlockGraph {
  readonly is: 'block-graph';
  readonly title: Message;
  /** Squares in a row. */
  readonly most: number;
  readonly rows: readonly { readonly label: Label; readonly face: Face | null; readonly count: number }[];
}
/** Scenes of a milking. */
export type Scene = 'wash' | 'clean' | 'milk' | 'pour';
/** Scenes in a mixed order, each with a box for its place. */
export interface ScenesPicture {
  readonly is: 'scenes';
  readonly scenes: readonly { readonly scene: Scene; readonly words: Message; readonly place: number }[];
}
/** Things that someone may need, or not. */
export type Thing = 'hay' | 'meal' | 'water' | 'air' | 'light' | 'ball' | 'hat' | 'book';
/** Drawn things to ring; in the key the right ones are ringed. */
export interface PicksPicture {
  readonly is: 'picks';
  readonly picks: readonly { readonly thing: Thing; readonly words: Message; readonly right: boolean }[];
}
/** Heads of goats in a row; a kid's is drawn smaller. */
export interface FacesPicture {
  readonly is: 'faces';
  readonly faces: readonly {
    readonly face: Face;
    readonly label: Message | null;
    readonly kid: boolean;
  }[];
}
/** Rows to tally in, with room for the count. */
export interface TallyPicture {
  readonly is: 'tally';
  readonly marks: Message;
  readonly number: Message;
  readonly rows: readonly Message[];
}
/** A shape to be cut into equal parts; in the key it is cut. */
export interface PartsPicture {
  readonly is: 'parts';
  readonly shape: 'rectangle' | 'circle';
  readonly parts: 2 | 3 | 4;
}
/** Jugs marked at each liter, filled to whole liters. */
export interface JugsPicture {
  readonly is: 'jugs';
  readonly top: number;
  readonly jugs: readonly { readonly label: Message; readonly litres: Shown }[];
}
/** A circle of boxes joined by arrows: the first is given, the others take the number of a card. */
export interface WheelPicture {
  readonly is: 'wheel';
  readonly given: Message;
  /** The cards with their numbers' order: card 1 first. `place` is the box after the given one, from 1. */
  readonly cards: readonly { readonly words: Message; readonly place: number }[];
}
/** Cups, each filled to the same share. */
export interface PartCupsPicture {
  readonly is: 'part-cups';
  readonly of: Shown;
  readonly count: number;
}
/** Parts of a goat that can be pointed at. */
export type DoePart = 'lips' | 'eye' | 'rumen' | 'udder' | 'hoof' | 'coat';
/** A doe with numbers at her parts, and cards that say what a part does, each with a box for its number. */
export interface DoePartsPicture {
  readonly is: 'doe-parts';
  readonly parts: readonly DoePart[];
  readonly cards: readonly { readonly words: Message; readonly number: number }[];
}
/** Room for notes under headings. */
export interface NotesPicture {
  readonly is: 'notes';
  readonly heads: readonly Message[];
  readonly lines: number;
}
/** A first-quadrant grid: x in whole days, y in steps; the points stand in the key. */
export interface GridPicture {
  readonly is: 'grid';
  readonly xTop: number;
  readonly yTop: number;
  readonly yStep: number;
  readonly xLabel: Message;
  readonly yLabel: Message;
  readonly points: readonly { readonly x: number; readonly y: Shown }[];
}

/** Any of these figures. */
export type DrawnPicture =
  | DialsPicture
  | BlockGraph
  | ScenesPicture
  | PicksPicture
  | FacesPicture
  | TallyPicture
  | PartsPicture
  | JugsPicture
  | WheelPicture
  | PartCupsPicture
  | DoePartsPicture
  | NotesPicture
  | GridPicture;
