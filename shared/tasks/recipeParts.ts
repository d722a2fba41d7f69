// Parts of a cup in a recipe: add unlike denominators, then make a part of the recipe.
// The recipe is made up for the sum, and the task says "Think of"; any goat milk in it is pasteurized.
import Fraction from 'fraction.js';
import { shownOf, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty } from '../sheet/message.ts';
import { taskKind, type Task } from './task.ts';

type Part = readonly [top: number, bottom: number];
interface Recipe {
  readonly milk: Part;
  readonly oats: Part;
  readonly batch: Part;
}

const MILK: readonly Part[] = [[3, 4], [2, 3], [1, 2]]; // prettier-ignore
const OATS: readonly Part[] = [[1, 3], [1, 2], [5, 6], [1, 4]]; // prettier-ignore
const BATCH: readonly Part[] = [[1, 2], [1, 3], [2, 3], [3, 4]]; // prettier-ignore

const shown = ([top, bottom]: Part): Shown => ({ num: top, den: bottom });
const fraction = ([top, bottom]: Part): Fraction => new Fraction(top, bottom);

// Unlike denominators, and a slip (tops and bottoms added) that is not the sum by chance.
const RECIPES: readonly Recipe[] = MILK.flatMap((milk) =>
  OATS.filter((oats) => oats[1] !== milk[1]).flatMap((oats) => BATCH.map((batch) => ({ milk, oats, batch }))),
);

/** Adding unlike denominators (5.NF.A.2) and a fraction of a fraction (5.NF.B.6). */
export const recipeParts = taskKind<Recipe>({
  name: 'recipe-parts',
  bands: ['3-5'],
  standards: ['5.NF.A.2', '5.NF.B.6'],
  lack: 'no-milk',
  candidates: () => RECIPES,
  touches: ({ milk, oats, batch }) => [`milk ${milk.join('/')}`, `oats ${oats.join('/')}`, `batch ${batch.join('/')}`],
  make: (_, recipe) => asked(recipe),
}); // prettier-ignore

function asked({ milk, oats, batch }: Recipe): Task {
  const sum = fraction(milk).add(fraction(oats));
  const part = fraction(milk).mul(fraction(batch));
  const common = (milk[1] * oats[1]) / Number(new Fraction(milk[1]).gcd(oats[1]).n);
  const over = (one: Part) => msg('task.recipe-parts.over', {
    part: num(shown(one)),
    top: num({ num: (one[0] * common) / one[1], den: 1 }),
    bottom: num({ num: common, den: 1 }),
  });
  return {
    kind: 'recipe-parts',
    standards: ['5.NF.A.2', '5.NF.B.6'],
    lead: [
      msg('task.recipe-parts.lead', { milk: qty(shown(milk), 'cup'), oats: qty(shown(oats), 'cup') }),
    ],
    picture: null,
    asks: [
      {
        prompt: msg('task.recipe-parts.ask-sum'),
        work: { is: 'working', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(shownOf(sum), 'cup') }),
        values: [shownOf(sum)],
        accepted: sum.n > sum.d && sum.d > 1n ? [msg('task.recipe-parts.accept', { top: num({ num: Number(sum.n), den: 1 }), bottom: num({ num: Number(sum.d), den: 1 }) })] : [],
        steps: [...[milk, oats].filter((one) => one[1] !== common).map(over), msg('sheet.math', { line: math(shown(milk), '+', shown(oats), '=', shownOf(sum)) })],
      },
      {
        prompt: msg('task.recipe-parts.ask-batch', { batch: num(shown(batch)) }),
        work: { is: 'working', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(shownOf(part), 'cup') }),
        values: [shownOf(part)],
        accepted: [],
        steps: [msg('sheet.math', { line: math(shown(batch), '×', shown(milk), '=', shownOf(part)) })],
      },
    ],
    mistake: {
      what: msg('task.recipe-parts.mistake', {
        wrong: qty(shownOf(new Fraction(milk[0] + oats[0], milk[1] + oats[1])), 'cup'),
      }),
      why: msg('task.recipe-parts.why'),
    },
    fromBook: [],
  };
} // prettier-ignore
