// A table of goat's and cow's milk, and a claim to be checked by a percent.
import { exactly, rounded, shownOf, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, sub } from '../sheet/message.ts';
import Fraction from 'fraction.js';
import { taskKind, type Task } from './task.ts';
import type { TaskContext } from './context.ts';

/** What 100 grams hold, as USDA's table prints it. */
export interface Nutrient {
  readonly name: string;
  readonly goat: string;
  readonly cow: string;
}

/**
 * USDA National Nutrient Database SR28 (2015): 01106 goat's milk, fluid, and 01077 cow's milk, whole, per 100 g.
 * The same rows stand in content/facts/milk-composition.csv; a test holds them together.
 */
export const NUTRIENTS: readonly Nutrient[] = [
  { name: 'protein', goat: '3.56', cow: '3.15' },
  { name: 'fat', goat: '4.14', cow: '3.25' },
  { name: 'carbohydrate', goat: '4.45', cow: '4.80' },
  { name: 'calcium', goat: '134', cow: '113' },
  { name: 'potassium', goat: '204', cow: '132' },
  { name: 'sodium', goat: '50', cow: '43' },
];

/** Claims: the goat's milk holds so much more, or less, of it; the percent of change settles each. */
const CLAIMS = [
  { name: 'third-more', more: true, least: new Fraction(100, 3) },
  { name: 'tenth-more', more: true, least: new Fraction(10) },
  { name: 'tenth-less', more: false, least: new Fraction(10) },
] as const;

interface Claim {
  readonly nutrient: Nutrient;
  readonly claim: (typeof CLAIMS)[number];
}

// A claim of the wrong direction would be seen false at a glance.
const CHECKS: readonly Claim[] = NUTRIENTS.flatMap((nutrient) =>
  CLAIMS.filter(({ more }) => more === Number(nutrient.goat) > Number(nutrient.cow)).map((claim) => ({
    nutrient,
    claim,
  })),
);

const shownText = (text: string): Shown => shownOf(new Fraction(text), text.split('.')[1]?.length ?? 0);

function task(context: TaskContext, { nutrient, claim }: Claim): Task {
  const others = context.chance.shuffle(NUTRIENTS.filter((one) => one !== nutrient)).slice(0, 2);
  const rows = NUTRIENTS.filter((one) => one === nutrient || others.includes(one));
  const [goat, cow] = [shownText(nutrient.goat), shownText(nutrient.cow)];
  const [high, low] = claim.more ? [goat, cow] : [cow, goat];
  const change = exactly(high).sub(exactly(low)).div(exactly(cow)).mul(100);
  const percent = rounded(change, 1);
  const places = goat.places ?? 0;
  const apart = rounded(exactly(high).sub(exactly(low)), places);
  const wrong = rounded(exactly(high).sub(exactly(low)).div(exactly(goat)).mul(100), 1);
  const holds = change.compare(claim.least) >= 0;
  const what = { what: sub(msg(`task.goat-or-cow.of-${nutrient.name}`)) };
  return {
    kind: 'goat-or-cow',
    standards: ['RST.6-8.7', '7.RP.A.3'],
    lead: [msg('task.goat-or-cow.lead'), msg(`task.goat-or-cow.claim-${claim.name}`, what)],
    picture: {
      is: 'table',
      columns: ['head', 'goat', 'cow'].map((column) => msg(`task.goat-or-cow.${column}`)),
      rows: rows.map((one) => [msg(`task.goat-or-cow.${one.name}`), shownText(one.goat), shownText(one.cow)]),
    },
    asks: [
      {
        prompt: msg(`task.goat-or-cow.ask-${claim.more ? 'more' : 'less'}`, what),
        work: { is: 'working', after: ['percent'] },
        answer: msg('sheet.answer', { amount: qty(percent, 'percent') }),
        values: [percent],
        accepted: [],
        steps: [
          msg('sheet.math', { line: math(high, '−', low, '=', apart) }),
          msg('task.goat-or-cow.step', {
            line: math(apart, '÷', cow, '×', whole(100)),
            percent: qty(percent, 'percent'),
          }),
        ],
      },
      {
        prompt: msg('task.goat-or-cow.ask-verdict'),
        work: { is: 'lines', lines: 3 },
        answer: msg(`task.goat-or-cow.${holds ? 'holds' : 'fails'}-${claim.name}`, {
          percent: qty(percent, 'percent'),
        }),
        values: [holds ? 'holds' : 'fails'],
        accepted: [msg('task.goat-or-cow.accept')],
        steps: [],
      },
    ],
    mistake:
      valueOf(wrong) === valueOf(percent)
        ? {
            what: msg('task.goat-or-cow.mistake-apart', { apart: num(apart) }),
            why: msg('task.goat-or-cow.why-apart'),
          }
        : {
            what: msg('task.goat-or-cow.mistake', { wrong: qty(wrong, 'percent') }),
            why: msg('task.goat-or-cow.why'),
          },
    fromBook: [],
  };
}

/** A table joined with words (RST.6-8.7), percent more and less (7.RP.A.3). */
export const goatOrCow = taskKind<Claim>({
  name: 'goat-or-cow',
  bands: ['6-8'],
  standards: ['RST.6-8.7', '7.RP.A.3'],
  lack: 'nothing',
  candidates: () => CHECKS,
  touches: ({ nutrient }) => [`nutrient|${nutrient.name}`],
  make: task,
});
