// Why a doe makes milk: draw it.
import { whole } from '../quantity/grade.ts';
import { count, msg } from '../sheet/message.ts';
import type { DoeWeek } from '../herd/week.ts';
import { nameOf } from './phrases.ts';
import { taskKind } from './task.ts';

/** What parents do that keeps their young alive (1-LS1-2), from a doe who has kids this year. */
export const kidsMilk = taskKind<DoeWeek>({
  name: 'kids-milk',
  bands: ['k-2'],
  standards: ['1-LS1-2'],
  lack: 'no-kids',
  candidates: (context) => context.week.does.filter((doe) => (doe.kids ?? 0) >= 1 && doe.total_mL !== null),
  touches: (doe) => [doe.id],
  make: (_, doe) => ({
    kind: 'kids-milk',
    standards: ['1-LS1-2'],
    lead: [msg('task.kids-milk.lead', { name: nameOf(doe), n: count(doe.kids ?? 0) })],
    picture: null,
    asks: [
      {
        prompt: msg('task.kids-milk.ask'),
        work: { is: 'drawing' },
        answer: msg('task.kids-milk.answer', { n: count(doe.kids ?? 0) }),
        values: [whole(doe.kids ?? 0)],
        accepted: [msg('task.kids-milk.accept')],
        steps: [msg('task.kids-milk.step')],
      },
    ],
    mistake: { what: msg('task.kids-milk.mistake'), why: msg('task.kids-milk.why') },
    fromBook: [],
  }),
});
