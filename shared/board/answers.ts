// The board's answers by the name of their question.
import { doesItHurt } from './doesItHurt.ts';
import { goatAndCow } from './goatAndCow.ts';
import { howMuch } from './howMuch.ts';
import { flavor } from './flavor.ts';
import { howToMilk } from './howToMilk.ts';
import { whyClean } from './whyClean.ts';
import { stroke } from './stroke.ts';
import { cheese } from './cheese.ts';
import { keeps } from './keeps.ts';
import { drinkHere } from './drinkHere.ts';
import { eyes } from './eyes.ts';
import { howOld } from './howOld.ts';
import { likeness } from './likeness.ts';
import { males } from './males.ts';
import { twins } from './twins.ts';
import { whereKids } from './whereKids.ts';
import { whichGoat } from './whichGoat.ts';
import { whoRests } from './whoRests.ts';
import { udder } from './udder.ts';
import { winter } from './winter.ts';
import { eatsAndDrinks } from './eatsAndDrinks.ts';
import { grassToMilk } from './grassToMilk.ts';
import { stomachs } from './stomachs.ts';
import { cans } from './cans.ts';
import { land } from './land.ts';
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
  udder,
  winter,
  'eats-and-drinks': eatsAndDrinks,
  'grass-to-milk': grassToMilk,
  stomachs,
  cans,
  land,
  flavor,
  'how-to-milk': howToMilk,
  'why-clean': whyClean,
  stroke,
  cheese,
  keeps,
  'drink-here': drinkHere,
  eyes,
  'how-old': howOld,
  likeness,
  males,
  twins,
  'where-kids': whereKids,
  'which-goat': whichGoat,
  'who-rests': whoRests,
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
