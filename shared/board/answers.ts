// The board's answers by the name of their question.
import { doesItHurt } from './doesItHurt.ts';
import { goatAndCow } from './goatAndCow.ts';
import { howMuch } from './howMuch.ts';
import type { Answer, BoardInput, QuestionName } from './types.ts';
import { whereItGoes } from './whereItGoes.ts';
import { whoseMilk } from './whoseMilk.ts';
import { whyMilk } from './whyMilk.ts';

const ANSWERS: Readonly<Record<QuestionName, (input: BoardInput) => Answer>> = Object.freeze({
  'why-milk': whyMilk,
  'how-much': howMuch,
  'whose-milk': whoseMilk,
  'goat-and-cow': goatAndCow,
  'does-it-hurt': doesItHurt,
  'where-it-goes': whereItGoes,
});

/** Names of the questions, in the board's order. */
export const QUESTIONS = Object.freeze(Object.keys(ANSWERS) as QuestionName[]);

/** The answer to a question from the herd's own week. */
export function answerTo(name: QuestionName, input: BoardInput): Answer {
  return ANSWERS[name](input);
}
