// From one system of units to the other, and from volume to weight.
import Fraction from 'fraction.js';
import { exactly, rounded, shownIn, shownOf, valueOf, whole } from '../quantity/grade.ts';
import { math, msg, num, qty, sub } from '../sheet/message.ts';
import type { HerdWholeDay } from './context.ts';
import { fromBook } from './fromBook.ts';
import { onDay } from './phrases.ts';
import { taskKind } from './task.ts';

// NIST Handbook 44, Appendix C: 1 US cup = 0.236 588 L, 1 L = 1.056 688 US quarts; given here as a child would use them.
const CUP_L = new Fraction('0.237');
const LITRE_QT = new Fraction('1.057');
const KG_PER_L = new Fraction('1.03');

// Less than a few cups or liters, and rounding would swallow the difference between the units.
const LEAST = 3;

/** Converting between systems by a ratio (6.RP.A.3.d). */
export const otherSystem = taskKind<HerdWholeDay>({
  name: 'other-system',
  bands: ['6-8'],
  standards: ['6.RP.A.3.d'],
  lack: 'no-whole-day',
  candidates: (context) =>
    context.herdDays.filter((day) => valueOf(shownIn(day.total_mL, context.measure)) >= LEAST),
  touches: ({ date }) => [`herd|${date}`],
  make(context, day) {
    const us = context.units === 'us';
    const { unit } = context.measure;
    const amount = shownIn(day.total_mL, context.measure);
    const factor = us ? CUP_L : LITRE_QT;
    const shownFactor = shownOf(factor, 3);
    const other = us ? ('L' as const) : ('qt' as const);
    const changed = rounded(exactly(amount).mul(factor), 1);
    const litres = us ? changed : amount;
    const weight = rounded(exactly(litres).mul(KG_PER_L), 1);
    return {
      kind: 'other-system',
      standards: ['6.RP.A.3.d'],
      lead: [
        msg('task.other-system.lead', { amount: qty(amount, unit), on: onDay(day.date) }),
        msg(`task.other-system.fact-${other}`, { factor: num(shownFactor) }),
      ],
      picture: null,
      asks: [
        {
          prompt: msg(`task.other-system.ask-${other}`),
          work: { is: 'working', after: [other] },
          answer: msg('sheet.answer', { amount: qty(changed, other) }),
          values: [changed],
          accepted: [],
          steps: [
            msg('task.other-system.step', {
              line: math(amount, '×', shownFactor),
              result: qty(changed, other),
            }),
          ],
        },
        {
          prompt: msg('task.other-system.ask-kg', { density: num(shownOf(KG_PER_L, 2)) }),
          work: { is: 'working', after: ['kg'] },
          answer: msg('sheet.answer', { amount: qty(weight, 'kg') }),
          values: [weight],
          accepted: [],
          steps: [
            msg('task.other-system.step', {
              line: math(litres, '×', shownOf(KG_PER_L, 2)),
              result: qty(weight, 'kg'),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.other-system.mistake', {
          wrong: qty(rounded(exactly(amount).div(factor), 1), other),
        }),
        why: msg(`task.other-system.why-${other}`, { one: qty(whole(1), unit) }),
      },
      fromBook: fromBook(
        sub(msg('sheet.herd-on', { on: onDay(day.date) })),
        day.readings,
        amount,
        context.measure,
      ),
    };
  },
});
