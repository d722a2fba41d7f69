// Books of does and births for tests of the board's goat pages, and what the pictures of an answer show.
import { boardFarm } from '../../shared/board/boardFarm.ts';
import type { GoatPicture } from '../../shared/board/goatPicture.ts';
import type { Answer, BoardInput } from '../../shared/board/types.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import type { Book, Doe } from '../../shared/herd/types.ts';
import { bookOf, day, kidding } from './bookOf.ts';
import { TEST_FARM } from './testFarm.ts';

/** The board's input from a book on a date. */
export function inputOf(book: Book, date: string, lang = 'en'): BoardInput {
  return inputOn(book, day(date), lang);
}

/** The same on a day number. */
export function inputOn(book: Book, asOf: number, lang = 'en'): BoardInput {
  return { ...boardFarm(TEST_FARM, book, openLedger(book, asOf)), lang, composition: [] };
}

/** A doe of a list, named by her id. */
export const doe = (id: string, born: string | null, breed = ''): Doe => ({
  id,
  name: id,
  breed,
  born,
  weight_kg: null,
});
/** A list of does without births or milk. */
export const herd = (...does: Doe[]): Book => ({ does, kiddings: [], rows: [] });
/** A book of births in the lines of `kidding`, each with its number of kids. */
export const births = (...lines: [text: string, kids: number | null][]): Book => ({
  ...bookOf(lines.map(([text]) => text)),
  kiddings: lines.map(([text, kids]) => ({ ...kidding(text), kids })),
});

/** The picture of an answer, which must be of this kind. */
export function shows<What extends GoatPicture['what']>(answer: Answer, what: What) {
  if (answer.picture.kind !== 'goats' || answer.picture.goats.what !== what)
    throw new Error('another picture');
  return answer.picture.goats as Extract<GoatPicture, { what: What }>;
}
