// From a small unit to a large one, and from a large one to a small one, within one system.
import Fraction from 'fraction.js';
import { shownIn, shownOf, whole, type Shown, type SheetUnit } from '../quantity/grade.ts';
import { math, msg, qty } from '../sheet/message.ts';
import type { HerdWholeDay, TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { asDecimal, onDay } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

interface Change {
  /** A day of the herd, or null for a pail that the task makes up. */
  readonly day: HerdWholeDay | null;
  /** The amount in the small unit: whole cups, or milliliters in tens. */
  readonly small: number;
}

// Cups to a quart and quarts to a gallon; milliliters to a liter.
const CUPS_A_QUART = 4;
const QUARTS_A_GALLON = 4;
const ML_A_LITRE = 1000;
const ML_STEP = 10;

const smallOf = (context: TaskContext, total_mL: number): number =>
  context.units === 'us' ? shownIn(total_mL, context.cups).num : Math.round(total_mL / ML_STEP) * ML_STEP;

/** A day that is no whole number of the large unit, so that the part has to be told too. */
const leavesPart = (context: TaskContext, small: number): boolean =>
  context.units === 'us'
    ? small > CUPS_A_QUART && small % CUPS_A_QUART !== 0
    : small > ML_A_LITRE && small % ML_A_LITRE !== 0;

function changes(context: TaskContext): Change[] {
  const days = context.herdDays
    .map((day): Change => ({ day, small: smallOf(context, day.total_mL) }))
    .filter(({ small }) => leavesPart(context, small));
  return days.length > 0 ? days : [{ day: null, small: context.units === 'us' ? 14 : 3250 }];
}

/** Conversion within a system, either way, in one and in several steps (5.MD.A.1). */
export const bothWays = taskKind<Change>({
  name: 'both-ways',
  bands: ['3-5'],
  standards: ['5.MD.A.1'],
  lack: 'no-milk',
  candidates: changes,
  touches: ({ day }) => (day ? [`herd|${day.date}`] : []),
  make: (context, change) => converted(context, change),
});

interface Units {
  readonly small: SheetUnit;
  readonly large: SheetUnit;
  readonly largest: SheetUnit;
}
const US: Units = { small: 'cup', large: 'qt', largest: 'gal' };
const METRIC: Units = { small: 'mL', large: 'L', largest: 'L' };

function converted(context: TaskContext, { day, small }: Change): Task {
  const us = context.units === 'us';
  const units = us ? US : METRIC;
  const large: Shown = us ? shownOf(new Fraction(small, CUPS_A_QUART)) : shownOf(new Fraction(small, ML_A_LITRE), 2);
  const can: Shown = us
    ? whole(context.chance.int(2, 6))
    : shownOf(new Fraction(context.chance.pick([15, 25, 35, 45]), 10), 1);
  const inSmall = us ? can.num * QUARTS_A_GALLON * CUPS_A_QUART : (can.num * ML_A_LITRE) / can.den;
  const system = us ? 'us' : 'metric';
  const factor = whole(us ? CUPS_A_QUART : ML_A_LITRE);
  const given = qty(whole(small), units.small);
  return {
    kind: 'both-ways',
    standards: ['5.MD.A.1'],
    lead: [
      msg(`task.both-ways.fact-${system}`),
      day ? msg('task.both-ways.lead', { amount: given, on: onDay(day.date) }) : msg('task.both-ways.lead-pail', { amount: given }),
    ],
    picture: null,
    asks: [
      {
        prompt: msg(`task.both-ways.ask-large-${system}`),
        work: { is: 'working', after: [units.large] },
        answer: msg('sheet.answer', { amount: qty(large, units.large) }),
        values: [large],
        accepted: us ? [...asDecimal(large), msg('sheet.answer-and', { a: qty(whole(Math.floor(small / CUPS_A_QUART)), units.large), b: qty(whole(small % CUPS_A_QUART), units.small) })] : [],
        steps: [msg('sheet.math', { line: math(whole(small), '÷', factor, '=', large) })],
      },
      {
        prompt: msg(`task.both-ways.ask-small-${system}`, { amount: qty(can, units.largest) }),
        work: { is: 'working', after: [units.small] },
        answer: msg('sheet.answer', { amount: qty(whole(inSmall), units.small) }),
        values: [whole(inSmall)],
        accepted: [],
        steps: us
          ? [
              msg('sheet.math', { line: math(can, '×', whole(QUARTS_A_GALLON), '=', whole(can.num * QUARTS_A_GALLON)) }),
              msg('sheet.math', { line: math(whole(can.num * QUARTS_A_GALLON), '×', factor, '=', whole(inSmall)) }),
            ]
          : [msg('sheet.math', { line: math(can, '×', factor, '=', whole(inSmall)) })],
      },
    ],
    mistake: {
      what: msg('task.both-ways.mistake', { wrong: qty(whole(small * factor.num), units.large) }),
      why: msg(`task.both-ways.why-${system}`),
    },
    fromBook: day && us ? fromBook({ is: 'message', message: msg('sheet.herd-on', { on: onDay(day.date) }) }, day.readings, whole(small), context.cups) : [],
  };
} // prettier-ignore
