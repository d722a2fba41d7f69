// Watch a herd at fixed times: a plan, a share with its margin, and what to do when the plan meets a goat.
import Fraction from 'fraction.js';
import { exactly, rounded, whole } from '../quantity/grade.ts';
import { count, math, msg, num, qty } from '../sheet/message.ts';
import type { Cell, TablePicture } from '../sheet/picture.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

const DOINGS = ['lying', 'standing', 'eating', 'other'] as const;
const OWN_LOOKS = 3;
const MINUTES = 2;

/** Looks of an example, made up: so many in all, a perfect square, so that its root is whole. */
interface Example {
  readonly looks: number;
  readonly lying: number;
}

const EXAMPLES: readonly Example[] = [25, 36, 49, 64, 100].flatMap((looks) =>
  [0.36, 0.44, 0.52, 0.6].map((part) => ({ looks, lying: Math.round(looks * part) })),
);

function tableOf(): TablePicture {
  const free: Cell = { free: true };
  return {
    is: 'table',
    columns: ['minute', ...DOINGS].map((name) => msg(`task.watch-by-interval.${name}`)),
    rows: Array.from({ length: OWN_LOOKS }, (_, look): Cell[] => [
      whole(look * MINUTES),
      ...DOINGS.map(() => free),
    ]),
  };
}

function task(_: TaskContext, { looks, lying }: Example): Task {
  const root = Math.round(Math.sqrt(looks));
  const share = rounded(new Fraction(lying, looks).mul(100), 1);
  const margin = rounded(new Fraction(100, root), 1);
  const low = rounded(exactly(share).sub(exactly(margin)), 1);
  const high = rounded(exactly(share).add(exactly(margin)), 1);
  return {
    kind: 'watch-by-interval',
    standards: ['RST.9-10.3', 'HSS-IC.B.4'],
    lead: [
      msg('task.watch-by-interval.plan', { minutes: count(MINUTES) }),
      msg('task.watch-by-interval.once'),
    ],
    picture: tableOf(),
    asks: [
      askInWords(msg('task.watch-by-interval.ask-own'), msg('task.watch-by-interval.answer-own'), 1, [
        msg('task.watch-by-interval.accept-own'),
      ]),
      {
        prompt: msg('task.watch-by-interval.ask-share', { lying: count(lying), looks: count(looks) }),
        work: { is: 'boxes', after: ['percent'] },
        answer: msg('sheet.answer', { amount: qty(share, 'percent') }),
        values: [share],
        accepted: [],
        steps: [
          msg('task.watch-by-interval.step', {
            line: math(whole(lying), '÷', whole(looks), '×', whole(100)),
            result: num(share),
          }),
        ],
      },
      {
        prompt: msg('task.watch-by-interval.ask-margin'),
        work: { is: 'boxes', after: ['percent', 'percent', 'percent'] },
        answer: msg('task.watch-by-interval.answer-margin', {
          margin: qty(margin, 'percent'),
          low: qty(low, 'percent'),
          high: qty(high, 'percent'),
        }),
        values: [margin, low, high],
        accepted: [],
        steps: [
          msg('task.watch-by-interval.step-root', { looks: count(looks), root: count(root) }),
          msg('task.watch-by-interval.step', {
            line: math(whole(100), '÷', whole(root)),
            result: num(margin),
          }),
        ],
      },
      askInWords(msg('task.watch-by-interval.ask-limits'), msg('task.watch-by-interval.answer-limits'), 2, [
        msg('task.watch-by-interval.accept-limits'),
      ]),
    ],
    mistake: { what: msg('task.watch-by-interval.mistake'), why: msg('task.watch-by-interval.why') },
    fromBook: [],
  };
}

/** A procedure with its exceptions (RST.9-10.3); a share from a sample, with a margin (HSS-IC.B.4). */
export const watchByInterval = taskKind<Example>({
  name: 'watch-by-interval',
  bands: ['9-12'],
  standards: ['RST.9-10.3', 'HSS-IC.B.4'],
  lack: 'nothing',
  candidates: () => EXAMPLES,
  touches: () => [],
  make: task,
});
