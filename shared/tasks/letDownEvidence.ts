// A text about the let-down of milk, and a claim that it half supports.
import Fraction from 'fraction.js';
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, math, msg, num, qty } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const SENTENCES = 6;
/** Milk that waits in a goat's cistern, percent (Salama and others 2004; the fact `milk-in-cistern`). */
const CISTERN = { low: 57, high: 75 };
/** Hand milkings in which oxytocin rose (McNeilly 1972). */
const ROSE = { of: 40, rose: 25 };

const MILKINGS_KG = ['1.2', '1.4', '1.6', '1.8', '2.0', '2.2'] as const;

/** Everything that the task prints, worked out once. */
function workOut(_: TaskContext, kg: (typeof MILKINGS_KG)[number]) {
  const milk = rounded(new Fraction(kg), 1);
  const part = (percent: number): Shown => rounded(exactly(milk).mul(percent).div(100), 2);
  const [low, high] = [part(CISTERN.low), part(CISTERN.high)];
  const rose = rounded(new Fraction(ROSE.rose, ROSE.of).mul(100), 1);
  const wrong = rounded(new Fraction(ROSE.rose, ROSE.of - ROSE.rose).mul(100), 1);
  return { milk, part, low, high, rose, wrong };
}

function asksOf({ milk, part, low, high, rose }: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.let-down-evidence.ask-percent'),
      work: { is: 'boxes', after: ['percent'] },
      answer: msg('sheet.answer', { amount: qty(rose, 'percent') }),
      values: [rose],
      accepted: [],
      steps: [
        msg('sheet.math', {
          line: math(whole(ROSE.rose), '÷', whole(ROSE.of), '×', whole(100), '=', rose),
        }),
      ],
    },
    {
      prompt: msg('task.let-down-evidence.ask-cistern', { milk: qty(milk, 'kg') }),
      work: { is: 'boxes', after: ['kg', 'kg'] },
      answer: msg('task.let-down-evidence.answer-cistern', { low: qty(low, 'kg'), high: qty(high, 'kg') }),
      values: [low, high],
      accepted: [],
      steps: [CISTERN.low, CISTERN.high].map((percent) =>
        msg('task.let-down-evidence.step', {
          line: math(milk, '×', whole(percent), '÷', whole(100)),
          result: num(part(percent)),
        }),
      ),
    },
    askInWords(msg('task.let-down-evidence.ask-claim'), msg('task.let-down-evidence.answer-claim'), 4, [
      msg('task.let-down-evidence.accept-claim'),
    ]),
    askInWords(msg('task.let-down-evidence.ask-loop'), msg('task.let-down-evidence.answer-loop'), 3, [
      msg('task.let-down-evidence.accept-loop'),
    ]),
  ];
}

function task(context: TaskContext, from: (typeof MILKINGS_KG)[number]): Task {
  const worked = workOut(context, from);
  const { rose, wrong } = worked;
  return {
    kind: 'let-down-evidence',
    standards: ['HS-LS1-3', 'RST.11-12.1'],
    lead: [
      msg('task.read-and-prove.lead'),
      ...Array.from({ length: SENTENCES }, (_unused, index) =>
        msg(`task.let-down-evidence.s${index + 1}`, {
          number: count(index + 1),
          low: count(CISTERN.low),
          high: count(CISTERN.high),
          rose: count(ROSE.rose),
          of: count(ROSE.of),
        }),
      ),
    ],
    picture: null,
    asks: asksOf(worked),
    mistake:
      valueOf(wrong) === valueOf(rose)
        ? { what: msg('task.let-down-evidence.mistake-plain'), why: msg('task.let-down-evidence.why') }
        : {
            what: msg('task.let-down-evidence.mistake', { wrong: qty(wrong, 'percent') }),
            why: msg('task.let-down-evidence.why'),
          },
    fromBook: [],
  };
}

/** Feedback (HS-LS1-3), and evidence with its gaps (RST.11-12.1). */
export const letDownEvidence = taskKind<(typeof MILKINGS_KG)[number]>({
  name: 'let-down-evidence',
  bands: ['9-12'],
  standards: ['HS-LS1-3', 'RST.11-12.1'],
  lack: 'nothing',
  candidates: () => MILKINGS_KG,
  touches: () => [],
  make: task,
});
