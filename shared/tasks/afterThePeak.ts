// Milk after the peak: does it fall by the same amount, or by the same factor?
import Fraction from 'fraction.js';
import { exactly, rounded, valueOf, type Shown, type SheetUnit } from '../quantity/grade.ts';
import { count, math, msg, num, qty, sub, type Slot } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import { ownSeries, type WeekSeries } from './lactationSeries.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Ask, type Task } from './task.ts';

/** Three amounts, each so many weeks or days after the one before. */
interface Fall {
  readonly id: string;
  readonly who: Slot;
  readonly by: 'week' | 'day';
  readonly unit: SheetUnit;
  readonly places: number;
  readonly at: readonly [number, number, number];
  readonly y: readonly [Shown, Shown, Shown];
}

/** The curve y = 2.0·x^0.20·e^(−0.004x) of a doe that is made up, in kg a day: worked out beside our hand-outs. */
const MODEL: readonly [number, string][] = [[100, '3.37'], [150, '2.99'], [200, '2.59'], [250, '2.22']]; // prettier-ignore
const MODEL_FALLS: readonly Fall[] = [0, 1].map((from) => {
  const [a, b, c] = MODEL.slice(from, from + 3) as [[number, string], [number, string], [number, string]];
  const shown = ([, text]: readonly [number, string]) => rounded(new Fraction(text), 2);
  return {
    id: `model-${from}`,
    who: sub(msg('task.curve.model-doe')),
    by: 'day' as const,
    unit: 'kg' as const,
    places: 2,
    at: [a[0], b[0], c[0]] as const,
    y: [shown(a), shown(b), shown(c)] as const,
  };
});

/** What each model says for the third: as much less again, or by the same factor (rounded to three places). */
function modelsOf({ y: [first, second], places }: Pick<Fall, 'y' | 'places'>) {
  const apart = rounded(exactly(first).sub(exactly(second)), places);
  const factor = rounded(exactly(second).div(exactly(first)), 3);
  return {
    apart,
    factor,
    linear: rounded(exactly(second).sub(exactly(apart)), places),
    exponential: rounded(exactly(second).mul(exactly(factor)), places),
  };
}

const missOf = (model: Shown, observed: Shown): number => Math.abs(valueOf(model) - valueOf(observed));

/** Falls that tell the two models apart: milk falls twice, and one model comes nearer than the other. */
function isTelling(fall: Fall): boolean {
  const [first, second, third] = fall.y;
  // First of all the fall itself: of nothing there is no factor.
  const falls = valueOf(first) > valueOf(second) && valueOf(second) > valueOf(third) && third.num > 0;
  if (!falls) return false;
  const { linear, exponential } = modelsOf(fall);
  const differ = valueOf(linear) !== valueOf(exponential) && linear.num > 0;
  return differ && Math.abs(missOf(linear, third) - missOf(exponential, third)) > 1e-9;
}

const GAPS = [12, 10, 8, 6] as const;

/** The widest even stretch of an own lactation after its highest week. */
function fallsOf(series: WeekSeries): Fall[] {
  const top = series.weeks.reduce(
    (best, one) => (valueOf(one.y) > valueOf(best.y) ? one : best),
    series.weeks[0] ?? { week: 0, y: { num: 0, den: 1 } },
  );
  const after = series.weeks.filter(({ week }) => week >= top.week);
  const of = (week: number) => after.find((one) => one.week === week);
  for (const gap of GAPS) {
    const found = after.flatMap(({ week }): Fall[] => {
      const [a, b, c] = [of(week), of(week + gap), of(week + 2 * gap)];
      if (!a || !b || !c) return [];
      const { id, who, unit, places } = series;
      return [{ id, who, unit, places, by: 'week', at: [a.week, b.week, c.week], y: [a.y, b.y, c.y] }];
    });
    const telling = found.filter(isTelling);
    if (telling.length > 0) return telling.slice(0, 3);
  }
  return [];
}

