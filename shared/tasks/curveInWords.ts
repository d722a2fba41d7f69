// A lactation told in words: when milk rises, when it is highest, when and how fast it falls.
import { exactly, rounded, valueOf, whole } from '../quantity/grade.ts';
import { count, math, msg, num, qty } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { cowSeries, ownSeries, type WeekSeries } from './lactationSeries.ts';
import { taskKind, type Ask, type Task } from './task.ts';

interface Told {
  readonly series: WeekSeries;
  readonly top: WeekSeries['weeks'][number];
  readonly last: WeekSeries['weeks'][number];
}

/** Series with one highest week, and at least four weeks of fall after it. */
function told(series: WeekSeries): Told[] {
  const { weeks } = series;
  const most = Math.max(...weeks.map(({ y }) => valueOf(y)));
  const tops = weeks.filter(({ y }) => valueOf(y) > most - 1e-9);
  const [top, last] = [tops[0], weeks.at(-1)];
  if (!top || !last || tops.length > 1 || last.week - top.week < 4) return [];
  return valueOf(last.y) < most && last.y.num > 0 ? [{ series, top, last }] : [];
}

/** Everything that the task prints, worked out once. */
function workOut(_: TaskContext, { series, top, last }: Told) {
  const { unit, weeks, places } = series;
  const first = weeks[0] as Told['top'];
  const rises = first.week < top.week && valueOf(first.y) < valueOf(top.y);
  const span = last.week - top.week;
  const apart = rounded(exactly(top.y).sub(exactly(last.y)), places);
  const rate = rounded(exactly(apart).div(span), Math.min(3, places + 1));
  const wrong = rounded(exactly(apart).div(last.week), Math.min(3, places + 1));
  const wrongDiffers = valueOf(wrong) !== valueOf(rate);
  return { unit, weeks, first, rises, span, apart, rate, wrong, wrongDiffers, series, top, last };
}

function asksOf({
  unit,
  first,
  rises,
  span,
  apart,
  rate,
  top,
  last,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.curve-in-words.ask-top'),
      work: { is: 'boxes', after: [null] },
      answer: msg('task.curve-in-words.answer-top', { week: count(top.week) }),
      values: [whole(top.week)],
      accepted: [msg('task.curve-in-words.accept-top')],
      steps: [msg('task.curve-in-words.step-top', { high: qty(top.y, unit) })],
    },
    {
      prompt: msg(`task.curve-in-words.ask-rate-${rate.places ?? 2}`, {
        high: qty(top.y, unit),
        low: qty(last.y, unit),
        last: count(last.week),
      }),
      work: { is: 'working', after: [unit] },
      answer: msg('task.curve-in-words.answer-rate', { rate: qty(rate, unit) }),
      values: [rate],
      accepted: [msg('task.curve-in-words.accept-rate')],
      steps: [
        msg('sheet.math', { line: math(top.y, '−', last.y, '=', apart) }),
        msg('task.curve-in-words.step-rate', { line: math(apart, '÷', whole(span)), rate: num(rate) }),
      ],
    },
    askInWords(
      msg('task.curve-in-words.ask-words'),
      msg(`task.curve-in-words.answer-${rises ? 'rise-fall' : 'fall'}`, {
        first: count(first.week),
        top: count(top.week),
        last: count(last.week),
      }),
      4,
      [msg('task.curve-in-words.accept-words')],
    ),
  ];
}

function task(context: TaskContext, from: Told): Task {
  const worked = workOut(context, from);
  const { unit, weeks, wrong, wrongDiffers, series, last } = worked;
  return {
    kind: 'curve-in-words',
    standards: ['8.F.B.4', '8.F.B.5'],
    lead: [msg(`task.curve-in-words.lead-${series.own ? unit : 'fat'}`, { who: series.who })],
    picture: {
      is: 'curve',
      points: weeks.map(({ week, y }) => ({ x: week, y })),
      wood: null,
      line: null,
      last: last.week,
      xLabel: msg('sheet.axis.week'),
      yLabel: msg(`sheet.axis.a-day-${unit}`),
    },
    asks: asksOf(worked),
    mistake: wrongDiffers
      ? {
          what: msg('task.curve-in-words.mistake', { wrong: qty(wrong, unit) }),
          why: msg('task.curve-in-words.why'),
        }
      : { what: msg('task.curve-in-words.mistake-plain'), why: msg('task.curve-in-words.why') },
    fromBook: [],
  };
}

/** A graph told in words (8.F.B.5), and its rate of change between two places (8.F.B.4). */
export const curveInWords = taskKind<Told>({
  name: 'curve-in-words',
  bands: ['6-8'],
  standards: ['8.F.B.4', '8.F.B.5'],
  lack: 'nothing',
  candidates(context) {
    const own = ownSeries(context).flatMap(told);
    return own.length > 0 ? own : told(cowSeries());
  },
  touches: ({ series }) => [`curve|${series.id}`],
  make: task,
});
