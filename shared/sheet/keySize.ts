// The type of an answer key: small enough for one page, or large enough that a second page is worth its paper.
import { STANDARDS } from '../tasks/standards.ts';
import { say, type Words } from '../words/words.ts';
import { linesOf } from './lines.ts';
import type { Message } from './message.ts';
import { LIVE_WIDTH_MM, measuresFor, mmOfPt, pageHeight_mm } from './pageMeasures.ts';
import type { Sheet } from './sheet.ts';
import { pictureHeight_mm } from './taskHeights.ts';
import { tellText } from './tell.ts';

/** Type of a key that fits on a page, and the largest for one that does not, points. */
export const KEY_PT = Object.freeze({ least: 9.4, most: 11.4 });
const LINE = 1.32;
const COLUMN_MM = (LIVE_WIDTH_MM - 7) / 2;
/** The title of the key and its lines, mm. */
const HEAD_MM = 24;
/** Between entries and within one, mm. */
const ENTRY_MM = 13;
/** Pages that a key that needs a second one should fill. */
const WORTH_PAGES = 1.42;
/** A key that fills more than this of a page may pass over its end: the reckoning is that exact. */
const SURE = 0.9;

/** Type of a sheet's key, points. */
export function keySize_pt(sheet: Sheet, words: Words): number {
  const pages = keyPages(sheet, words);
  if (pages <= SURE || pages >= WORTH_PAGES) return KEY_PT.least;
  // Both the height and the number of lines grow with the type.
  return Math.min(KEY_PT.most, KEY_PT.least * Math.sqrt(WORTH_PAGES / pages));
}

/** How many pages of Letter paper a key fills in its least type, about. */
function keyPages(sheet: Sheet, words: Words): number {
  const text_mm = (text: string, points: number, width_mm = COLUMN_MM): number =>
    linesOf(text, width_mm / mmOfPt(points)) * mmOfPt(points) * LINE;
  const told = (message: Message): string => tellText(words, message);
  const drawn = measuresFor(6, 'ordinary');
  const tasks = sheet.tasks.map((task) => {
    const asks = task.asks.map(
      (ask) =>
        text_mm(`a ${told(ask.answer)}`, 11.6) +
        (ask.picture ? pictureHeight_mm(ask.picture, words, drawn) * 0.55 + 2 : 0) +
        ask.steps.reduce((sum, step) => sum + text_mm(told(step), KEY_PT.least, COLUMN_MM - 4), 0) +
        (ask.accepted.length > 0
          ? text_mm(`${say(words, 'sheet.key.accept')} ${ask.accepted.map(told).join('; ')}`, KEY_PT.least)
          : 0),
    );
    const { what, why } = task.mistake;
    const mistake = `${say(words, 'sheet.key.mistake')} ${told(what)} ${told(why)}`;
    // A note of what was rounded takes some 45 letters.
    const notes = task.fromBook.length * 45 * 0.48 * mmOfPt(8);
    return (
      ENTRY_MM +
      asks.reduce((sum, one) => sum + one + 1.2, 0) +
      text_mm(mistake, KEY_PT.least) +
      Math.ceil(notes / COLUMN_MM) * mmOfPt(8) * 1.35
    );
  });
  const codes = [...new Set(sheet.tasks.flatMap((task) => task.standards))];
  const notices = [
    'supports',
    ...new Set(codes.map((code) => (STANDARDS[code] === 'NGSS' ? 'ngss' : 'ccss'))),
  ];
  const colophon =
    8 +
    codes.reduce((sum, code) => sum + text_mm(say(words, `sheet.standard.${code}`), 8, COLUMN_MM * 0.6), 0) +
    notices.reduce((sum, one) => sum + text_mm(say(words, `sheet.colophon.${one}`), 8) + 1.2, 0);
  const column = pageHeight_mm('letter') - 5 - HEAD_MM;
  return tasks.reduce((sum, one) => sum + one, colophon) / (2 * column);
}
