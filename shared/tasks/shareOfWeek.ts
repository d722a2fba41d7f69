// One doe's share of the herd's week, as a percent.
import { exactly, rounded, shownIn, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { joined, math, msg, qty, text } from '../sheet/message.ts';
import type { DoeWeek } from '../herd/week.ts';
import { distinctBy, total, type TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { amountHeading } from './dayTable.ts';
import { nameOf } from './phrases.ts';
import { taskKind } from './task.ts';

const MOST_DOES = 8;
const HUNDRED = whole(100);

interface Share {
  readonly doe: DoeWeek;
  readonly does: readonly DoeWeek[];
  readonly shown: readonly Shown[];
  readonly sum: Shown;
  readonly percent: Shown;
}

function shares(context: TaskContext): Share[] {
  const { places = 1 } = context.measure;
  const does = distinctBy(
    context.week.does.filter((doe) => shownIn(doe.total_mL ?? 0, context.measure).num > 0),
    (doe) => doe.name,
  );
  // A herd too large for one table tells of the does that gave the most.
  const listed =
    does.length > MOST_DOES
      ? [...does].sort((a, b) => (b.total_mL ?? 0) - (a.total_mL ?? 0)).slice(0, MOST_DOES)
      : does;
  if (listed.length < 2) return [];
  const shown = listed.map((doe) => shownIn(doe.total_mL as number, context.measure));
  const sum = rounded(total(shown.map(exactly)), places);
  return (
    listed
      .map((doe, index) => ({
        doe,
        does: listed,
        shown,
        sum,
        percent: rounded(
          exactly(shown[index] as Shown)
            .div(exactly(sum))
            .mul(100),
          0,
        ),
      }))
      .filter(({ percent }) => percent.num >= 1 && percent.num <= 99)
      // A hundred in all would make the amount its own percent.
      .filter(({ doe, percent }) => valueOf(shown[listed.indexOf(doe)] as Shown) !== percent.num)
  );
}

/** A part as a percent of the whole (6.RP.A.3.c). */
export const shareOfWeek = taskKind<Share>({
  name: 'share-of-week',
  bands: ['6-8'],
  standards: ['6.RP.A.3.c'],
  lack: 'no-two-does',
  candidates: shares,
  touches: ({ doe }) => [doe.id],
  make(context, { doe, does, shown, sum, percent }) {
    const { unit } = context.measure;
    const part = shown[does.indexOf(doe)] as Shown;
    return {
      kind: 'share-of-week',
      standards: ['6.RP.A.3.c'],
      lead: [msg('task.share-of-week.lead')],
      picture: {
        is: 'table',
        columns: [
          msg('sheet.column.doe'),
          ...does.map((one) => msg('sheet.label.name', { name: text(one.name) })),
        ],
        rows: [[amountHeading(context), ...shown]],
      },
      asks: [
        {
          prompt: msg('task.share-of-week.ask-sum'),
          work: { is: 'working', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(sum, unit) }),
          values: [sum],
          accepted: [],
          steps: [msg('sheet.math', { line: math(...joined(shown, '+'), '=', sum) })],
        },
        {
          prompt: msg('task.share-of-week.ask-percent', { name: nameOf(doe) }),
          work: { is: 'working', after: ['percent'] },
          answer: msg('sheet.answer', { amount: qty(percent, 'percent') }),
          values: [percent],
          accepted: [],
          steps: [
            msg('task.share-of-week.step', {
              line: math(part, '÷', sum, '×', HUNDRED),
              percent: qty(percent, 'percent'),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.share-of-week.mistake', { wrong: qty(part, 'percent') }),
        why: msg('task.share-of-week.why', { amount: qty(part, unit), sum: qty(sum, unit) }),
      },
      fromBook: does.flatMap((one, index) =>
        fromBook(
          nameOf(one),
          context.readings.filter(({ doe: { id } }) => id === one.id),
          shown[index] as Shown,
          context.measure,
        ),
      ),
    };
  },
});
