// The life of a goat as a circle, beside the life of a bean plant.
// Birth, growth, reproduction, death: what all lives have in common (3-LS1-1); ages from content/facts where told.
import { msg, sub } from '../sheet/message.ts';
import { taskKind } from './task.ts';
import { wheelAsk, wheelOf } from './wheel.ts';

/** The steps of a doe's life in their order; the last one joins the first. */
export const LIFE = Object.freeze(['birth', 'drinks', 'eats', 'grows', 'kids'] as const);
// What a bean plant does in the place of each part of life.
const PAIRS = Object.freeze({ birth: 'sprouts', growth: 'leaves', reproduction: 'seeds' } as const);
type Part = keyof typeof PAIRS;

/** All lives have birth, growth, reproduction and death (3-LS1-1). */
export const lifeCircle = taskKind<Part>({
  name: 'life-circle',
  bands: ['3-5'],
  standards: ['3-LS1-1'],
  lack: 'no-milk',
  candidates: () => Object.keys(PAIRS) as Part[],
  touches: (part) => [`life ${part}`],
  make(context, part) {
    const picture = wheelOf(context, 'life-circle', LIFE);
    const choices = context.chance.shuffle(Object.values(PAIRS));
    return {
      kind: 'life-circle',
      standards: ['3-LS1-1'],
      lead: [msg('task.life-circle.lead')],
      picture,
      asks: [
        wheelAsk('life-circle', picture),
        {
          prompt: msg(`task.life-circle.ask-${part}`),
          work: { is: 'ring', of: choices.map((one) => sub(msg(`task.life-circle.bean-${one}`))) },
          answer: msg(`task.life-circle.bean-${PAIRS[part]}`),
          values: [PAIRS[part]],
          accepted: [],
          steps: [msg('task.life-circle.step')],
        },
      ],
      mistake: { what: msg('task.life-circle.mistake'), why: msg('task.life-circle.why') },
      fromBook: [],
    };
  },
});
