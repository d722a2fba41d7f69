// How far off a weighed amount can be when two readings go into it.
import Fraction from 'fraction.js';
import { exactly, rounded, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, stepOf } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Ask, type Task } from './task.ts';

/** The finest mark of a scale, in thousandths of a kg. */
const STEPS_G = [20, 50, 100] as const;

const kg = (grams: number): Shown =>
  rounded(new Fraction(grams, 1000), grams % 100 === 0 ? 1 : grams % 10 === 0 ? 2 : 3);

/** Everything that the task prints, worked out once. */
function workOut({ chance }: TaskContext, step_g: (typeof STEPS_G)[number]) {
  const onScale = (low: number, high: number) =>
    chance.int(Math.ceil(low / step_g), Math.floor(high / step_g)) * step_g;
  const places = step_g === 100 ? 1 : 2;
  const shown = (grams: number): Shown => rounded(new Fraction(grams, 1000), places);
  const [empty_g, milk_g] = [onScale(600, 980), onScale(900, 2600)];
  const [full, empty, milk] = [shown(empty_g + milk_g), shown(empty_g), shown(milk_g)];
  const half = kg(step_g / 2);
  const both = kg(step_g);
  const percentOf = (part_g: number): Shown => rounded(new Fraction(part_g, milk_g).mul(100), 1);
  const percent = percentOf(step_g);
  const three = rounded(new Fraction(step_g, 3 * milk_g).mul(100), 1);
  return { places, full, empty, milk, half, both, percent, three, step_g };
}

function asksOf({
  places,
  milk,
  half,
  both,
  percent,
  three,
  step_g,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.weighing-error.ask-one'),
      work: { is: 'boxes', after: ['kg'] },
      answer: msg('sheet.answer', { amount: qty(half, 'kg') }),
      values: [half],
      accepted: [],
      steps: [msg('sheet.math', { line: math(kg(step_g), '÷', whole(2), '=', half) })],
    },
    {
      prompt: msg('task.weighing-error.ask-both'),
      work: { is: 'boxes', after: ['kg', 'percent'] },
      answer: msg('task.weighing-error.answer-both', {
        both: qty(both, 'kg'),
        percent: qty(percent, 'percent'),
      }),
      values: [both, percent],
      accepted: [],
      steps: [
        msg('task.weighing-error.step-both', { line: math(half, '+', half, '=', both) }),
        msg('task.weighing-error.step-percent', {
          line: math(both, '÷', milk, '×', whole(100)),
          percent: qty(percent, 'percent'),
        }),
      ],
    },
    {
      prompt: msg('task.weighing-error.ask-three', {
        milk: qty(rounded(exactly(milk).mul(3), places), 'kg'),
      }),
      work: { is: 'boxes', after: ['percent'] },
      answer: msg('sheet.answer', { amount: qty(three, 'percent') }),
      values: [three],
      accepted: [],
      steps: [
        msg('task.weighing-error.step-three', { both: qty(both, 'kg'), percent: qty(three, 'percent') }),
      ],
    },
    askInWords(
      msg('task.weighing-error.ask-digits', {
        long: num(rounded(exactly(milk).div(new Fraction(103, 100)), 4)),
      }),
      msg(`task.weighing-error.answer-digits-${places}`, {
        short: num(rounded(exactly(milk).div(new Fraction(103, 100)), places)),
      }),
      3,
      [msg('task.weighing-error.accept-digits')],
    ),
  ];
}

function task(context: TaskContext, from: (typeof STEPS_G)[number]): Task {
  const worked = workOut(context, from);
  const { full, empty, milk, step_g } = worked;
  return {
    kind: 'weighing-error',
    standards: ['HSN-Q.A.3'],
    lead: [
      msg('task.weighing-error.lead', {
        full: qty(full, 'kg'),
        empty: qty(empty, 'kg'),
        milk: qty(milk, 'kg'),
      }),
      msg('task.weighing-error.scale', { step: stepOf(kg(step_g), 'kg') }),
    ],
    picture: null,
    asks: asksOf(worked),
    mistake: {
      what: msg('task.weighing-error.mistake', { wrong: qty(whole(0), 'kg') }),
      why: msg('task.weighing-error.why'),
    },
    fromBook: [],
  };
}

/** An accuracy that fits the measurement (HSN-Q.A.3). */
export const weighingError = taskKind<(typeof STEPS_G)[number]>({
  name: 'weighing-error',
  bands: ['9-12'],
  standards: ['HSN-Q.A.3'],
  lack: 'nothing',
  candidates: () => STEPS_G,
  touches: () => [],
  make: task,
});
