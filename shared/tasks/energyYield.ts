// How much of the energy in a doe's feed comes out again as milk.
import Fraction from 'fraction.js';
import { exactly, rounded, shownOf, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, sub, text, type Slot } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Ask, type Task } from './task.ts';
import { DENSITY } from './weighAndSubtract.ts';

const decimal = (written: string): Shown =>
  shownOf(new Fraction(written), written.split('.')[1]?.length ?? 0);

/** Gross energy of a kilogram of dry forage, MJ: the default of the IPCC's 2006 guidelines for livestock, from memory. */
const FORAGE_MJ = decimal('18.45');
/** Energy of a kilogram of goat's milk, MJ: 1.469 + 0.4025 for each percent of fat (Nsahlai and others 2004). */
const MILK_MJ = { base: decimal('1.469'), fat: decimal('0.4025') };
/** Dry feed of a doe in milk: 4 to 5 percent of her weight a day (the fact `dry-matter-milking`). */
const SHARES = ['4', '4.5', '5'] as const;
const FATS = ['3.5', '3.8', '4.1', '4.5'] as const;
const WEIGHTS_KG = [50, 55, 60, 65, 70, 75, 80] as const;
/** Kilograms of a doe for each kilogram of milk a day, at least, so that a heavy milker is no small doe (common practice, no source). */
const LEAST_WEIGHT_A_KG = 17;
const MODEL_KG = ['2.0', '2.4', '2.8', '3.1'] as const;

interface Day {
  readonly who: Slot;
  readonly id: string;
  readonly milk_kg: Shown;
}

// Less or more than that would be a day cut short, or a slip of the pen.
const DAY_KG = [1, 5] as const;

/** Days of milk in kg: whole ones of the book, or a model doe's where the book has none. */
function days(context: TaskContext): Day[] {
  const own = context.doeDays.flatMap(({ doe, date, total_mL }): Day[] => {
    const milk_kg = rounded(new Fraction(Math.round(total_mL), 1000).mul(exactly(DENSITY)), 1);
    const kg = valueOf(milk_kg);
    if (kg < DAY_KG[0] || kg > DAY_KG[1]) return [];
    return [{ who: text(doe.name), id: `${doe.id}|${date}`, milk_kg }];
  });
  if (own.length > 0) return own;
  return MODEL_KG.map((kg) => ({ who: sub(msg('task.curve.model-doe')), id: kg, milk_kg: decimal(kg) }));
}

const weightsFor = (milk_kg: Shown): readonly number[] => {
  const fit = WEIGHTS_KG.filter((weight) => weight >= LEAST_WEIGHT_A_KG * valueOf(milk_kg));
  return fit.length > 0 ? fit : WEIGHTS_KG.slice(-1);
};

/** Everything that the task prints, worked out once. */
function workOut({ chance }: TaskContext, { who, milk_kg }: Day) {
  const [share, fat, weight] = [
    decimal(chance.pick(SHARES)),
    decimal(chance.pick(FATS)),
    whole(chance.pick(weightsFor(milk_kg))),
  ];
  const feed = rounded(exactly(weight).mul(exactly(share)).div(100), 3);
  const into = rounded(exactly(feed).mul(exactly(FORAGE_MJ)), 1);
  const perKg = rounded(exactly(MILK_MJ.fat).mul(exactly(fat)).add(exactly(MILK_MJ.base)), 2);
  const out = rounded(exactly(perKg).mul(exactly(milk_kg)), 1);
  const percent = rounded(exactly(out).div(exactly(into)).mul(100), 0);
  const wrong = rounded(exactly(milk_kg).div(exactly(feed)).mul(100), 0);
  const wrongDiffers = valueOf(wrong) !== valueOf(percent);
  return { share, fat, weight, feed, into, perKg, out, percent, wrong, wrongDiffers, who, milk_kg };
}

function asksOf({
  share,
  fat,
  weight,
  feed,
  into,
  perKg,
  out,
  percent,
  milk_kg,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.energy-yield.ask-in'),
      work: { is: 'working', after: [null] },
      answer: msg('task.energy-yield.answer-mj', { mj: num(into) }),
      values: [into],
      accepted: [],
      steps: [
        msg('sheet.math', { line: math(weight, '×', share, '÷', whole(100), '=', feed) }),
        msg('task.energy-yield.step', { line: math(feed, '×', FORAGE_MJ), result: num(into) }),
      ],
    },
    {
      prompt: msg('task.energy-yield.ask-out'),
      work: { is: 'working', after: [null] },
      answer: msg('task.energy-yield.answer-mj', { mj: num(out) }),
      values: [out],
      accepted: [],
      steps: [
        msg('task.energy-yield.step', {
          line: math(MILK_MJ.base, '+', MILK_MJ.fat, '×', fat),
          result: num(perKg),
        }),
        msg('task.energy-yield.step', { line: math(perKg, '×', milk_kg), result: num(out) }),
      ],
    },
    {
      prompt: msg('task.energy-yield.ask-percent'),
      work: { is: 'boxes', after: ['percent'] },
      answer: msg('sheet.answer', { amount: qty(percent, 'percent') }),
      values: [percent],
      accepted: [msg('task.energy-yield.accept-percent')],
      steps: [
        msg('task.energy-yield.step', {
          line: math(out, '÷', into, '×', whole(100)),
          result: num(percent),
        }),
      ],
    },
    askInWords(msg('task.energy-yield.ask-rest'), msg('task.energy-yield.answer-rest'), 3, [
      msg('task.energy-yield.accept-rest'),
    ]),
  ];
}

function task(context: TaskContext, from: Day): Task {
  const worked = workOut(context, from);
  const { share, fat, weight, wrong, wrongDiffers, who, milk_kg } = worked;
  return {
    kind: 'energy-yield',
    standards: ['HS-LS2-4'],
    lead: [
      msg('task.energy-yield.lead', {
        who,
        weight: qty(weight, 'kg'),
        share: qty(share, 'percent'),
        milk: qty(milk_kg, 'kg'),
        fat: qty(fat, 'percent'),
      }),
      msg('task.energy-yield.forage', { mj: num(FORAGE_MJ) }),
      msg('task.energy-yield.milk', { base: num(MILK_MJ.base), fat: num(MILK_MJ.fat) }),
    ],
    picture: null,
    asks: asksOf(worked),
    mistake: wrongDiffers
      ? {
          what: msg('task.energy-yield.mistake', { wrong: qty(wrong, 'percent') }),
          why: msg('task.energy-yield.why'),
        }
      : { what: msg('task.energy-yield.mistake-plain'), why: msg('task.energy-yield.why') },
    fromBook: [],
  };
}

/** Energy flow with numbers (HS-LS2-4). */
export const energyYield = taskKind<Day>({
  name: 'energy-yield',
  bands: ['9-12'],
  standards: ['HS-LS2-4'],
  lack: 'nothing',
  candidates: days,
  touches: ({ id }) => [id],
  make: task,
});
