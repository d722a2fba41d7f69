// A short text with numbered sentences: which one proves a statement, and which statement none of them proves.
import { askInWords } from './askInWords.ts';
import { count, msg, num, sub } from '../sheet/message.ts';
import { whole } from '../quantity/grade.ts';
import { taskKind } from './task.ts';

/** A text of five sentences; each statement names the sentence that proves it. */
export interface Passage {
  readonly name: string;
  readonly sentences: number;
  readonly proves: readonly number[];
}

/** Facts as content/facts has them: stomach and kids (seen), seasons, feed and eyes (from textbooks, from memory). */
export const PASSAGES: readonly Passage[] = [
  { name: 'stomach', sentences: 5, proves: [2, 3, 4] },
  { name: 'year', sentences: 5, proves: [1, 3, 4] },
  { name: 'choosy', sentences: 5, proves: [1, 3, 5] },
];

interface Reading {
  readonly passage: Passage;
  /** Which statement, from 0. */
  readonly statement: number;
}

const READINGS: readonly Reading[] = PASSAGES.flatMap((passage) =>
  passage.proves.map((_, statement) => ({ passage, statement })),
);

/** Evidence from a technical text (RST.6-8.1). */
export const readAndProve = taskKind<Reading>({
  name: 'read-and-prove',
  bands: ['6-8'],
  standards: ['RST.6-8.1'],
  lack: 'nothing',
  candidates: () => READINGS,
  touches: ({ passage }) => [`text|${passage.name}`],
  make(_, { passage, statement }) {
    const { name, sentences, proves } = passage;
    const key = (part: string) => `task.read-and-prove.${name}-${part}`;
    const proof = proves[statement] as number;
    return {
      kind: 'read-and-prove',
      standards: ['RST.6-8.1'],
      lead: [
        ...Array.from({ length: sentences }, (_unused, index) =>
          msg('task.read-and-prove.sentence', {
            number: count(index + 1),
            sentence: sub(msg(key(`s${index + 1}`))),
          }),
        ),
      ],
      picture: null,
      asks: [
        {
          prompt: msg('task.read-and-prove.ask-which', {
            statement: sub(msg(key(`proved${statement + 1}`))),
          }),
          work: {
            is: 'ring',
            of: Array.from({ length: sentences }, (_unused, index) => num(whole(index + 1))),
          },
          answer: msg('task.read-and-prove.answer-which', { number: count(proof) }),
          values: [whole(proof)],
          accepted: [],
          steps: [msg(key(`why${statement + 1}`))],
        },
        askInWords(
          msg('task.read-and-prove.ask-beyond', { statement: sub(msg(key('beyond'))) }),
          msg(key('answer-beyond')),
          2,
          [msg('task.read-and-prove.accept-beyond')],
        ),
        askInWords(msg('task.read-and-prove.ask-own'), msg('task.read-and-prove.answer-own'), 2),
      ],
      mistake: { what: msg('task.read-and-prove.mistake'), why: msg('task.read-and-prove.why') },
      fromBook: [],
    };
  },
});
