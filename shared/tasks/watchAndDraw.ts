// At the farm or after it: watch a goat, draw, and write what was seen.
import { msg } from '../sheet/message.ts';
import { taskKind } from './task.ts';

const VIEWS = ['mouth', 'ears', 'feet', 'together'] as const;
type View = (typeof VIEWS)[number];
// Sentences by grade: a frame of one in kindergarten, two in grade 1, three in grade 2.
const LINES = [1, 2, 3] as const;
const CODES = ['W.K.2', 'W.1.2', 'W.2.8'] as const;

/** Draw and write to inform, from what was seen (W.K.2, W.1.2, W.2.8). */
export const watchAndDraw = taskKind<View>({
  name: 'watch-and-draw',
  bands: ['k-2'],
  standards: CODES,
  lack: 'no-milk',
  candidates: () => VIEWS,
  touches: (view) => [`watch ${view}`],
  make(context, view) {
    const step = Math.min(context.grade, 2) as 0 | 1 | 2;
    return {
      kind: 'watch-and-draw',
      standards: [CODES[step]],
      lead: [msg('task.watch-and-draw.lead'), msg(`task.watch-and-draw.${view}`)],
      picture: null,
      asks: [
        {
          prompt: msg('task.watch-and-draw.ask-draw'),
          work: { is: 'drawing' },
          answer: msg(`task.watch-and-draw.answer-${view}`),
          values: [],
          accepted: [msg('task.watch-and-draw.accept')],
          steps: [],
        },
        {
          prompt: msg(`task.watch-and-draw.ask-write-${LINES[step]}`),
          work: { is: 'lines', lines: LINES[step] },
          answer: msg('task.watch-and-draw.answer-write'),
          values: [],
          accepted: [],
          steps: [],
        },
      ],
      mistake: { what: msg('task.watch-and-draw.mistake'), why: msg('task.watch-and-draw.why') },
      fromBook: [],
    };
  },
});
