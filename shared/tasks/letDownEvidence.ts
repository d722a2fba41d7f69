// A text about the let-down of milk, and a claim that it half supports.
import Fraction from 'fraction.js';
import { exactly, rounded, whole, type Shown } from '../quantity/grade.ts';
import { count, math, msg, num, qty } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

const SENTENCES = 5;
/** Milk that waits in a goat's cistern, percent (Salama and others 2004; the fact `milk-in-cistern`). */
const CISTERN = { low: 57, high: 75 };
/** Hand milkings in which oxytocin rose (McNeilly 1972). */
const ROSE = { of: 40, rose: 25 };

const MILKINGS_KG = ['1.2', '1.4', '1.6', '1.8', '2.0', '2.2'] as const;

function task(_: TaskContext, kg: (typeof MILKINGS_KG)[number]): Task {
  const milk = rounded(new Fraction(kg), 1);
  const part = (percent: number): Shown => rounded(exactly(milk).mul(percent).div(100), 2);
  const [low, high] = [part(CISTERN.low), part(CISTERN.high)];
  const key = (name: string) => msg(`task.let-down-evidence.${name}`);
  const facts = {
    low: count(CISTERN.low),
    high: count(CISTERN.high),
    rose: count(ROSE.rose),
    of: count(ROSE.of),
  };
  return {
    kind: 'let-down-evidence',
    standards: ['HS-LS1-3', 'RST.11-12.1'],
    lead: [
      ...Array.from({ length: SENTENCES }, (_unused, index) =>
        msg(`task.let-down-evidence.s${index + 1}`, { number: count(index + 1), ...facts }),
      ),
    ],
    picture: null,
    asks: [
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
      askInWords(key('ask-claim'), key('answer-claim'), 2, [key('accept-claim')]),
      askInWords(key('ask-loop'), key('answer-loop'), 2, [key('accept-loop')]),
    ],
    mistake: {
      what: msg('task.let-down-evidence.mistake', { wrong: qty(part(CISTERN.high - CISTERN.low), 'kg') }),
      why: key('why'),
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
