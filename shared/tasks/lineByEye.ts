// A line drawn by eye through a scatter plot: use its equation, draw it, say what its slope means.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, math, msg, num, qty, type Slot } from '../sheet/message.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Ask, type Task } from './task.ts';
import { trends, type Trend } from './trend.ts';
import { trendPicture } from './trendPicture.ts';

/** So many steps of the last place apart, two distances are told from each other on paper. */
const CLEAR_STEPS = 3;

/** A line with fewer digits than least squares gives: as one would read it off a ruler. */
interface Eyed {
  readonly trend: Trend;
  readonly slope: Shown;
  readonly intercept: Shown;
  /** Which point lies farthest from the line. */
  readonly far: number;
  /** Whether the next one is so much nearer that the eye tells them apart. */
  readonly clear: boolean;
}

const onLine = ({ slope, intercept }: Pick<Eyed, 'slope' | 'intercept'>, x: number, places: number): Shown =>
  rounded(exactly(slope).mul(x).add(exactly(intercept)), places);

function eyed(trend: Trend): Eyed[] {
  const slope = rounded(exactly(trend.slope), trend.places);
  const intercept = rounded(exactly(trend.intercept), trend.places);
  if (slope.num === 0 || intercept.num <= 0 || valueOf(slope) === valueOf(intercept)) return [];
  const misses = trend.points.map(({ x, y }) =>
    Math.abs(valueOf(y) - valueOf(onLine({ slope, intercept }, x, trend.places))),
  );
  const most = Math.max(...misses);
  const farthest = misses.filter((miss) => miss > most - 1e-9);
  const next = Math.max(...misses.filter((miss) => miss <= most - 1e-9));
  const clear = most - next >= CLEAR_STEPS * 10 ** -trend.places - 1e-9;
  // One day must stand out, by more than an eye could miss.
  return farthest.length === 1 && most >= 2 * 10 ** -trend.places
    ? [{ trend, slope, intercept, far: misses.indexOf(most), clear }]
    : [];
}

function equation({ slope, intercept }: Eyed): Slot {
  const sign = intercept.num < 0 ? '−' : '+';
  return { is: 'math', line: ['y', '=', slope, 'x', sign, { ...intercept, num: Math.abs(intercept.num) }] };
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, one: Eyed) {
  const { unit } = context.measure;
  const { trend, slope, intercept } = one;
  const { places, points } = trend;
  const last = points.at(-1)?.x ?? 1;
  const [start, end] = [onLine(one, 1, places), onLine(one, last, places)];
  const far = points[one.far] as Trend['points'][number];
  const miss = rounded(
    exactly(far.y)
      .sub(exactly(onLine(one, far.x, places)))
      .abs(),
    places,
  );
  const size = { ...slope, num: Math.abs(slope.num) };
  const flipped = rounded(exactly(intercept).mul(last).add(exactly(slope)), places);
  return {
    unit,
    trend,
    slope,
    intercept,
    places,
    points,
    last,
    start,
    end,
    far,
    miss,
    size,
    flipped,
    one,
    context,
  };
}

function asksOf({
  unit,
  trend,
  slope,
  intercept,
  places,
  last,
  start,
  end,
  far,
  miss,
  size,
  one,
  context,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.line-by-eye.ask-ends', { last: count(last) }),
      work: { is: 'boxes', after: [unit, unit] },
      answer: msg('task.line-by-eye.answer-ends', { start: qty(start, unit), end: qty(end, unit) }),
      values: [start, end],
      accepted: [],
      steps: [
        msg('sheet.math', { line: math(slope, '×', whole(1), '+', intercept, '=', start) }),
        msg('sheet.math', { line: math(slope, '×', whole(last), '+', intercept, '=', end) }),
      ],
    },
    {
      prompt: msg('task.line-by-eye.ask-far'),
      work: { is: 'boxes', after: [null] },
      answer: msg('task.line-by-eye.answer-far', { day: count(far.x), miss: qty(miss, unit) }),
      values: [whole(far.x)],
      accepted: [],
      steps: [
        msg(
          `task.line-by-eye.step-${valueOf(far.y) > valueOf(onLine(one, far.x, places)) ? 'above' : 'below'}`,
          { day: num(whole(far.x)) },
        ),
      ],
      picture: { ...trendPicture(context, trend, false), line: { slope, intercept } },
    },
    {
      ...askInWords(
        msg('task.line-by-eye.ask-slope'),
        msg(`task.line-by-eye.answer-${slope.num > 0 ? 'rises' : 'falls'}`, { amount: qty(size, unit) }),
        3,
        [msg('task.line-by-eye.accept-slope')],
      ),
      values: [slope],
    },
  ];
}

function task(context: TaskContext, from: Eyed): Task {
  const worked = workOut(context, from);
  const { unit, trend, points, start, flipped, one } = worked;
  return {
    kind: 'line-by-eye',
    standards: ['8.SP.A.1', '8.SP.A.2', '8.SP.A.3'],
    lead: [
      msg(`task.line-by-eye.lead-${unit}`, { who: trend.who, n: count(points.length) }),
      msg('task.line-by-eye.line', { equation: equation(one) }),
    ],
    picture: trendPicture(context, trend, false),
    asks: asksOf(worked),
    mistake:
      valueOf(flipped) === valueOf(start)
        ? { what: msg('task.line-by-eye.mistake-plain'), why: msg('task.line-by-eye.why') }
        : {
            what: msg('task.line-by-eye.mistake', { wrong: qty(flipped, unit) }),
            why: msg('task.line-by-eye.why'),
          },
    fromBook: [],
  };
}

/** Scatter plots (8.SP.A.1), an informal line and how near it comes (8.SP.A.2), slope and intercept used (8.SP.A.3). */
export const lineByEye = taskKind<Eyed>({
  name: 'line-by-eye',
  bands: ['6-8'],
  standards: ['8.SP.A.1', '8.SP.A.2', '8.SP.A.3'],
  lack: 'no-five-days',
  candidates(context) {
    const all = trends(context).flatMap(eyed);
    const clear = all.filter((one) => one.clear);
    return clear.length > 0 ? clear : all;
  },
  touches: ({ trend }) => [`trend|${trend.id}`],
  make: task,
});
