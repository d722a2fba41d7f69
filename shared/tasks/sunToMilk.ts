// Put the road of energy in order, from the sun to a glass of milk.
import { whole } from '../quantity/grade.ts';
import { count, msg, qty, sub, type Message } from '../sheet/message.ts';
import { shownIn } from '../quantity/grade.ts';
import type { DoeWeek } from '../herd/week.ts';
import { nameOf } from './phrases.ts';
import { taskKind } from './task.ts';

/** The road of energy as grade 5 tells it (5-PS3-1): food's energy was once the sun's. */
const ROAD = ['sun', 'plants', 'eats', 'milk', 'child'] as const;

/** Ordering the steps of an energy path; the doe and her week's milk come from the book. */
export const sunToMilk = taskKind<DoeWeek>({
  name: 'sun-to-milk',
  bands: ['3-5'],
  standards: ['5-PS3-1'],
  lack: 'no-milk',
  candidates: (context) =>
    context.week.does.filter((doe) => shownIn(doe.total_mL ?? 0, context.measure).num > 0),
  touches: (doe) => [doe.id],
  make(context, doe) {
    const amount = qty(shownIn(doe.total_mL as number, context.measure), context.measure.unit);
    const words = (step: string): Message => msg(`task.sun-to-milk.${step}`, { name: nameOf(doe) });
    let mixed = context.chance.shuffle(ROAD.map((step, index) => ({ words: words(step), place: index + 1 })));
    if (mixed.every(({ place }, index) => place === index + 1))
      mixed = [...mixed.slice(1), ...mixed.slice(0, 1)];
    return {
      kind: 'sun-to-milk',
      standards: ['5-PS3-1'],
      lead: [msg('task.sun-to-milk.lead', { name: nameOf(doe), amount })],
      picture: { is: 'steps', steps: mixed },
      asks: [
        {
          prompt: msg('task.sun-to-milk.ask', { n: count(ROAD.length) }),
          work: { is: 'picture' },
          answer: msg(
            'task.sun-to-milk.answer',
            Object.fromEntries(ROAD.map((step, index) => ['abcde'.charAt(index), sub(words(step))])),
          ),
          values: mixed.map(({ place }) => whole(place)),
          accepted: [],
          steps: [],
          picture: { is: 'steps', steps: mixed },
        },
        {
          prompt: msg('task.sun-to-milk.ask-why'),
          work: { is: 'lines', lines: 2 },
          answer: msg('task.sun-to-milk.answer-why'),
          values: [],
          accepted: [msg('task.sun-to-milk.accept')],
          steps: [],
        },
      ],
      mistake: { what: msg('task.sun-to-milk.mistake'), why: msg('task.sun-to-milk.why') },
      fromBook: [],
    };
  },
});
