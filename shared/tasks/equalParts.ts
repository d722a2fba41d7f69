// Cut a shape into equal parts, and name one of them.
import { count, msg, sub } from '../sheet/message.ts';
import { taskKind } from './task.ts';

interface Cut {
  readonly shape: 'rectangle' | 'circle';
  readonly parts: 2 | 3 | 4;
}

const CUTS: readonly Cut[] = (['rectangle', 'circle'] as const).flatMap((shape) =>
  ([2, 3, 4] as const).map((parts) => ({ shape, parts })),
);
/** What one of so many equal parts is called; a key under `task.equal-parts`. */
export const PART_NAMES = Object.freeze({ 2: 'half', 3: 'third', 4: 'fourth' } as const);

/** Halves, thirds and fourths of circles and rectangles, in words (2.G.A.3). */
export const equalParts = taskKind<Cut>({
  name: 'equal-parts',
  bands: ['k-2'],
  standards: ['2.G.A.3'],
  lack: 'no-milk',
  candidates: () => CUTS,
  touches: ({ shape, parts }) => [`cut ${shape}`, `cut ${parts}`],
  make(context, { shape, parts }) {
    const picture = { is: 'parts' as const, shape, parts };
    const names = context.chance.shuffle([2, 3, 4] as const).map((one) => PART_NAMES[one]);
    return {
      kind: 'equal-parts',
      standards: ['2.G.A.3'],
      lead: [msg(`task.equal-parts.lead-${shape}`, { n: count(parts) })],
      picture,
      asks: [
        {
          prompt: msg('task.equal-parts.ask-cut', { n: count(parts) }),
          work: { is: 'picture' },
          answer: msg('task.equal-parts.answer-cut', { n: count(parts) }),
          values: [{ num: parts, den: 1 }],
          accepted: [msg('task.equal-parts.accept')],
          steps: [],
          picture,
        },
        {
          prompt: msg('task.equal-parts.ask-name'),
          work: { is: 'ring', of: names.map((one) => sub(msg(`task.equal-parts.${one}`))) },
          answer: msg(`task.equal-parts.${PART_NAMES[parts]}`),
          values: [PART_NAMES[parts]],
          accepted: [],
          steps: [msg(`task.equal-parts.step-${PART_NAMES[parts]}`)],
        },
      ],
      mistake: { what: msg('task.equal-parts.mistake'), why: msg('task.equal-parts.why') },
      fromBook: [],
    };
  },
});
