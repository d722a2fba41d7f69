// Chances of a textbook trait: one kid, all kids of a birth, at least one of them.
import Fraction from 'fraction.js';
import { shownOf, valueOf } from '../quantity/grade.ts';
import { count, joined, math, msg, num, sub, text } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import { pairOf, squareOfPairs, TRAITS } from './modelSquare.ts';
import { taskKind, type Ask, type Task } from './task.ts';
import type { TaskContext } from './context.ts';

interface Birth {
  readonly trait: (typeof TRAITS)[number];
  /** Hidden forms that the buck carries; the doe carries one. */
  readonly buck: 1 | 2;
  readonly kids: 2 | 3;
}

const BIRTHS: readonly Birth[] = TRAITS.flatMap((trait) =>
  ([1, 2] as const).flatMap((buck) => ([2, 3] as const).map((kids) => ({ trait, buck, kids }))),
);

/** Everything that the task prints, worked out once. */
function workOut(_: TaskContext, { trait, buck, kids }: Birth) {
  const [does, bucks] = [pairOf(trait, 1), pairOf(trait, buck)];
  const square = squareOfPairs(does, bucks);
  const one = new Fraction(buck, 4);
  const none = new Fraction(1).sub(one);
  const power = (base: Fraction): Fraction => (kids === 2 ? base.mul(base) : base.mul(base).mul(base));
  const [single, all] = [shownOf(one), shownOf(power(one))];
  const [other, noneOf] = [shownOf(none), shownOf(power(none))];
  const least = shownOf(new Fraction(1).sub(power(none)));
  const rare = sub(msg(`task.model-square.${trait.name}-hides`));
  const wrong = shownOf(one.mul(kids));
  const wrongDiffers = valueOf(wrong) !== valueOf(all);
  return {
    does,
    bucks,
    square,
    single,
    all,
    other,
    noneOf,
    least,
    rare,
    wrong,
    wrongDiffers,
    trait,
    buck,
    kids,
  };
}

function firstAsks({
  square,
  single,
  all,
  rare,
  trait,
  buck,
  kids,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.kid-odds.ask-one', { rare }),
      work: { is: 'boxes', after: [null] },
      answer: msg('sheet.answer', { amount: num(single) }),
      values: [single],
      accepted: [msg('task.kid-odds.accept')],
      steps: [msg('task.kid-odds.step-one', { n: count(buck), pair: text(trait.hides + trait.hides) })],
      picture: square,
    },
    {
      prompt: msg('task.kid-odds.ask-all', { kids: count(kids), rare }),
      work: { is: 'working', after: [null] },
      answer: msg('sheet.answer', { amount: num(all) }),
      values: [all],
      accepted: [msg('task.kid-odds.accept')],
      steps: [
        msg('sheet.math', {
          line: math(
            ...joined(
              Array.from({ length: kids }, () => single),
              '×',
            ),
            '=',
            all,
          ),
        }),
      ],
    },
  ];
}

function lastAsks({ other, noneOf, least, rare, kids }: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.kid-odds.ask-least', { rare }),
      work: { is: 'working', after: [null] },
      answer: msg('sheet.answer', { amount: num(least) }),
      values: [least],
      accepted: [msg('task.kid-odds.accept')],
      steps: [
        msg('task.kid-odds.step-none', {
          line: math(
            ...joined(
              Array.from({ length: kids }, () => other),
              '×',
            ),
            '=',
            noneOf,
          ),
        }),
        msg('sheet.math', { line: math({ num: 1, den: 1 }, '−', noneOf, '=', least) }),
      ],
    },
    askInWords(msg('task.kid-odds.ask-why'), msg('task.kid-odds.answer-why'), 2, [
      msg('task.kid-odds.accept-why'),
    ]),
  ];
}

function task(context: TaskContext, from: Birth): Task {
  const worked = workOut(context, from);
  const { does, bucks, square, rare, wrong, wrongDiffers, trait } = worked;
  return {
    kind: 'kid-odds',
    standards: ['HS-LS3-3', 'HSS-CP.A.2'],
    lead: [
      msg('task.model-square.lead', {
        shows: text(trait.shows),
        hides: text(trait.hides),
        common: sub(msg(`task.model-square.${trait.name}-shows`)),
        rare,
      }),
      msg('task.model-square.parents', { doe: text(does.join('')), buck: text(bucks.join('')) }),
      msg('task.kid-odds.model'),
    ],
    picture: square,
    asks: [...firstAsks(worked), ...lastAsks(worked)],
    mistake: wrongDiffers
      ? { what: msg('task.kid-odds.mistake', { sum: num(wrong) }), why: msg('task.kid-odds.why') }
      : { what: msg('task.kid-odds.mistake-plain'), why: msg('task.kid-odds.why') },
    fromBook: [],
  };
}

/** Chance and the spread of a trait (HS-LS3-3), independent events (HSS-CP.A.2). */
export const kidOdds = taskKind<Birth>({
  name: 'kid-odds',
  bands: ['9-12'],
  standards: ['HS-LS3-3', 'HSS-CP.A.2'],
  lack: 'nothing',
  candidates: () => BIRTHS,
  touches: ({ trait }) => [`trait|${trait.name}`],
  make: task,
});
