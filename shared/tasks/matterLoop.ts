// Where matter goes on a farm: pasture, goat, manure, soil, and round again.
import { msg } from '../sheet/message.ts';
import { taskKind } from './task.ts';
import { wheelAsk, wheelOf } from './wheel.ts';

/** The steps in their order; the last one joins the first. Textbook matter cycle, without molecules (5-LS2-1). */
export const LOOP = Object.freeze(['plants', 'eat', 'manure', 'rot', 'soil'] as const);
const WHY = ['no-rot', 'milk'] as const;
type Why = (typeof WHY)[number];

/** Matter moves among plants, animals, decomposers and the surroundings (5-LS2-1). */
export const matterLoop = taskKind<Why>({
  name: 'matter-loop',
  bands: ['3-5'],
  standards: ['5-LS2-1'],
  lack: 'no-milk',
  candidates: () => WHY,
  touches: (why) => [`loop ${why}`],
  make(context, why) {
    const picture = wheelOf(context, 'matter-loop', LOOP);
    return {
      kind: 'matter-loop',
      standards: ['5-LS2-1'],
      lead: [msg('task.matter-loop.lead')],
      picture,
      asks: [
        wheelAsk('matter-loop', picture),
        {
          prompt: msg(`task.matter-loop.ask-${why}`),
          work: { is: 'lines', lines: 2 },
          answer: msg(`task.matter-loop.answer-${why}`),
          values: [],
          accepted: [msg(`task.matter-loop.accept-${why}`)],
          steps: [],
        },
      ],
      mistake: { what: msg('task.matter-loop.mistake'), why: msg('task.matter-loop.why') },
      fromBook: [],
    };
  },
});
