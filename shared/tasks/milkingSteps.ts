// Pictures of a milking, to be put in order after a short text.
// The order is common practice, no source: wash hands, clean teats, milk, strain into a jar.
import { whole } from '../quantity/grade.ts';
import { count, msg, type Message } from '../sheet/message.ts';
import type { Scene } from '../sheet/drawnPicture.ts';
import { taskKind } from './task.ts';

/** The steps in their order. */
export const MILKING_STEPS: readonly Scene[] = Object.freeze(['wash', 'clean', 'milk', 'pour']);
// Kindergarten orders three: first, then, last.
const SHORT: readonly Scene[] = ['wash', 'milk', 'pour'];

const words = (scene: Scene): Message => msg(`task.milking-steps.${scene}`);

/** Key details of a text read aloud (RI.K.1); pictures and details together from grade 1 (RI.1.7). */
export const milkingSteps = taskKind<readonly Scene[]>({
  name: 'milking-steps',
  bands: ['k-2'],
  standards: ['RI.K.1', 'RI.1.7'],
  lack: 'no-milk',
  candidates: (context) => [context.grade === 0 ? SHORT : MILKING_STEPS],
  touches: () => [],
  make(context, order) {
    let mixed = context.chance.shuffle(
      order.map((scene, index) => ({ scene, words: words(scene), place: index + 1 })),
    );
    if (mixed.every(({ place }, index) => place === index + 1))
      mixed = [...mixed.slice(1), ...mixed.slice(0, 1)];
    const picture = { is: 'scenes' as const, scenes: mixed };
    const last = order.length - 1;
    const told = (index: number) => (index === 0 ? 'first' : index === last ? 'last' : 'then');
    return {
      kind: 'milking-steps',
      standards: [context.grade === 0 ? 'RI.K.1' : 'RI.1.7'],
      lead: order.map((scene, index) => msg(`task.milking-steps.${told(index)}-${scene}`)),
      picture,
      asks: [
        {
          prompt: msg('task.milking-steps.ask', { n: count(order.length) }),
          work: { is: 'picture' },
          answer: msg('task.milking-steps.answer', { a: count(1), n: count(order.length) }),
          values: mixed.map(({ place }) => whole(place)),
          accepted: [],
          steps: order.map((scene, index) =>
            msg('task.milking-steps.step', {
              place: count(index + 1),
              what: { is: 'message', message: words(scene) },
            }),
          ),
        },
      ],
      mistake: { what: msg('task.milking-steps.mistake'), why: msg('task.milking-steps.why') },
      fromBook: [],
    };
  },
});
