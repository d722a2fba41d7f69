// A text in numbered sentences: which one is the evidence?
// Facts: content/facts (always-after-kids, dry-off, gestation, one-stomach, choosy-browser, slit-pupil) and the milk book.
import { shownIn, whole } from '../quantity/grade.ts';
import { count, msg, qty, sub, type Message, type Slot } from '../sheet/message.ts';
import type { TaskContext } from './context.ts';
import { weekMilk_mL } from './roundAmounts.ts';
import { taskKind, type Task } from './task.ts';

/** Texts: how many sentences, and for each question the place of the sentence that answers it. */
const TEXTS = Object.freeze({
  year: { sentences: 5, proofs: [2, 4] },
  stomach: { sentences: 5, proofs: [3, 5] },
  senses: { sentences: 5, proofs: [2, 4] },
} as const);
type Told = keyof typeof TEXTS;
type Text = Told | 'week';
const WEEK = { sentences: 5, proofs: [3, 5] } as const;

function texts(context: TaskContext): Text[] {
  const milk = shownIn(weekMilk_mL(context), context.cups).num >= 2;
  const milked = context.week.does.filter((doe) => (doe.total_mL ?? 0) > 0).length;
  return [...(Object.keys(TEXTS) as Told[]), ...(milk && milked >= 2 ? (['week'] as const) : [])];
}

/** The text as the basis of the answer (RI.3.1). */
export const readEvidence = taskKind<Text>({
  name: 'read-evidence',
  bands: ['3-5'],
  standards: ['RI.3.1'],
  lack: 'no-milk',
  candidates: texts,
  touches: (text) => [`evidence ${text}`],
  make: (context, text) => asked(context, text),
});

function sentencesOf(context: TaskContext, text: Text, many: number): Message[] {
  const milked = context.week.does.filter((doe) => (doe.total_mL ?? 0) > 0).length;
  const slots: Readonly<Record<string, Slot>> =
    text === 'week'
      ? {
          does: { is: 'number' as const, ...whole(milked) },
          amount: qty(shownIn(weekMilk_mL(context), context.cups), 'cup'),
        }
      : {};
  return Array.from({ length: many }, (_, index) => msg(`task.read-evidence.${text}-${index + 1}`, slots));
}

function asked(context: TaskContext, text: Text): Task {
  const { sentences, proofs } = text === 'week' ? WEEK : TEXTS[text];
  const told = sentencesOf(context, text, sentences);
  return {
    kind: 'read-evidence',
    standards: ['RI.3.1'],
    lead: [
      msg('task.read-evidence.lead'),
      ...told.map((sentence, index) =>
        msg('task.read-evidence.line', { place: count(index + 1), sentence: sub(sentence) }),
      ),
    ],
    picture: null,
    asks: [
      ...proofs.map((proof, index) => ({
        prompt: msg(`task.read-evidence.${text}-ask-${index + 1}`),
        work: { is: 'boxes' as const, after: [null] },
        answer: msg('task.read-evidence.answer', { place: count(proof) }),
        values: [whole(proof)],
        accepted: [],
        steps: [msg('task.read-evidence.step', { sentence: sub(told[proof - 1] as Message) })],
      })),
      {
        prompt: msg(`task.read-evidence.${text}-why`),
        work: { is: 'lines', lines: 2 },
        answer: msg(`task.read-evidence.${text}-answer`),
        values: [],
        accepted: [msg('task.read-evidence.accept')],
        steps: [],
      },
    ],
    mistake: { what: msg('task.read-evidence.mistake'), why: msg('task.read-evidence.why') },
    fromBook: [],
  };
}
