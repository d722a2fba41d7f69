// Read a lactation curve: where it peaks, how high, and how fast milk falls after that.
import { exactly, rounded, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, type Slot } from '../sheet/message.ts';
import type { CurvePicture } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';
import { curveValue, peakOf, printedCurves, type PrintedCurve } from './lactationCurves.ts';
import { taskKind, type Ask, type Task } from './task.ts';

/** How many days after its peak the curve is read again. */
const AFTER = 100;

function pictureOf(curve: PrintedCurve, last: number): CurvePicture {
  const { a, b, c, points, unit } = curve;
  return {
    is: 'curve',
    points,
    wood: { a, b, c },
    line: null,
    last: Math.max(last, ...points.map(({ x }) => x)),
    xLabel: msg('sheet.axis.day-since'),
    yLabel: msg(`sheet.axis.a-day-${unit}`),
  };
}

/** The printed equation: y = a · x^b · e^(−c · x), as a calculator takes it. */
function equationSlots({ a, b, c }: PrintedCurve): Record<string, Slot> {
  return { a: num(a), b: num(b), c: num(c) };
}

/** Everything that the task prints, worked out once. */
function workOut(_: TaskContext, curve: PrintedCurve) {
  const { unit, b, c } = curve;
  const peak = peakOf(curve);
  const day = Math.round(valueOf(peak));
  const far = day + AFTER;
  const [high, low] = [curveValue(curve, day), curveValue(curve, far)];
  const rate = rounded(exactly(low).sub(exactly(high)).div(AFTER), curve.places + 2);
  const drop: Shown = { ...rate, num: Math.abs(rate.num) };
  const flipped = rounded(exactly(c).div(exactly(b)), 3);
  return { unit, b, c, peak, day, far, high, low, rate, drop, flipped, curve };
}

function asksOf({
  unit,
  b,
  c,
  peak,
  day,
  far,
  high,
  low,
  rate,
  drop,
  curve,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.wood-peak.ask-day'),
      work: { is: 'boxes', after: [null] },
      answer: msg('task.wood-peak.answer-day', { day: num(peak) }),
      values: [peak],
      accepted: [msg('task.wood-peak.accept-day', { day: num(whole(day)) })],
      steps: [msg('task.wood-peak.step-day', { line: math(b, '÷', c), day: num(peak) })],
    },
    {
      prompt: msg('task.wood-peak.ask-height', { day: num(whole(day)) }),
      work: { is: 'working', after: [unit] },
      answer: msg('sheet.answer', { amount: qty(high, unit) }),
      values: [high],
      accepted: [],
      steps: [
        msg('task.wood-peak.step-height', {
          ...equationSlots(curve),
          day: num(whole(day)),
          high: qty(high, unit),
        }),
      ],
    },
    {
      prompt: msg('task.wood-peak.ask-rate', {
        day: num(whole(day)),
        far: num(whole(far)),
        low: qty(low, unit),
      }),
      work: { is: 'working', after: [unit] },
      answer: msg('task.wood-peak.answer-rate', { rate: qty(rate, unit), drop: qty(drop, unit) }),
      values: [rate],
      accepted: [],
      steps: [
        msg('task.wood-peak.step-rate', {
          line: math('(', low, '−', high, ')', '÷', whole(AFTER)),
          rate: num(rate),
        }),
      ],
    },
  ];
}

function task(context: TaskContext, from: PrintedCurve): Task {
  const worked = workOut(context, from);
  const { unit, far, flipped, curve } = worked;
  return {
    kind: 'wood-peak',
    standards: ['HSF-IF.B.4', 'HSF-IF.B.6'],
    lead: [
      msg(`task.wood-peak.lead-${unit}`, { who: curve.who }),
      msg('task.wood-peak.curve', equationSlots(curve)),
      msg('task.wood-peak.rule'),
    ],
    picture: pictureOf(curve, Math.max(300, far)),
    asks: asksOf(worked),
    mistake: {
      what: msg('task.wood-peak.mistake', { flipped: num(flipped) }),
      why: msg('task.wood-peak.why'),
    },
    fromBook: [],
  };
}

/** Key features of a graph (HSF-IF.B.4) and its average rate of change (HSF-IF.B.6). */
export const woodPeak = taskKind<PrintedCurve>({
  name: 'wood-peak',
  bands: ['9-12'],
  standards: ['HSF-IF.B.4', 'HSF-IF.B.6'],
  lack: 'nothing',
  candidates: printedCurves,
  touches: ({ id }) => [`curve|${id}`],
  make: task,
});
