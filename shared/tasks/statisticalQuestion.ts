// Which question expects answers that vary? Find the statistical one, and write another.
import { askInWords } from './askInWords.ts';
import { msg, sub, text } from '../sheet/message.ts';
import { taskKind } from './task.ts';

/** Questions whose answers vary from goat to goat or day to day, with what varies in each. */
const STATISTICAL = ['milk-a-day', 'milking-time', 'ages', 'weights', 'kids-a-birth'] as const;
/** Questions with one answer. */
const PLAIN = [
  'teats',
  'first-kid',
  'pail',
  'who-today',
  'cups-in-quart',
  'stand-height',
  'oldest',
  'jars-today',
] as const;
const LETTERS = ['A', 'B', 'C', 'D'] as const;

/** A question that expects variability (6.SP.A.1). */
export const statisticalQuestion = taskKind<(typeof STATISTICAL)[number]>({
  name: 'statistical-question',
  bands: ['6-8'],
  standards: ['6.SP.A.1'],
  lack: 'nothing',
  candidates: () => STATISTICAL,
  touches: (name) => [`question|${name}`],
  make({ chance }, name) {
    const mixed = chance.shuffle([name, ...chance.shuffle(PLAIN).slice(0, LETTERS.length - 1)]);
    const right = LETTERS[mixed.indexOf(name)] as string;
    const words = (one: string) => sub(msg(`task.statistical-question.${one}`));
    const wrong = LETTERS[mixed.findIndex((one) => one !== name)] as string;
    return {
      kind: 'statistical-question',
      standards: ['6.SP.A.1'],
      lead: mixed.map((one, index) =>
        msg('task.statistical-question.option', {
          letter: text(LETTERS[index] as string),
          question: words(one),
        }),
      ),
      picture: null,
      asks: [
        {
          prompt: msg('task.statistical-question.ask-which'),
          work: { is: 'ring', of: LETTERS.map((letter) => text(letter)) },
          answer: msg('sheet.answer-name', { name: text(right) }),
          values: [right],
          accepted: [],
          steps: [msg(`task.statistical-question.why-${name}`)],
        },
        askInWords(
          msg('task.statistical-question.ask-why', { letter: text(wrong) }),
          msg('task.statistical-question.answer-why'),
        ),
        askInWords(msg('task.statistical-question.ask-own'), msg('task.statistical-question.answer-own'), 2, [
          msg('task.statistical-question.accept-own'),
        ]),
      ],
      mistake: { what: msg('task.statistical-question.mistake'), why: msg('task.statistical-question.why') },
      fromBook: [],
    };
  },
});
