// The same doe, two different days: what may have changed her milk, and how to test it.
import { exactly, rounded, shownIn, valueOf } from '../quantity/grade.ts';
import { math, msg, qty } from '../sheet/message.ts';
import { doesWithDays, type DoeDay, type TaskContext } from './context.ts';
import { runFromBook } from './dayTable.ts';
import { nameOf, onDay } from './phrases.ts';
import { taskKind } from './task.ts';

interface Pair {
  readonly high: DoeDay;
  readonly low: DoeDay;
}

function pairs(context: TaskContext): Pair[] {
  return doesWithDays(context, 2).flatMap(({ days }) => {
    const alike = days.filter(({ readings }) => readings.length === days[0]?.readings.length);
    const sorted = [...alike].sort((a, b) => b.total_mL - a.total_mL);
    const [high, low] = [sorted[0], sorted.at(-1)];
    if (!high || !low) return [];
    const [more, less] = [shownIn(high.total_mL, context.measure), shownIn(low.total_mL, context.measure)];
    return less.num > 0 && valueOf(more) > valueOf(less) ? [{ high, low }] : [];
  });
}

/** How the surroundings act on an animal beside her genes, argued from a number (MS-LS1-5). */
export const whatChangesMilk = taskKind<Pair>({
  name: 'what-changes-milk',
  bands: ['6-8'],
  standards: ['MS-LS1-5'],
  lack: 'no-two-days',
  candidates: pairs,
  touches: ({ high }) => [high.doe.id],
  make(context, { high, low }) {
    const { unit, places = 1 } = context.measure;
    const [more, less] = [shownIn(high.total_mL, context.measure), shownIn(low.total_mL, context.measure)];
    const difference = rounded(exactly(more).sub(exactly(less)), places);
    return {
      kind: 'what-changes-milk',
      standards: ['MS-LS1-5'],
      lead: [
        msg('task.what-changes-milk.lead', {
          name: nameOf(high.doe),
          more: qty(more, unit),
          onHigh: onDay(high.date),
          less: qty(less, unit),
          onLow: onDay(low.date),
        }),
        msg('task.what-changes-milk.genes'),
      ],
      picture: null,
      asks: [
        {
          prompt: msg('task.what-changes-milk.ask-difference'),
          work: { is: 'boxes', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(difference, unit) }),
          values: [difference],
          accepted: [],
          steps: [msg('sheet.math', { line: math(more, '−', less, '=', difference) })],
        },
        {
          prompt: msg('task.what-changes-milk.ask-why'),
          work: { is: 'lines', lines: 4 },
          answer: msg('task.what-changes-milk.answer'),
          values: [],
          accepted: [msg('task.what-changes-milk.accept')],
          steps: [msg('task.what-changes-milk.step')],
        },
      ],
      mistake: { what: msg('task.what-changes-milk.mistake'), why: msg('task.what-changes-milk.why') },
      fromBook: runFromBook(context, { doe: high.doe, days: [high, low], shown: [more, less] }),
    };
  },
});
