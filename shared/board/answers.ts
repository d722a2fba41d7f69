// The board's answers by the name of their question.
import { doesItHurt } from './doesItHurt.ts';
import { goatAndCow } from './goatAndCow.ts';
import { howMuch } from './howMuch.ts';
import { TOPICS, type QuestionName } from './topics.ts';
import type { Answer, BoardInput } from './types.ts';
import { whereItGoes } from './whereItGoes.ts';
import { whoseMilk } from './whoseMilk.ts';
import { whyMilk } from './whyMilk.ts';

const ANSWERS: Readonly<Partial<Record<QuestionName, (input: BoardInput) => Answer>>> = Object.freeze({
  'why-milk': whyMilk,
  'how-much': howMuch,
  'whose-milk': whoseMilk,
  'goat-and-cow': goatAndCow,
  'does-it-hurt': doesItHurt,
  'where-it-goes': whereItGoes,
});

/** Names of the questions, in the board's order. */
export const QUESTIONS: readonly QuestionName[] = Object.freeze(
  Object.values(TOPICS)
    .flat()
    .filter((name) => Object.hasOwn(ANSWERS, name)),
);

/** The answer to a question from the herd's own week. */
export function answerTo(name: QuestionName, input: BoardInput): Answer {
  const answer = ANSWERS[name];
  if (!answer) throw new Error(`The board has no answer to "${name}".`);
  return answer(input);
}
