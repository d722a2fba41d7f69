// Parts of a goat, and what each does for her.
// Facts: content/facts/animals.yaml (lips, slit-pupil, one-stomach) and textbook anatomy, outside and inside, nothing smaller (4-LS1-1).
import { whole } from '../quantity/grade.ts';
import { count, msg, row, sub } from '../sheet/message.ts';
import type { DoePart } from '../sheet/drawnPicture.ts';
import { taskKind } from './task.ts';

/** Every part that a card can speak of, from head to foot. */
export const DOE_PARTS: readonly DoePart[] = Object.freeze(['eye', 'lips', 'coat', 'rumen', 'udder', 'hoof']);
const CARDS = 4;

/** Structures inside and outside serve survival, growth, behaviour and reproduction (4-LS1-1). */
export const goatParts = taskKind<DoePart>({
  name: 'goat-parts',
  bands: ['3-5'],
  standards: ['4-LS1-1'],
  lack: 'no-milk',
  // The part that is asked about a second time.
  candidates: () => DOE_PARTS,
  touches: (part) => [`part ${part}`],
  make(context, asked) {
    const others = context.chance.shuffle(DOE_PARTS.filter((part) => part !== asked)).slice(0, CARDS - 1);
    const parts = DOE_PARTS.filter((part) => part === asked || others.includes(part));
    let order = context.chance.shuffle(parts);
    if (order.every((part, index) => part === parts[index])) order = [...order.slice(1), ...order.slice(0, 1)];
    const numberOf = (part: DoePart): number => parts.indexOf(part) + 1;
    const picture = {
      is: 'doe-parts' as const,
      parts,
      cards: order.map((part) => ({ words: msg(`task.goat-parts.does-${part}`), number: numberOf(part) })),
    };
    return {
      kind: 'goat-parts',
      standards: ['4-LS1-1'],
      lead: [
        msg('task.goat-parts.lead', {
          parts: { is: 'list', of: parts.map((part) => sub(msg('task.goat-parts.numbered', { place: count(numberOf(part)), part: sub(msg(`task.goat-parts.${part}`)) }))), bare: true },
        }),
      ],
      picture,
      asks: [
        {
          prompt: msg('task.goat-parts.ask'),
          work: { is: 'picture' },
          answer: msg('sheet.answer-row', { row: row(order.map((part) => count(numberOf(part)))) }),
          values: order.map((part) => whole(numberOf(part))),
          accepted: [],
          steps: parts.map((part) => msg('task.goat-parts.step', { place: count(numberOf(part)), does: sub(msg(`task.goat-parts.does-${part}`)) })),
        },
        {
          prompt: msg('task.goat-parts.ask-without', { part: sub(msg(`task.goat-parts.the-${asked}`)) }),
          work: { is: 'lines', lines: 2 },
          answer: msg(`task.goat-parts.without-${asked}`),
          values: [],
          accepted: [msg('task.goat-parts.accept')],
          steps: [],
        },
      ],
      mistake: { what: msg('task.goat-parts.mistake'), why: msg('task.goat-parts.why') },
      fromBook: [],
    };
  },
}); // prettier-ignore
