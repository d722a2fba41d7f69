// Ring what a goat, a plant or a child needs to live.
// Needs of animals and plants as kindergarten tells them: textbook (animals eat; plants need light and water); from memory.
import { list, msg, sub, type Message } from '../sheet/message.ts';
import type { Thing } from '../sheet/drawnPicture.ts';
import { taskKind } from './task.ts';

type Who = 'goat' | 'plant' | 'child';
const WHO: readonly Who[] = ['goat', 'plant', 'child'];

/** What each needs, as far as it is drawn. */
export const NEEDS: Readonly<Record<Who, readonly Thing[]>> = Object.freeze({
  goat: ['hay', 'water', 'air'],
  plant: ['light', 'water', 'air'],
  child: ['meal', 'water', 'air'],
});
// A goat and a child live in the light too, and hay was a plant: such things are not offered as wrong.
const WRONG: Readonly<Record<Who, readonly Thing[]>> = {
  goat: ['ball', 'hat', 'book'],
  plant: ['ball', 'hat', 'book', 'meal'],
  child: ['ball', 'hat', 'book'],
};
const WRONG_ONES = 3;

const words = (thing: Thing): Message => msg(`task.goat-needs.thing-${thing}`);

/** A pattern in what animals and plants need (K-LS1-1). */
export const goatNeeds = taskKind<Who>({
  name: 'goat-needs',
  bands: ['k-2'],
  standards: ['K-LS1-1'],
  lack: 'no-milk',
  candidates: () => WHO,
  touches: (who) => [`needs ${who}`],
  make(context, who) {
    const right = NEEDS[who];
    const wrong = context.chance.shuffle(WRONG[who]).slice(0, WRONG_ONES);
    const picks = context.chance
      .shuffle([...right, ...wrong])
      .map((thing) => ({ thing, words: words(thing), right: right.includes(thing) }));
    const picture = { is: 'picks' as const, picks };
    return {
      kind: 'goat-needs',
      standards: ['K-LS1-1'],
      lead: [msg(`task.goat-needs.lead-${who}`)],
      picture,
      asks: [
        {
          prompt: msg(`task.goat-needs.ask-${who}`),
          work: { is: 'picture' },
          answer: msg('sheet.answer-name', { name: list(right.map((thing) => sub(words(thing)))) }),
          values: [...right],
          accepted: [],
          steps: [msg(`task.goat-needs.step-${who}`)],
          picture,
        },
      ],
      mistake: { what: msg(`task.goat-needs.mistake-${who}`), why: msg(`task.goat-needs.why-${who}`) },
      fromBook: [],
    };
  },
});
