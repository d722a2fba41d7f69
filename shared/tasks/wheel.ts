// A circle of steps, the first one given: shared by the kinds that ask for a cycle.
import { whole } from '../quantity/grade.ts';
import { count, msg, row } from '../sheet/message.ts';
import type { Ask } from './task.ts';
import type { TaskContext } from './context.ts';
import type { WheelPicture } from '../sheet/drawnPicture.ts';

/** A wheel of a kind of task: `steps` are keys under `task.KIND`, the first one given, the others in their order. */
export function wheelOf(context: TaskContext, kind: string, steps: readonly string[]): WheelPicture {
  const [given, ...others] = steps as [string, ...string[]];
  const words = (step: string) => msg(`task.${kind}.${step}`);
  let cards = context.chance.shuffle(others.map((step, index) => ({ words: words(step), place: index + 1 })));
  if (cards.every(({ place }, index) => place === index + 1))
    cards = [...cards.slice(1), ...cards.slice(0, 1)];
  return { is: 'wheel', given: words(given), cards };
}

/** The question that goes with it: the number of the card that belongs in each box, in the order of the arrows. */
export function wheelAsk(kind: string, picture: WheelPicture): Ask {
  const { cards } = picture;
  const order = cards.map((_, place) => cards.findIndex((card) => card.place === place + 1) + 1);
  return {
    prompt: msg(`task.${kind}.ask`),
    work: { is: 'picture' },
    answer: msg('sheet.answer-row', { row: row(order.map(count)) }),
    values: order.map(whole),
    accepted: [],
    steps: [],
    picture,
  };
}
