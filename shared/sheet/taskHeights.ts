// How tall a task stands on the page, in millimetres, before open room is shared out.
import { FLOW } from '../drawing/flowMap.ts';
import { say, type Words } from '../words/words.ts';
import type { Ask, Task, Work } from '../tasks/task.ts';
import { LIVE_WIDTH_MM, mmOfPt, rowsOf, textWidth_mm, type BandMeasures } from './pageMeasures.ts';
import type { Picture } from './picture.ts';
import { drawnHeight_mm, isDrawn } from './drawnHeights.ts';
import { cardsHeight_mm, stepsHeight_mm } from './cardHeights.ts';
import { barsFrame, dotFrame, scatterFrame } from './frames.ts';
import { linesOf, textWidth_em } from './lines.ts';
import { tableFit } from './tableFit.ts';
import { plainText, tellSlot, tellText, unitAfterBlank } from './tell.ts';
import type { SheetUnit } from '../quantity/grade.ts';

/** Side of a cell in a square of inheritance, mm. */
export const SQUARE_CELL_MM = 12;
/** Height of one box plot with what is free about it, mm. */
export const BOX_PLOT_ROW_MM = 14;
/** Least height of the frame in which young children draw or count. */
const COUNTING_ROOM_MM = 16;
/** Width of a task beside its number. */
const BODY_WIDTH_MM = 164;
/** What is left free between boxes, signs and units in a row, mm. */
const BOX_GAP_MM = 2.5;
/** What is left free between names to be ringed, mm. */
const RING_GAP_MM = 16;
/** A text between tasks stands in from the edge by its bar. */
const BETWEEN_INDENT_MM = 5;

const lineHeight_mm = (m: BandMeasures): number => mmOfPt(m.body_pt) * m.line;
const width_mm = (text: string, m: BandMeasures): number => textWidth_em(text) * mmOfPt(m.body_pt);

/** Height of a text in a width, mm; no line is longer than the grade reads. */
export function textHeight_mm(text: string, m: BandMeasures, width = BODY_WIDTH_MM): number {
  // Kerning and bold letters make a line a hair longer than the sum of its letters.
  const room = Math.min(width, textWidth_mm(m)) * 0.985;
  return linesOf(text, room / mmOfPt(m.body_pt)) * lineHeight_mm(m);
}

/** Height of a text that stands between tasks, with the gap after it, mm. */
export function betweenHeight_mm(text: string, m: BandMeasures): number {
  const fraction = text.includes('/') ? 2 : 0;
  return textHeight_mm(text, m, LIVE_WIDTH_MM - BETWEEN_INDENT_MM) + fraction + m.gap_mm;
}

/** Type of small print on a sheet, points: notes in its head, and where a task's numbers are from. */
export function notePt(m: BandMeasures): number {
  return Math.max(10.5, m.body_pt * 0.75);
}

/** Height of the line that names an earlier week, mm. */
export function earlierHeight_mm(m: BandMeasures): number {
  const type = mmOfPt(notePt(m));
  // The longest such line has 75 letters.
  return Math.ceil((75 * 0.48 * type) / BODY_WIDTH_MM) * type * 1.35 + 2;
}

/** Height of rows to write in, with what is free between them, mm. */
export function rowsHeight_mm(rows: number, m: BandMeasures): number {
  return rows * m.rule_mm + Math.max(0, rows - 1) * m.skip_mm;
}

/** Width of a row of answer boxes with the units that stand after them. */
function boxesWidth_mm(after: readonly (SheetUnit | null)[], words: Words, m: BandMeasures): number {
  return after.reduce(
    (sum, unit) =>
      sum + m.boxWidth_mm + 3 + (unit === null ? 0 : 2 + width_mm(unitAfterBlank(words, unit), m)),
    0,
  );
}

/** Whether an answer stands beside its question instead of below it: one or two boxes, not a row of them. */
export function isBeside(work: Work, words: Words, m: BandMeasures): boolean {
  return (
    work.is === 'boxes' &&
    !work.signs &&
    !work.room &&
    boxesWidth_mm(work.after, words, m) <= BODY_WIDTH_MM * 0.56
  );
}

/** Whether room for an answer takes what the page has left. */
export function takesRoom(work: Work, m: BandMeasures): boolean {
  switch (work.is) {
    case 'working':
    case 'drawing':
      return true;
    case 'lines':
      return !m.midLine && m.skip_mm === 0 && m.rows === 1;
    case 'boxes':
      return work.room === true;
    case 'picture':
    case 'ring':
      return false;
  }
}

/** Height of a marked jar, mm: taller where small hands colour it. */
export function jarHeight_mm(m: BandMeasures): number {
  return m.body_pt > 18 ? 48 : 28;
}

