// A fraction of a cup for each of some does: a whole number times a fraction.
// The portions are made up for the sum, and the task says "Think of"; they are no advice on feeding.
import Fraction from 'fraction.js';
import { shownOf, whole, type Shown } from '../quantity/grade.ts';
import { count, math, msg, num, qty } from '../sheet/message.ts';
import { taskKind, type Task } from './task.ts';

const SHARES: readonly (readonly [number, number])[] = [[1, 2], [1, 3], [2, 3], [1, 4], [3, 4]]; // prettier-ignore
const LEAST_DOES = 3;
const MOST_DOES = 8;

interface Portions {
  readonly share: readonly [number, number];
  readonly does: number;
}

// A whole number as the answer would leave nothing to place between two others.
const PORTIONS: readonly Portions[] = SHARES.flatMap((share) =>
  Array.from({ length: MOST_DOES - LEAST_DOES + 1 }, (_, n) => ({ share, does: LEAST_DOES + n })).filter(
    ({ does }) => (does * share[0]) % share[1] !== 0 && does * share[0] > share[1],
  ),
);

/** Problems of a fraction times a whole number (4.NF.B.4.c). */
export const grainCups = taskKind<Portions>({
  name: 'grain-cups',
  bands: ['3-5'],
  standards: ['4.NF.B.4.c'],
  lack: 'no-milk',
  candidates: () => PORTIONS,
  touches: ({ share, does }) => [`share ${share.join('/')}`, `does ${does}`],
  make: (_, portions) => times(portions),
});

function times({ share: [top, bottom], does }: Portions): Task {
  const share: Shown = { num: top, den: bottom };
  const all = new Fraction(top, bottom).mul(does);
  const result = shownOf(all);
  const below = Number(all.floor().n);
  return {
    kind: 'grain-cups',
    standards: ['4.NF.B.4.c'],
    lead: [msg('task.grain-cups.lead', { n: count(does), amount: qty(share, 'cup') })],
    picture: { is: 'part-cups', of: share, count: does },
    asks: [
      {
        prompt: msg('task.grain-cups.ask'),
        work: { is: 'working', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(result, 'cup') }),
        values: [result],
        accepted: [msg('task.grain-cups.accept', { top: count(does * top), bottom: count(bottom) })],
        steps: [
          msg('task.grain-cups.step', { top: count(does * top), bottom: count(bottom), part: num({ num: 1, den: bottom }) }),
          msg('sheet.math', { line: math(whole(does), '×', share, '=', result) }),
        ],
      },
      {
        prompt: msg('task.grain-cups.ask-between'),
        work: { is: 'boxes', after: [null, null], signs: ['and'] },
        answer: msg('sheet.answer-and', { a: count(below), b: count(below + 1) }),
        values: [whole(below), whole(below + 1)],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(below), '<', result, '<', whole(below + 1)) })],
      },
    ],
    mistake: {
      what: msg('task.grain-cups.mistake', { wrong: qty(share, 'cup') }),
      why: msg('task.grain-cups.why'),
    },
    fromBook: [],
  };
} // prettier-ignore
