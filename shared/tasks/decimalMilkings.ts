// A doe's two milkings of a day in hundredths of a liter: their sum and their difference.
import Fraction from 'fraction.js';
import { exactly, shownIn, shownOf, type Measure, type Shown } from '../quantity/grade.ts';
import { math, msg, qty } from '../sheet/message.ts';
import type { DoeDay, Reading } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { nameOf, onDay, touchesOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

/** Liters to hundredths (5.NBT.B.7), whatever the farm reads in. */
const HUNDREDTHS: Measure = { unit: 'L', unit_mL: new Fraction(1000), den: 100, places: 2 };

interface TwoMilkings {
  readonly day: DoeDay;
  readonly am: Reading;
  readonly pm: Reading;
}

const read = (one: Reading): Shown => shownIn(one.amount_mL, HUNDREDTHS);

/** Decimals to hundredths, added and subtracted (5.NBT.B.7). */
export const decimalMilkings = taskKind<TwoMilkings>({
  name: 'decimal-milkings',
  bands: ['3-5'],
  standards: ['5.NBT.B.7'],
  lack: 'no-two-milkings',
  candidates: (context) =>
    context.doeDays
      .flatMap((day) => (day.am && day.pm ? [{ day, am: day.am, pm: day.pm }] : []))
      .filter(({ am, pm }) => read(am).num > 0 && read(pm).num > 0 && !exactly(read(am)).equals(exactly(read(pm)))),
  touches: ({ am, pm }) => touchesOf([am, pm]),
  make: (_, milkings) => asked(milkings),
}); // prettier-ignore

function asked({ day, am, pm }: TwoMilkings): Task {
  const [morning, evening] = [read(am), read(pm)];
  const [a, b] = [exactly(morning), exactly(evening)];
  const sum = shownOf(a.add(b), 2);
  const difference = shownOf(a.sub(b).abs(), 2);
  const [high, low] = a.compare(b) > 0 ? [morning, evening] : [evening, morning];
  const L = (shown: Shown) => qty(shown, 'L');
  // Lined up at the last digit instead of the point: one number ten times too large.
  const wrong = shownOf(a.mul(10).add(b), 2);
  return {
    kind: 'decimal-milkings',
    standards: ['5.NBT.B.7'],
    lead: [
      msg('task.decimal-milkings.lead', { name: nameOf(day.doe), am: L(morning), on: onDay(day.date) }),
      msg('task.decimal-milkings.lead-pm', { pm: L(evening) }),
    ],
    picture: null,
    asks: [
      {
        prompt: msg('task.decimal-milkings.ask-sum'),
        work: { is: 'working', after: ['L'] },
        answer: msg('sheet.answer', { amount: L(sum) }),
        values: [sum],
        accepted: [],
        steps: [msg('sheet.math', { line: math(morning, '+', evening, '=', sum) })],
      },
      {
        prompt: msg('task.decimal-milkings.ask-difference'),
        work: { is: 'working', after: ['L'] },
        answer: msg('sheet.answer', { amount: L(difference) }),
        values: [difference],
        accepted: [],
        steps: [msg('sheet.math', { line: math(high, '−', low, '=', difference) })],
      },
    ],
    mistake: {
      what: msg('task.decimal-milkings.mistake', { wrong: L(wrong) }),
      why: msg('task.decimal-milkings.why'),
    },
    fromBook: [am, pm].flatMap((one) => readingFromBook(one, read(one), HUNDREDTHS)),
  };
}
