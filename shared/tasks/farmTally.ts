// At the farm: sort the goats, tally, count.
import { msg } from '../sheet/message.ts';
import { taskKind } from './task.ts';

/** What goats are sorted by, each with its three groups. */
export const SORTS = Object.freeze({
  ears: ['up', 'down', 'tiny'],
  coat: ['white', 'brown', 'black'],
  doing: ['eats', 'stands', 'lies'],
} as const);
type Sort = keyof typeof SORTS;

/** Sorting and counting up to ten in kindergarten (K.MD.B.3), three groups at most in grade 1 (1.MD.C.4). */
export const farmTally = taskKind<Sort>({
  name: 'farm-tally',
  bands: ['k-2'],
  standards: ['K.MD.B.3', '1.MD.C.4'],
  lack: 'no-milk',
  candidates: () => Object.keys(SORTS) as Sort[],
  touches: (sort) => [`tally ${sort}`],
  make(context, sort) {
    const rows = SORTS[sort].map((one) => msg(`task.farm-tally.${sort}-${one}`));
    return {
      kind: 'farm-tally',
      standards: [context.grade === 0 ? 'K.MD.B.3' : '1.MD.C.4'],
      lead: [msg('task.farm-tally.lead'), msg(`task.farm-tally.sort-${sort}`)],
      picture: {
        is: 'tally',
        marks: msg('task.farm-tally.marks'),
        number: msg('task.farm-tally.number'),
        rows,
      },
      asks: [
        {
          prompt: msg('task.farm-tally.ask-number'),
          work: { is: 'picture' },
          answer: msg('task.farm-tally.answer-number'),
          values: [],
          accepted: [],
          steps: [msg('task.farm-tally.step')],
        },
        {
          prompt: msg('task.farm-tally.ask-most'),
          work: { is: 'picture' },
          answer: msg('task.farm-tally.answer-most'),
          values: [],
          accepted: [msg('task.farm-tally.accept')],
          steps: [],
        },
      ],
      mistake: { what: msg('task.farm-tally.mistake'), why: msg('task.farm-tally.why') },
      fromBook: [],
    };
  },
});
