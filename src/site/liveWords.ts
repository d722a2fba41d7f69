// The words that the board's pages are told anew with when the desk sends new numbers.
import { QUESTIONS } from '../../shared/board/answers.ts';
import { boardInput, questionIn } from './board.ts';
import { wordsOf } from './words.ts';

/** All words of the board but those of things to do, the words of every question, and the table of milks. */
export async function liveWords(lang: string) {
  const board = Object.entries(wordsOf(lang).entries).filter(
    ([key]) => key.startsWith('barn.') && !key.startsWith('barn.do.'),
  );
  const questions = await Promise.all(
    QUESTIONS.map(async (name) => [name, (await questionIn(name, lang)).words.entries] as const),
  );
  return {
    board: Object.fromEntries(board),
    questions: Object.fromEntries(questions),
    composition: boardInput(lang).composition,
  };
}
