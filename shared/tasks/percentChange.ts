// By what percent milk changed from one day to a later one.
import { exactly, rounded, shownIn, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, qty, sub, text, type Slot } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import type { Reading, TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { dayLabel, onDay } from './phrases.ts';
import { taskKind, type Ask, type Task } from './task.ts';

interface Change {
  readonly id: string;
  readonly who: Slot;
  readonly days: readonly [Day, Day];
  readonly shown: readonly [Shown, Shown];
}
interface Day {
  readonly date: string;
  readonly total_mL: number;
  readonly readings: readonly Reading[];
}

const LEAST_PERCENT = 2;
const MOST_PERCENT = 150;

function percentOf([before, after]: readonly [Shown, Shown]): Shown {
  return rounded(exactly(after).sub(exactly(before)).abs().div(exactly(before)).mul(100), 1);
}

function changes(context: TaskContext): Change[] {
  const milked = context.week.does.filter((doe) => (doe.total_mL ?? 0) > 0).length;
  // The herd of one doe is that doe.
  const herd = milked > 1 ? [{ id: 'herd', who: sub(msg('sheet.the-herd')), days: context.herdDays }] : [];
  const does = context.week.does.map((doe) => ({
    id: doe.id,
    who: text(doe.name),
    days: context.doeDays.filter((day) => day.doe.id === doe.id),
  }));
  return [...herd, ...does].flatMap(({ id, who, days }) =>
    days.flatMap((first, index): Change[] =>
      days.slice(index + 1).flatMap((second): Change[] => {
        const shown = [
          shownIn(first.total_mL, context.measure),
          shownIn(second.total_mL, context.measure),
        ] as const;
        if (shown.some(({ num }) => num <= 0)) return [];
        const percent = valueOf(percentOf(shown));
        const fair = percent >= LEAST_PERCENT && percent <= MOST_PERCENT;
        // Where the first amount is 100 the difference would be its own percent.
        return fair && valueOf(shown[0]) !== 100 ? [{ id, who, days: [first, second], shown }] : [];
      }),
    ),
  );
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, { who, days, shown }: Change) {
  const { unit, places = 1 } = context.measure;
  const [before, after] = shown;
  const rises = valueOf(after) > valueOf(before);
  const apart = rounded(exactly(after).sub(exactly(before)).abs(), places);
  const percent = percentOf(shown);
  const wrong = rounded(exactly(apart).div(exactly(after)).mul(100), 1);
  const again = rounded(exactly(after).mul(exactly(percent)).div(100), places);
  const next = rounded(exactly(after).add(exactly(again).mul(rises ? 1 : -1)), places);
  const way = rises ? 'rise' : 'fall';
  const wrongDiffers = valueOf(wrong) !== valueOf(percent);
  return {
    unit,
    before,
    after,
    rises,
    apart,
    percent,
    wrong,
    again,
    next,
    way,
    wrongDiffers,
    who,
    days,
    shown,
  };
}

function asksOf({
  unit,
  before,
  after,
  rises,
  apart,
  percent,
  again,
  next,
  way,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg(`task.percent-change.ask-${way}`),
      work: { is: 'working', after: ['percent'] },
      answer: msg('sheet.answer', { amount: qty(percent, 'percent') }),
      values: [percent],
      accepted: [],
      steps: [
        msg('sheet.math', {
          line: rises ? math(after, '−', before, '=', apart) : math(before, '−', after, '=', apart),
        }),
        msg('task.percent-change.step', {
          line: math(apart, '÷', before, '×', whole(100)),
          percent: qty(percent, 'percent'),
        }),
      ],
    },
    {
      prompt: msg(`task.percent-change.ask-again-${way}`),
      work: { is: 'working', after: [unit] },
      answer: msg('sheet.answer', { amount: qty(next, unit) }),
      values: [next],
      accepted: [msg('task.percent-change.accept-again')],
      steps: [
        msg('task.percent-change.step-again', {
          line: math(after, '×', percent, '÷', whole(100)),
          amount: qty(again, unit),
        }),
        msg('sheet.math', {
          line: rises ? math(after, '+', again, '=', next) : math(after, '−', again, '=', next),
        }),
      ],
    },
    askInWords(msg('task.percent-change.ask-say'), msg(`task.percent-change.answer-say`), 2, [
      msg('task.percent-change.accept-say'),
    ]),
  ];
}

function task(context: TaskContext, from: Change): Task {
  const worked = workOut(context, from);
  const { unit, before, after, wrong, wrongDiffers, who, days, shown } = worked;
  return {
    kind: 'percent-change',
    standards: ['7.RP.A.3'],
    lead: [
      msg('task.percent-change.lead', {
        who,
        before: qty(before, unit),
        on: onDay(days[0].date),
        after: qty(after, unit),
        later: onDay(days[1].date),
      }),
    ],
    picture: null,
    asks: asksOf(worked),
    mistake: wrongDiffers
      ? {
          what: msg('task.percent-change.mistake', { wrong: qty(wrong, 'percent') }),
          why: msg('task.percent-change.why'),
        }
      : { what: msg('task.percent-change.mistake-plain'), why: msg('task.percent-change.why') },
    fromBook: days.flatMap((day, index) =>
      fromBook(sub(dayLabel(day.date)), day.readings, shown[index] as Shown, context.measure),
    ),
  };
}

/** Percent increase and decrease (7.RP.A.3). */
export const percentChange = taskKind<Change>({
  name: 'percent-change',
  bands: ['6-8'],
  standards: ['7.RP.A.3'],
  lack: 'no-two-days',
  candidates: changes,
  touches: ({ id, days }) => [id, ...days.map(({ date }) => `${id}|${date}`)],
  make: task,
});