/** Everything that the task prints, worked out once. */
function workOut(_: TaskContext, fall: Fall) {
  const { unit, by, at, y, places } = fall;
  const { apart, factor, linear, exponential } = modelsOf(fall);
  const nearer: 'linear' | 'exponential' =
    missOf(linear, y[2]) < missOf(exponential, y[2]) ? 'linear' : 'exponential';
  const gap = at[1] - at[0];
  // Where the line meets zero: whole weeks or days after the second amount.
  const zero = rounded(exactly(y[1]).div(exactly(apart)).mul(gap).add(at[1]), 0);
  const names = {
    linear: sub(msg('task.after-the-peak.linear')),
    exponential: sub(msg('task.after-the-peak.exponential')),
  };
  const third = sub(msg(`task.after-the-peak.${by}`, { x: count(at[2]) }));
  return {
    unit,
    by,
    at,
    y,
    places,
    apart,
    factor,
    linear,
    exponential,
    nearer,
    gap,
    zero,
    names,
    third,
    fall,
  };
}

function firstAsks({
  unit,
  by,
  y,
  apart,
  factor,
  linear,
  exponential,
  gap,
  third,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg(`task.after-the-peak.ask-change-${by}`, { n: count(gap) }),
      work: { is: 'boxes', after: [unit, null] },
      answer: msg('task.after-the-peak.answer-change', { apart: qty(apart, unit), factor: num(factor) }),
      values: [apart, factor],
      accepted: [],
      steps: [
        msg('sheet.math', { line: math(y[0], '−', y[1], '=', apart) }),
        msg('task.after-the-peak.step-factor', { line: math(y[1], '÷', y[0]), factor: num(factor) }),
      ],
    },
    {
      prompt: msg('task.after-the-peak.ask-next', { third }),
      work: { is: 'boxes', after: [unit, unit] },
      answer: msg('task.after-the-peak.answer-next', {
        linear: qty(linear, unit),
        exponential: qty(exponential, unit),
      }),
      values: [linear, exponential],
      accepted: [],
      steps: [
        msg('sheet.math', { line: math(y[1], '−', apart, '=', linear) }),
        msg('task.after-the-peak.step-next', { line: math(y[1], '×', factor), result: num(exponential) }),
      ],
    },
  ];
}

function lastAsks({
  unit,
  by,
  y,
  places,
  linear,
  exponential,
  nearer,
  zero,
  names,
  third,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.after-the-peak.ask-nearer', { third, observed: qty(y[2], unit) }),
      work: { is: 'ring', of: [names.linear, names.exponential] },
      answer: msg('sheet.answer-name', { name: names[nearer] }),
      values: [nearer],
      accepted: [],
      steps: [
        msg('task.after-the-peak.step-nearer', {
          linear: qty(rounded(exactly(linear).sub(exactly(y[2])).abs(), places), unit),
          exponential: qty(rounded(exactly(exponential).sub(exactly(y[2])).abs(), places), unit),
        }),
      ],
    },
    askInWords(
      msg('task.after-the-peak.ask-far'),
      msg(`task.after-the-peak.answer-far-${by}`, { zero: num(zero) }),
      3,
      [msg('task.after-the-peak.accept-far')],
    ),
  ];
}

function task(context: TaskContext, from: Fall): Task {
  const worked = workOut(context, from);
  const { unit, by, at, y, fall } = worked;
  return {
    kind: 'after-the-peak',
    standards: ['HSF-LE.A.1', 'HSF-LE.A.2'],
    lead: [
      msg(`task.after-the-peak.lead-${unit}`, { who: fall.who }),
      msg(`task.after-the-peak.amounts-${by}`, {
        first: count(at[0]),
        second: count(at[1]),
        a: qty(y[0], unit),
        b: qty(y[1], unit),
      }),
    ],
    picture: null,
    asks: [...firstAsks(worked), ...lastAsks(worked)],
    mistake: { what: msg('task.after-the-peak.mistake'), why: msg('task.after-the-peak.why') },
    fromBook: [],
  };
}

/** Linear or exponential (HSF-LE.A.1), both built from two values (HSF-LE.A.2). */
export const afterThePeak = taskKind<Fall>({
  name: 'after-the-peak',
  bands: ['9-12'],
  standards: ['HSF-LE.A.1', 'HSF-LE.A.2'],
  lack: 'nothing',
  candidates(context) {
    const own = ownSeries(context).flatMap(fallsOf);
    return own.length > 0 ? own : MODEL_FALLS;
  },
  touches: ({ id }) => [`curve|${id}`],
  make: task,
});
