// Larger units in smaller ones: quarts in cups, or litres in millilitres.
import Fraction from 'fraction.js';
import { shownIn, whole, type Measure } from '../quantity/grade.ts';
import { UNIT_ML } from '../quantity/units.ts';
import { math, msg, qty } from '../sheet/message.ts';
import type { TablePicture } from '../sheet/picture.ts';
import type { HerdWholeDay, TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { onDay } from './phrases.ts';
import { sub } from '../sheet/message.ts';
import { taskKind } from './task.ts';

interface Change {
  readonly day: HerdWholeDay;
  readonly large: number;
}

const QUART: Measure = { unit: 'cup', unit_mL: UNIT_ML.qt, den: 1 };
const LITRE: Measure = { unit: 'L', unit_mL: new Fraction(1000), den: 1 };
const measureFor = (context: TaskContext): Measure => (context.units === 'us' ? QUART : LITRE);
const LEAST = 2;

/** A larger unit in terms of a smaller one, in a two-column table (4.MD.A.1). Never the other way. */
export const largerToSmaller = taskKind<Change>({
  name: 'larger-to-smaller',
  bands: ['3-5'],
  standards: ['4.MD.A.1'],
  lack: 'no-whole-day',
  candidates: (context) =>
    context.herdDays
      .map((day) => ({ day, large: shownIn(day.total_mL, measureFor(context)).num }))
      .filter(({ large }) => large >= LEAST && large <= 999),
  touches: ({ day }) => [`herd|${day.date}`],
  make(context, { day, large }) {
    const us = context.units === 'us';
    const [big, small] = us ? (['qt', 'cup'] as const) : (['L', 'mL'] as const);
    const factor = us ? 4 : 1000;
    const shownRow = context.chance.int(2, 3);
    const asked = [1, 2, 3, 5].filter((n) => n !== shownRow);
    const table: TablePicture = {
      is: 'table',
      columns: [msg(`sheet.column.${big}`), msg(`sheet.column.${small}`)],
      rows: [1, 2, 3, 5].map((n) => [
        whole(n),
        n === shownRow ? whole(n * factor) : { blank: whole(n * factor) },
      ]),
    };
    const answer = whole(large * factor);
    return {
      kind: 'larger-to-smaller',
      standards: ['4.MD.A.1'],
      lead: [msg(`task.larger-to-smaller.lead-${big}`)],
      picture: table,
      asks: [
        {
          prompt: msg('task.larger-to-smaller.ask-table'),
          work: { is: 'picture' },
          answer: msg('task.larger-to-smaller.answer-table'),
          values: asked.map((n) => whole(n * factor)),
          accepted: [],
          steps: [msg('sheet.math', { line: math(whole(5), '×', whole(factor), '=', whole(5 * factor)) })],
          picture: table,
        },
        {
          prompt: msg(`task.larger-to-smaller.ask-herd-${small === 'cup' ? 'cup' : 'mL'}`, {
            amount: qty(whole(large), big),
            on: onDay(day.date),
          }),
          work: { is: 'working', after: [small] },
          answer: msg('sheet.answer', { amount: qty(answer, small) }),
          values: [answer],
          accepted: [],
          steps: [msg('sheet.math', { line: math(whole(large), '×', whole(factor), '=', answer) })],
        },
      ],
      mistake: {
        what: msg('task.larger-to-smaller.mistake', { wrong: qty(whole(large + factor), small) }),
        why: msg('task.larger-to-smaller.why', { one: qty(whole(1), big), many: qty(whole(factor), small) }),
      },
      fromBook: fromBook(
        sub(msg('sheet.herd-on', { on: onDay(day.date) })),
        day.readings,
        whole(large),
        measureFor(context),
      ).map((note) => ({ ...note, here: { ...whole(large), unit: big } })),
    };
  },
});
