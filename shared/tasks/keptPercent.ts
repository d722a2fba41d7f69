// What part of the week's milk was kept for the kitchen.
import { USES, type Use } from '../herd/types.ts';
import { exactly, rounded, shownIn, whole, type Shown } from '../quantity/grade.ts';
import { joined, math, msg, qty } from '../sheet/message.ts';
import { total, type TaskContext } from './context.ts';
import { amountHeading } from './dayTable.ts';
import { taskKind } from './task.ts';

interface Uses {
  readonly uses: readonly Use[];
  readonly shown: readonly Shown[];
  readonly sum: Shown;
  readonly percent: Shown;
}

function uses(context: TaskContext): Uses[] {
  const { places = 1 } = context.measure;
  const met = USES.filter((use) => shownIn(context.week.uses_mL[use], context.measure).num > 0);
  if (met.length < 2 || !met.includes('kept')) return [];
  const shown = met.map((use) => shownIn(context.week.uses_mL[use], context.measure));
  const sum = rounded(total(shown.map(exactly)), places);
  const percent = rounded(
    exactly(shown[met.indexOf('kept')] as Shown)
      .div(exactly(sum))
      .mul(100),
    0,
  );
  return percent.num >= 1 && percent.num <= 99 ? [{ uses: met, shown, sum, percent }] : [];
}

/** A part as a percent of the whole, by what became of the milk (6.RP.A.3.c). */
export const keptPercent = taskKind<Uses>({
  name: 'kept-percent',
  bands: ['6-8'],
  standards: ['6.RP.A.3.c'],
  lack: 'all-milk-kept',
  candidates: uses,
  touches: () => [],
  make(context, { uses: met, shown, sum, percent }) {
    const { unit } = context.measure;
    const kept = shown[met.indexOf('kept')] as Shown;
    const rest = rounded(exactly(sum).sub(exactly(kept)), context.measure.places ?? 1);
    return {
      kind: 'kept-percent',
      standards: ['6.RP.A.3.c'],
      lead: [msg('task.kept-percent.lead')],
      picture: {
        is: 'table',
        columns: [msg('sheet.column.use'), ...met.map((use) => msg(`sheet.use.${use}`))],
        rows: [[amountHeading(context), ...shown]],
      },
      asks: [
        {
          prompt: msg('task.kept-percent.ask'),
          work: { is: 'working', after: ['percent'] },
          answer: msg('sheet.answer', { amount: qty(percent, 'percent') }),
          values: [percent],
          accepted: [],
          steps: [
            msg('sheet.math', { line: math(...joined(shown, '+'), '=', sum) }),
            msg('task.share-of-week.step', {
              line: math(kept, '÷', sum, '×', whole(100)),
              percent: qty(percent, 'percent'),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.kept-percent.mistake', { kept: qty(kept, unit), rest: qty(rest, unit) }),
        why: msg('task.kept-percent.why'),
      },
      fromBook: [],
    };
  },
});
