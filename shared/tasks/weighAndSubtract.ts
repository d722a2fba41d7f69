// Weigh a full pail, take the empty one away, and turn the rest into liters; then the same at the farm.
import { askInWords } from './askInWords.ts';
import Fraction from 'fraction.js';
import { exactly, rounded, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty } from '../sheet/message.ts';
import type { Cell, TablePicture } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

/** Kilograms of milk in a liter: 1.03, the usual value (dairy handbooks; goat's and cow's milk hardly differ). */
export const DENSITY: Shown = { num: 103, den: 100, places: 2 };
const OWN_ROWS = 3;

const hundredths = (n: number): Shown => rounded(new Fraction(n, 100), 2);

/** One line of the record: a pail weighed full and empty, what was in it, and its volume. */
export interface Weighing {
  readonly full: Shown;
  readonly empty: Shown;
  readonly milk: Shown;
  readonly volume: Shown;
}

/** A pail by chance: 0.60 to 0.98 kg empty, with 1.15 to 3.20 kg of milk. */
export function weighing(context: TaskContext): Weighing {
  const empty = hundredths(context.chance.int(30, 49) * 2);
  // A pail as heavy as what is in it would let the wrong subtraction look right.
  const milk = hundredths(context.chance.int(115, 320));
  return {
    full: rounded(exactly(empty).add(exactly(milk)), 2),
    empty,
    milk,
    volume: rounded(exactly(milk).div(exactly(DENSITY)), 2),
  };
}

function tableOf(one: Weighing): TablePicture {
  const free: Cell = { free: true };
  const own: Cell[] = [free, free, free, free];
  return {
    is: 'table',
    columns: ['pail', 'full', 'empty', 'milk', 'L'].map((name) =>
      msg(`task.weigh-and-subtract.column-${name}`),
    ),
    rows: [
      [
        msg('task.weigh-and-subtract.example'),
        one.full,
        one.empty,
        { blank: one.milk },
        { blank: one.volume },
      ],
      ...Array.from({ length: OWN_ROWS }, (_, row): Cell[] => [
        msg('task.weigh-and-subtract.own', { number: num({ num: row + 1, den: 1 }) }),
        ...own,
      ]),
    ],
  };
}

function task(context: TaskContext): Task {
  const one = weighing(context);
  const offset = hundredths(context.chance.int(2, 9));
  const table = tableOf(one);
  const wrong = rounded(exactly(one.full).div(exactly(DENSITY)), 2);
  return {
    kind: 'weigh-and-subtract',
    standards: ['RST.6-8.3', '6.RP.A.3.d'],
    lead: [
      msg('task.weigh-and-subtract.steps'),
      msg('task.weigh-and-subtract.last', { density: qty(DENSITY, 'kg') }),
    ],
    picture: table,
    asks: [
      {
        prompt: msg('task.weigh-and-subtract.ask-example'),
        work: { is: 'picture' },
        answer: msg('task.weigh-and-subtract.answer-example', {
          milk: qty(one.milk, 'kg'),
          volume: qty(one.volume, 'L'),
        }),
        values: [one.milk, one.volume],
        accepted: [],
        steps: [
          msg('sheet.math', { line: math(one.full, '−', one.empty, '=', one.milk) }),
          msg('task.weigh-and-subtract.step', {
            line: math(one.milk, '÷', DENSITY),
            result: qty(one.volume, 'L'),
          }),
        ],
      },
      {
        prompt: msg('task.weigh-and-subtract.ask-own'),
        work: { is: 'picture' },
        answer: msg('task.weigh-and-subtract.answer-own'),
        values: [],
        accepted: [],
        steps: [],
      },
      askInWords(
        msg('task.weigh-and-subtract.ask-zero', { offset: qty(offset, 'kg') }),
        msg('task.weigh-and-subtract.answer-zero', { offset: qty(offset, 'kg') }),
      ),
    ],
    mistake: {
      what: msg('task.weigh-and-subtract.mistake', { wrong: qty(wrong, 'L') }),
      why: msg('task.weigh-and-subtract.why'),
    },
    fromBook: [],
  };
}

/** A procedure followed exactly (RST.6-8.3), and kilograms turned into liters (6.RP.A.3.d). */
export const weighAndSubtract = taskKind<'pail'>({
  name: 'weigh-and-subtract',
  bands: ['6-8'],
  standards: ['RST.6-8.3', '6.RP.A.3.d'],
  lack: 'nothing',
  candidates: () => ['pail'],
  touches: () => [],
  make: task,
});
