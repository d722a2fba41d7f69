// How tall number cards and step cards stand, in millimetres: they wrap as their words need.
import type { Words } from '../words/words.ts';
import { linesOf, textWidth_em } from './lines.ts';
import { mmOfPt, type BandMeasures } from './pageMeasures.ts';
import type { CardsPicture, StepsPicture } from './picture.ts';
import { numberPieces, plainText, tellText, unitAfterBlank } from './tell.ts';

/** Width of a task beside its number, mm. */
const ROOM_MM = 164;
/** Least width of a number card, white and border about what stands on it, mm. */
const CARD_MM = 34;
const CARD_SIDES_MM = 7.4;
const CARD_AIR_MM = 3.8;
const FACE_MM = 17;
const BETWEEN_CARDS_MM = 4;
/** Distance of the two columns of steps, and of a step's box from its words, mm. */
const COLUMNS_MM = 6;
const BOX_GAP_MM = 3;

/** Height of a row, or of several rows, of number cards. */
export function cardsHeight_mm({ cards }: CardsPicture, words: Words, m: BandMeasures): number {
  const body = mmOfPt(m.body_pt);
  const small = Math.max(mmOfPt(9.5), body * 0.68);
  const widths = cards.map(({ label, value, unit }) => {
    const told = typeof label === 'string' ? label : tellText(words, label);
    const number = textWidth_em(plainText(numberPieces(value)), 'slab') * body * 1.45;
    const texts = [told, unitAfterBlank(words, unit)].map((text) => textWidth_em(text) * small);
    return Math.max(CARD_MM, Math.max(number, ...texts) + CARD_SIDES_MM);
  });
  let [rows, filled] = [1, 0];
  for (const width of widths) {
    if (filled > 0 && filled + BETWEEN_CARDS_MM + width > ROOM_MM) [rows, filled] = [rows + 1, width];
    else filled += width + (filled > 0 ? BETWEEN_CARDS_MM : 0);
  }
  const face = cards.some((card) => card.face) ? FACE_MM : 0;
  const card = CARD_AIR_MM + face + (small * 2 + body * 1.45) * 1.15;
  return rows * card + (rows - 1) * BETWEEN_CARDS_MM;
}

/** Height of steps in two columns, each with a box for its number. */
export function stepsHeight_mm({ steps }: StepsPicture, words: Words, m: BandMeasures): number {
  const body = mmOfPt(m.body_pt);
  const width = (ROOM_MM - COLUMNS_MM) / 2 - m.box_mm - BOX_GAP_MM;
  const heights = steps.map((step) =>
    Math.max(m.box_mm, linesOf(tellText(words, step.words), width / body) * body * 1.15),
  );
  const rows = Math.ceil(heights.length / 2);
  return Array.from({ length: rows }, (_, row) => Math.max(...heights.slice(row * 2, row * 2 + 2))).reduce(
    (sum, height) => sum + height + BOX_GAP_MM,
    0,
  );
}
