// At the farm: notes, sorted under headings while they are taken.
import { msg } from '../sheet/message.ts';
import { taskKind } from './task.ts';

/** Headings to sort notes under. */
export const NOTE_HEADS = Object.freeze({
  senses: ['see', 'hear', 'smell'],
  work: ['before', 'during', 'after'],
  needs: ['food', 'water', 'place'],
} as const);
type Sort = keyof typeof NOTE_HEADS;
const LINES = 4;

/** Notes sorted into categories (W.3.8). */
export const farmNotes = taskKind<Sort>({
  name: 'farm-notes',
  bands: ['3-5'],
  standards: ['W.3.8'],
  lack: 'no-milk',
  candidates: () => Object.keys(NOTE_HEADS) as Sort[],
  touches: (sort) => [`notes ${sort}`],
  make: (_, sort) => ({
    kind: 'farm-notes',
    standards: ['W.3.8'],
    lead: [msg(`task.farm-notes.lead-${sort}`), msg('task.farm-notes.lead')],
    picture: {
      is: 'notes',
      heads: NOTE_HEADS[sort].map((head) => msg(`task.farm-notes.${sort}-${head}`)),
      lines: LINES,
    },
    asks: [
      {
        prompt: msg('task.farm-notes.ask-notes'),
        work: { is: 'picture' },
        answer: msg(`task.farm-notes.answer-${sort}`),
        values: [],
        accepted: [msg('task.farm-notes.accept')],
        steps: [],
      },
      {
        prompt: msg(`task.farm-notes.ask-${sort}`),
        work: { is: 'lines', lines: 3 },
        answer: msg('task.farm-notes.answer-write'),
        values: [],
        accepted: [],
        steps: [],
      },
    ],
    mistake: { what: msg('task.farm-notes.mistake'), why: msg('task.farm-notes.why') },
    fromBook: [],
  }),
});
