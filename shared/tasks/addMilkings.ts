// Add a doe's morning and evening milk: mixed numbers in halves and quarters.
import { exactly, shownOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, type Message } from '../sheet/message.ts';
import type { Reading } from './context.ts';
import { readingFromBook } from './fromBook.ts';
import { asDecimal, nameOf, onDay, readIn, touchesOf } from './phrases.ts';
import { taskKind } from './task.ts';

interface Sum {
  readonly am: Reading;
  readonly pm: Reading;
  readonly a: Shown;
  readonly b: Shown;
}

const inQuarters = (shown: Shown): Shown => ({ num: (shown.num * 4) / shown.den, den: 4 });

/** Adding mixed numbers: like denominators in grade 4 (4.NF.B.3.c), unlike ones in grade 5 (5.NF.A.1). */
export const addMilkings = taskKind<Sum>({
  name: 'add-milkings',
  bands: ['3-5'],
  standards: ['5.NF.A.1', '4.NF.B.3.c'],
  lack: 'no-two-milkings',
  candidates(context) {
    const sums = context.doeDays.flatMap(({ am, pm }) => {
      if (!am || !pm) return [];
      const [a, b] = [readIn(am, context.measure), readIn(pm, context.measure)];
      return a.num > 0 && b.num > 0 && a.den * b.den > 1 ? [{ am, pm, a, b }] : [];
    });
    // Two fractions make the better question; one will do where there is no more.
    const both = sums.filter(({ a, b }) => a.den > 1 && b.den > 1);
    return both.length > 0 ? both : sums;
  },
  touches: ({ am, pm }) => touchesOf([am, pm]),
  make(context, { am, pm, a, b }) {
    const { unit } = context.measure;
    const sum = shownOf(exactly(a).add(exactly(b)));
    const improper =
      sum.den > 1
        ? [
            msg('task.add-milkings.accept', { top: num(whole(sum.num)), bottom: num(whole(sum.den)) }),
            ...asDecimal(sum),
          ]
        : [];
    const both = a.den > 1 && b.den > 1;
    const wholes = Math.floor(a.num / a.den) + Math.floor(b.num / b.den);
    return {
      kind: 'add-milkings',
      standards: [both && a.den !== b.den ? '5.NF.A.1' : '4.NF.B.3.c'],
      lead: [
        msg('task.add-milkings.lead', { name: nameOf(am.doe), amount: qty(a, unit), on: onDay(am.date) }),
        msg('task.add-milkings.evening', { amount: qty(b, unit) }),
      ],
      picture: null,
      asks: [
        {
          prompt: msg('task.add-milkings.ask', { name: nameOf(am.doe) }),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(sum, unit) }),
          values: [sum],
          accepted: improper,
          steps: steps(a, b, sum),
        },
      ],
      mistake: both
        ? {
            what: msg('task.add-milkings.mistake', { wrong: qty(addedAcross(a, b), unit) }),
            why: msg('task.add-milkings.why'),
          }
        : {
            what: msg('task.add-milkings.mistake', { wrong: qty(whole(wholes), unit) }),
            why: msg('task.add-milkings.why-part'),
          },
      fromBook: [...readingFromBook(am, a, context.measure), ...readingFromBook(pm, b, context.measure)],
    };
  },
});

function steps(a: Shown, b: Shown, sum: Shown): Message[] {
  const [a4, b4] = [inQuarters(a), inQuarters(b)];
  const wholes = whole(Math.floor(a4.num / 4) + Math.floor(b4.num / 4));
  const parts: [Shown, Shown] = [
    { num: a4.num % 4, den: 4 },
    { num: b4.num % 4, den: 4 },
  ];
  const partSum: Shown = { num: parts[0].num + parts[1].num, den: 4 };
  const lines = [
    msg('task.add-milkings.step-wholes', {
      line: math(whole(Math.floor(a4.num / 4)), '+', whole(Math.floor(b4.num / 4)), '=', wholes),
    }),
  ];
  if (parts[0].num > 0 && parts[1].num > 0)
    lines.push(
      msg('task.add-milkings.step-parts', {
        line: math(parts[0], '+', parts[1], '=', shownOf(exactly(partSum))),
      }),
    );
  lines.push(
    msg('task.add-milkings.step-all', { line: math(wholes, '+', shownOf(exactly(partSum)), '=', sum) }),
  );
  return lines;
}

/** What comes out when tops and bottoms of the fraction parts are each added. */
function addedAcross(a: Shown, b: Shown): Shown {
  const part = (one: Shown) => one.num % one.den;
  const wholes = Math.floor(a.num / a.den) + Math.floor(b.num / b.den);
  const den = (a.den > 1 ? a.den : 0) + (b.den > 1 ? b.den : 0);
  return { num: wholes * den + part(a) + part(b), den };
}