/** Height of a row of boxes with their signs and units, which wraps where it is too long, mm. */
function boxesHeight_mm(work: Extract<Work, { is: 'boxes' }>, words: Words, m: BandMeasures): number {
  const named = work.signs !== undefined && work.signs.length === work.after.length;
  const parts = work.after.flatMap((unit, index): number[] => {
    const sign = named ? work.signs?.[index] : index > 0 ? work.signs?.[index - 1] : undefined;
    const told = sign === 'and' ? say(words, 'sheet.between-and') : sign;
    const box = m.boxWidth_mm + (unit === null ? 0 : 2 + width_mm(unitAfterBlank(words, unit), m));
    return told === undefined ? [box] : [width_mm(told, m) * 1.1, box];
  });
  let [rows, filled] = [1, 0];
  for (const part of parts) {
    if (filled > 0 && filled + BOX_GAP_MM + part > BODY_WIDTH_MM) [rows, filled] = [rows + 1, part];
    else filled += part + (filled > 0 ? BOX_GAP_MM : 0);
  }
  return rows * m.box_mm + (rows - 1) * 2;
}

/** Height of names to be ringed, which wrap where they are too long for a line, mm. */
function ringHeight_mm(work: Extract<Work, { is: 'ring' }>, words: Words, m: BandMeasures): number {
  let [rows, filled] = [1, 0];
  for (const one of work.of) {
    const wide = width_mm(plainText(tellSlot(words, one)), m) * 1.08;
    if (filled > 0 && filled + RING_GAP_MM + wide > BODY_WIDTH_MM - 12) [rows, filled] = [rows + 1, wide];
    else filled += wide + (filled > 0 ? RING_GAP_MM : 0);
  }
  return rows * lineHeight_mm(m) + (rows - 1) * 4 + 4.2;
}

function workHeight_mm(work: Work, words: Words, m: BandMeasures): number {
  switch (work.is) {
    case 'boxes':
      return boxesHeight_mm(work, words, m) + (work.room ? COUNTING_ROOM_MM + 2 : 0);
    case 'ring':
      return ringHeight_mm(work, words, m);
    case 'lines':
      return rowsHeight_mm(rowsOf(work.lines, m), m) + 1;
    case 'drawing':
      return 54;
    case 'working':
      return m.working_mm;
    case 'picture':
      return 0;
  }
}

function askHeight_mm(ask: Ask, words: Words, m: BandMeasures): number {
  const prompt = `a  ${tellText(words, ask.prompt)}`;
  const beside = ask.work.is === 'boxes' && isBeside(ask.work, words, m);
  const width = beside ? BODY_WIDTH_MM - 6 - boxesWidth_mm(ask.work.after, words, m) : BODY_WIDTH_MM;
  const text = textHeight_mm(prompt, m, width);
  const work = workHeight_mm(ask.work, words, m);
  const drawn =
    ask.work.is === 'picture' && ask.picture?.is === 'scatter'
      ? pictureHeight_mm(ask.picture, words, m) + 3
      : 0;
  const fraction = prompt.includes('/') ? 2 : 0;
  return (beside ? Math.max(text, work) : text + work + 1) + fraction + drawn + 2.5;
}

/** Height of a figure, mm. */
export function pictureHeight_mm(picture: Picture, words: Words, m: BandMeasures): number {
  if (isDrawn(picture)) return drawnHeight_mm(picture, words, m);
  const text = lineHeight_mm(m);
  switch (picture.is) {
    case 'cups': {
      const row = m.cup_mm * 0.9 + 2;
      return picture.groups.reduce(
        (sum, group) =>
          sum +
          Math.max(
            Math.ceil(group.count / picture.perRow) * row,
            group.face ? (group.label ? 22 : 17) : text,
          ) +
          2,
        0,
      );
    }
    case 'picture-graph':
      return text + picture.rows.length * 12.6 + 2;
    case 'jars':
      return jarHeight_mm(m);
    case 'cards':
      return cardsHeight_mm(picture, words, m);
    case 'number-line':
      return 25 + mmOfPt(m.body_pt) * 0.92;
    case 'bars':
      return text + barsFrame(m, (picture.top / picture.scale) * m.cell_mm).height_mm + 2;
    case 'clocks':
      return 54;
    case 'table':
      return tableFit(picture, words, m).height_mm;
    case 'dot-plot':
      return dotFrame(m, Math.max(3, picture.most) * m.cell_mm).height_mm + 1;
    case 'scatter':
    case 'curve':
      return scatterFrame(m).height_mm;
    case 'steps':
      return stepsHeight_mm(picture, words, m);
    case 'flow':
      return FLOW.height + 1;
    case 'square':
      return SQUARE_CELL_MM * 2 + mmOfPt(m.body_pt) * 2.7 + 2;
    case 'box-plots':
      return picture.boxes.length * BOX_PLOT_ROW_MM + 6 + mmOfPt(m.body_pt);
  }
}

/** Height of a task with the least room to work, mm. A bit more than it takes, never less. */
export function taskHeight_mm(task: Task, words: Words, m: BandMeasures): number {
  // A stacked fraction stands a little taller than its line.
  const lead = task.lead.reduce((sum, line) => {
    const told = tellText(words, line);
    return sum + textHeight_mm(told, m) + (told.includes('/') ? 1.2 : 0);
  }, 0);
  const picture = task.picture ? pictureHeight_mm(task.picture, words, m) + 4 : 0;
  const asks = asksHeight_mm(task.asks, words, m);
  return Math.max(lead, 8) + picture + asks + m.gap_mm;
}

/** Height of some questions of a task, mm. */
export function asksHeight_mm(asks: readonly Ask[], words: Words, m: BandMeasures): number {
  return asks.reduce((sum, ask) => sum + askHeight_mm(ask, words, m), 0);
}
