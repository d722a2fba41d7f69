// A short text to read or hear: answer, and find the sentence that says so.
// Facts: content/facts (udder, stomach, always-after-kids, choosy-browser) and textbook biology.
import { count, msg, sub, type Message } from '../sheet/message.ts';
import { countable } from './countable.ts';
import type { Reading, TaskContext } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { nameOf, onOf, touchesOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';
import { whole } from '../quantity/grade.ts';

/** Texts of three or four sentences; `proof` is the place of the sentence that answers, from 1. */
const TEXTS = {
  kid: { sentences: 4, proof: 3 },
  udder: { sentences: 3, proof: 2 },
  cud: { sentences: 4, proof: 4 },
  browse: { sentences: 3, proof: 3 },
  rest: { sentences: 4, proof: 4 },
} as const;
type Told = keyof typeof TEXTS;
type Text =
  { readonly told: Told } | { readonly told: 'book'; readonly reading: Reading; readonly cups: number };
const CHOICES = ['a', 'b', 'c'] as const;
// In the text of the book her number is asked for: kindergarten reads to ten.
const LEAST = 2;

const texts = (context: TaskContext): Text[] => [
  ...(Object.keys(TEXTS) as Told[]).map((told): Text => ({ told })),
  ...countable(context, LEAST, context.grade === 0 ? 10 : 20).map((one): Text => ({ told: 'book', ...one })),
];

/** Answers about key details of a text (RI.K.1), with the sentence that says so. */
export const readAndFind = taskKind<Text>({
  name: 'read-and-find',
  bands: ['k-2'],
  standards: ['RI.K.1'],
  lack: 'no-milk',
  candidates: texts,
  touches: (text) => ('reading' in text ? touchesOf([text.reading]) : [`text ${text.told}`]),
  make: (context, text) =>
    text.told === 'book' ? fromTheBook(context, text.reading, text.cups) : fromText(context, text.told),
});

const says = (sentence: Message): Message => msg('task.read-and-find.step', { sentence: sub(sentence) });

const underline = (sentence: Message): Task['asks'][number] => ({
  prompt: msg('task.read-and-find.ask-underline'),
  work: { is: 'picture' },
  answer: msg('task.read-and-find.answer-sentence', { sentence: sub(sentence) }),
  values: [],
  accepted: [],
  steps: [],
});

function fromText(context: TaskContext, told: Told): Task {
  const { sentences, proof } = TEXTS[told];
  const key = `task.read-and-find.${told}`;
  const lead = Array.from({ length: sentences }, (_, index) => msg(`${key}-${index + 1}`));
  const choices = context.chance.shuffle(CHOICES);
  return {
    kind: 'read-and-find',
    standards: ['RI.K.1'],
    lead,
    picture: null,
    asks: [
      {
        prompt: msg(`${key}-ask`),
        work: { is: 'ring', of: choices.map((one) => sub(msg(`${key}-${one}`))) },
        answer: msg(`${key}-a`),
        values: ['a'],
        accepted: [],
        steps: [says(lead[proof - 1] as Message)],
      },
      underline(lead[proof - 1] as Message),
    ],
    mistake: { what: msg('task.read-and-find.mistake'), why: msg('task.read-and-find.why') },
    fromBook: [],
  };
}

function fromTheBook(context: TaskContext, reading: Reading, cups: number): Task {
  const name = nameOf(reading.doe);
  const lead = [
    msg('task.read-and-find.book-1', { name }),
    msg('task.read-and-find.book-2', { on: onOf(reading.date, reading.milking) }),
    msg('task.read-and-find.book-3', { n: count(cups) }),
    msg('task.read-and-find.book-4'),
  ];
  return {
    kind: 'read-and-find',
    standards: ['RI.K.1'],
    lead,
    picture: null,
    asks: [
      {
        prompt: msg('task.read-and-find.book-ask', { name }),
        work: { is: 'boxes', after: ['cup'] },
        answer: msg('sheet.answer', { amount: { is: 'quantity', ...whole(cups), unit: 'cup' } }),
        values: [whole(cups)],
        accepted: [],
        steps: [says(lead[2] as Message)],
      },
      underline(lead[2] as Message),
    ],
    mistake: { what: msg('task.read-and-find.mistake'), why: msg('task.read-and-find.why') },
    fromBook: readingFromBook(reading, whole(cups), context.cups),
  };
}
