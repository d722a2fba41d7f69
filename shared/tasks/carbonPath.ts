// The path of carbon from the air through grass and doe and back, with a balance that must close.
import { count, math, msg, num, sub } from '../sheet/message.ts';
import { rounded, whole, type Shown } from '../quantity/grade.ts';
import Fraction from 'fraction.js';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { mixedFlow } from './mixedFlow.ts';
import { taskKind, type Task } from './task.ts';

const BOXES = [
  { name: 'grass', column: 0, row: 0 },
  { name: 'air', column: 1, row: 0 },
  { name: 'soil', column: 2, row: 0 },
  { name: 'doe', column: 1, row: 1 },
  { name: 'milk', column: 2, row: 1 },
] as const;
type Box = (typeof BOXES)[number]['name'];
type Way = 'photosynthesis' | 'respiration' | 'eating' | 'building' | 'manure';

/** Arrows of carbon; school knowledge, from memory. */
const ARROWS: readonly { readonly from: Box; readonly to: Box; readonly way: Way }[] = [
  { from: 'air', to: 'grass', way: 'photosynthesis' },
  { from: 'grass', to: 'doe', way: 'eating' },
  { from: 'doe', to: 'air', way: 'respiration' },
  { from: 'doe', to: 'soil', way: 'manure' },
  { from: 'soil', to: 'air', way: 'respiration' },
  { from: 'doe', to: 'milk', way: 'building' },
];

/** A balance of carbon: what is eaten is what leaves. Made-up round numbers, and the sheet says so. */
interface Balance {
  readonly eaten: number;
  readonly milk: number;
  readonly manure: number;
}

const BALANCES: readonly Balance[] = [900, 1000, 1100, 1200].flatMap((eaten) =>
  [120, 150, 180].flatMap((milk) => [310, 340, 380].map((manure) => ({ eaten, milk, manure }))),
);

function task(context: TaskContext, { eaten, milk, manure }: Balance): Task {
  const { picture, mixed } = mixedFlow(context, 'carbon-path', BOXES, ARROWS);
  const numbersOf = (way: Way): Shown[] =>
    mixed.flatMap((arrow, index) => (arrow.way === way ? [whole(index + 1)] : []));
  const [photosynthesis] = numbersOf('photosynthesis') as [Shown];
  const breathing = numbersOf('respiration') as [Shown, Shown];
  const breathed = eaten - milk - manure;
  const percent = rounded(new Fraction(milk, eaten).mul(100), 0);
  return {
    kind: 'carbon-path',
    standards: ['HS-LS1-5', 'HS-LS1-7', 'HS-LS2-5'],
    lead: [msg('task.carbon-path.lead')],
    picture,
    asks: [
      {
        prompt: msg('task.carbon-path.ask-arrows'),
        work: { is: 'boxes', after: [null, null, null] },
        answer: msg('task.carbon-path.answer-arrows', {
          a: num(photosynthesis),
          b: num(breathing[0]),
          c: num(breathing[1]),
        }),
        values: [photosynthesis, ...breathing],
        accepted: [msg('task.carbon-path.accept-arrows')],
        steps: [msg('task.carbon-path.step-arrows')],
      },
      {
        prompt: msg('task.carbon-path.ask-balance', {
          eaten: count(eaten),
          milk: count(milk),
          manure: count(manure),
        }),
        work: { is: 'boxes', after: ['g'] },
        answer: msg('task.carbon-path.answer-balance', { n: count(breathed) }),
        values: [whole(breathed)],
        accepted: [],
        steps: [
          msg('sheet.math', {
            line: math(whole(eaten), '−', whole(milk), '−', whole(manure), '=', whole(breathed)),
          }),
        ],
      },
      askInWords(msg('task.carbon-path.ask-energy'), msg('task.carbon-path.answer-energy'), 2, [
        msg('task.carbon-path.accept-energy'),
      ]),
      askInWords(
        msg('task.carbon-path.ask-share'),
        msg('task.carbon-path.answer-share', {
          percent: sub(msg('task.carbon-path.percent', { percent: num(percent) })),
        }),
        1,
      ),
    ],
    mistake: { what: msg('task.carbon-path.mistake'), why: msg('task.carbon-path.why') },
    fromBook: [],
  };
}

/** Photosynthesis (HS-LS1-5), respiration (HS-LS1-7) and the carbon cycle (HS-LS2-5), without steps of biochemistry. */
export const carbonPath = taskKind<Balance>({
  name: 'carbon-path',
  bands: ['9-12'],
  standards: ['HS-LS1-5', 'HS-LS1-7', 'HS-LS2-5'],
  lack: 'nothing',
  candidates: () => BALANCES,
  touches: () => [],
  make: task,
});
