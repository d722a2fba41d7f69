// How tall the figures stand that a child draws into, sorts or puts in order, in millimetres; their drawings are made to these measures.
import { linesOf } from './lines.ts';
import type { DrawnPicture, FacesPicture, WheelPicture } from './drawnPicture.ts';
import type { Message } from './message.ts';
import { mmOfPt, type BandMeasures } from './pageMeasures.ts';
import type { Picture } from './picture.ts';
import { tellText } from './tell.ts';
import type { Words } from '../words/words.ts';

/** Width of a figure, mm. */
export const FIGURE_WIDTH_MM = 164;
/** A clock face, mm across. */
export const DIAL_MM = 42;
/** A scene of a milking: width and height, mm. */
export const SCENE_MM = Object.freeze({ width: 36, height: 32 });
/** A thing to be ringed, mm across. */
export const THING_MM = 25;
/** Height of a goat's head: a mother beside her kid, a kid, and one of many to be counted, mm. */
export const HEAD_MM = Object.freeze({ mother: 42, kid: 30, one: 22 });
/** Most heads in a row. */
export const HEADS_A_ROW = 5;
/** A shape to be cut, mm. */
export const SHAPE_MM = Object.freeze({ width: 60, height: 40 });
/** A jug with its foot and rim, mm. */
export const JUG_MM = Object.freeze({ width: 44, height: 64 });
/** A cup of a row of part-filled cups, mm. */
export const PART_CUP_MM = 17;
/** A doe with numbers at her parts, mm. */
export const DOE_MM = Object.freeze({ width: 74, height: 62 });
/** The circle of boxes, mm. */
export const WHEEL_MM = Object.freeze({ width: 74, height: 62 });
/** A square of a grid, mm: a ruler's own, so that the points can be measured. */
export const GRID_MM = 7;
/** Width of a group of squares to colour, and least height of a row, mm. */
export const SQUARE_MM = 10;

const DRAWN: Readonly<Record<DrawnPicture['is'], true>> = {
  dials: true,
  'block-graph': true,
  scenes: true,
  picks: true,
  faces: true,
  tally: true,
  parts: true,
  jugs: true,
  wheel: true,
  'part-cups': true,
  'doe-parts': true,
  notes: true,
  grid: true,
};

/** Whether a figure is one of these. */
export function isDrawn(picture: Picture): picture is DrawnPicture {
  return picture.is in DRAWN;
}

const line_mm = (m: BandMeasures): number => mmOfPt(m.body_pt) * m.line;
/** Type of a label in a figure, mm. */
export function label_mm(m: BandMeasures): number {
  return Math.max(mmOfPt(11), mmOfPt(m.body_pt) * 0.78);
}

const lines = (text: string, width_mm: number, type_mm: number): number => linesOf(text, width_mm / type_mm);

/** Height of the tallest of some labels in columns of a width, mm. */
function labels_mm(labels: readonly Message[], words: Words, width_mm: number, m: BandMeasures): number {
  const type = label_mm(m);
  return Math.max(...labels.map((one) => lines(tellText(words, one), width_mm, type))) * type * 1.25;
}

/** Height of a row to tally in, mm. */
export function tallyRow_mm(m: BandMeasures): number {
  return Math.max(16, m.box_mm);
}

function faces_mm({ faces }: FacesPicture, m: BandMeasures): number {
  if (faces.some(({ label }) => label)) return HEAD_MM.mother + label_mm(m) * 1.4 + 1;
  return Math.ceil(faces.length / HEADS_A_ROW) * (HEAD_MM.one + 3);
}

/** Height of the cards beside a wheel or a doe, mm. */
export function cards_mm(texts: readonly Message[], words: Words, width_mm: number, m: BandMeasures, box_mm: number): number {
  const type = mmOfPt(m.body_pt);
  return texts.reduce(
    (sum, one) => sum + Math.max(box_mm, lines(tellText(words, one), width_mm, type) * type * 1.2) + 2.5,
    0,
  );
} // prettier-ignore

/** Width left for the words of a card beside a wheel or a doe, after its box or number, mm. */
export function cardWidth_mm(left_mm: number, box_mm: number): number {
  return FIGURE_WIDTH_MM - left_mm - 6 - box_mm - 3;
}

/** Size of the small box of a card, mm. */
export function cardBox_mm(m: BandMeasures): number {
  return Math.min(m.box_mm, 14);
}

function wheel_mm(picture: WheelPicture, words: Words, m: BandMeasures): number {
  const texts = picture.cards.map((card) => card.words);
  const box = mmOfPt(m.body_pt) * 1.5;
  return (
    Math.max(WHEEL_MM.height, cards_mm(texts, words, cardWidth_mm(WHEEL_MM.width, box), m, box)) +
    given_mm(picture, words, m)
  );
}

/** Height of what tells the given step of a wheel, beside its star, mm. */
function given_mm({ given }: WheelPicture, words: Words, m: BandMeasures): number {
  return lines(tellText(words, given), FIGURE_WIDTH_MM - 12, mmOfPt(m.body_pt)) * line_mm(m) + 1;
}

/** Height of a figure of these, mm. */
export function drawnHeight_mm(picture: DrawnPicture, words: Words, m: BandMeasures): number {
  const text = line_mm(m);
  switch (picture.is) {
    case 'dials':
      return DIAL_MM + label_mm(m) * 1.6;
    case 'block-graph':
      return text + picture.rows.length * (SQUARE_MM + 2.4) + label_mm(m) + 4;
    case 'scenes':
      return SCENE_MM.height + m.box_mm + 3;
    case 'picks':
      return Math.ceil(picture.picks.length / 3) * (THING_MM + label_mm(m) * 1.5 + 4);
    case 'faces':
      return faces_mm(picture, m);
    case 'tally':
      return picture.rows.length * tallyRow_mm(m) + label_mm(m) * 2.8 + 3;
    case 'parts':
      return SHAPE_MM.height + 2;
    case 'jugs':
      return JUG_MM.height + label_mm(m) * 1.6;
    case 'wheel':
      return wheel_mm(picture, words, m);
    case 'part-cups':
      return PART_CUP_MM * 0.95;
    case 'doe-parts': {
      const box = cardBox_mm(m);
      const texts = picture.cards.map((card) => card.words);
      return Math.max(DOE_MM.height, cards_mm(texts, words, cardWidth_mm(DOE_MM.width, box), m, box));
    }
    case 'notes':
      return labels_mm(picture.heads, words, FIGURE_WIDTH_MM / picture.heads.length - 6, m) + picture.lines * m.rule_mm + 6;
    case 'grid':
      return (picture.yTop / picture.yStep) * GRID_MM + label_mm(m) * 2.4 + 8;
  }
} // prettier-ignore
