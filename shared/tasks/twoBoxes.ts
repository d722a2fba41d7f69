// Two does' milkings as box plots: how far apart, and how much they overlap.
import { exactly, rounded, valueOf, type Shown } from '../quantity/grade.ts';
import { math, msg, num, qty, text, type Message } from '../sheet/message.ts';
import type { BoxPlotsPicture } from '../sheet/picture.ts';
import { askInWords } from './askInWords.ts';
import type { TaskContext } from './context.ts';
import {
  doeMilkings,
  fiveNumbers,
  milkingsFromBook,
  roundSteps,
  type DoeMilkings,
  type FiveNumbers,
} from './doeMilkings.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const LEAST_MILKINGS = 6;

interface Pair {
  readonly does: readonly [DoeMilkings, DoeMilkings];
  readonly fives: readonly [FiveNumbers, FiveNumbers];
}

const widthOf = ({ q1, q3 }: FiveNumbers, places: number): Shown =>
  rounded(exactly(q3).sub(exactly(q1)), places + 1);

function pairs(context: TaskContext): Pair[] {
  const { places = 1 } = context.measure;
  const all = doeMilkings(context, LEAST_MILKINGS, 4).map((doe) => ({
    doe,
    five: fiveNumbers(doe.shown, places),
  }));
  return all.flatMap((a, index) =>
    all.slice(index + 1).flatMap((b): Pair[] => {
      const named = a.doe.doe.name !== b.doe.doe.name;
      const wide = [a, b].every(({ five }) => valueOf(five.q3) > valueOf(five.q1));
      const unlike = valueOf(widthOf(a.five, places)) !== valueOf(widthOf(b.five, places));
      const apart = valueOf(a.five.median) !== valueOf(b.five.median);
      return named && wide && unlike && apart ? [{ does: [a.doe, b.doe], fives: [a.five, b.five] }] : [];
    }),
  );
}

function pictureOf({ does, fives }: Pair, unit: 'cup' | 'L'): BoxPlotsPicture {
  return {
    is: 'box-plots',
    ...roundSteps(fives.flatMap(({ low, high }) => [low, high])),
    unit,
    boxes: fives.map((five, index) => ({ label: does[index]?.doe.name ?? '', ...five })),
  };
}

function fiveLine({ doe }: DoeMilkings, five: FiveNumbers): Message {
  const { low, q1, median, q3, high } = five;
  return msg('task.two-boxes.values', {
    name: text(doe.name),
    low: num(low),
    q1: num(q1),
    median: num(median),
    q3: num(q3),
    high: num(high),
  });
}

/** Everything that the task prints, worked out once. */
function workOut(context: TaskContext, pair: Pair) {
  const { unit, places = 1 } = context.measure;
  const [a, b] = pair.fives;
  const widths = [widthOf(a, places), widthOf(b, places)] as const;
  const wider = valueOf(widths[0]) > valueOf(widths[1]) ? widths[0] : widths[1];
  const [high, low] = valueOf(a.median) > valueOf(b.median) ? [a.median, b.median] : [b.median, a.median];
  const apart = rounded(exactly(high).sub(exactly(low)), places + 1);
  const times = rounded(exactly(apart).div(exactly(wider)), 1);
  const [up, down] = valueOf(a.q1) > valueOf(b.q1) ? [a.q1, b.q3] : [b.q1, a.q3];
  const gap = valueOf(up) - valueOf(down);
  // Boxes that share an edge and nothing more do neither overlap nor lie apart.
  const verdict =
    Math.abs(gap) < 1e-9 ? ('touch' as const) : gap > 0 ? ('apart' as const) : ('overlap' as const);
  const names = pair.does.map(({ doe }) => text(doe.name));
  const range = rounded(exactly(a.high).sub(exactly(a.low)), places);
  return { unit, widths, wider, high, low, apart, times, verdict, edge: up, names, range, pair };
}

function asksOf({
  unit,
  widths,
  wider,
  high,
  low,
  apart,
  times,
  verdict,
  edge,
  names,
  pair,
}: ReturnType<typeof workOut>): readonly Ask[] {
  return [
    {
      prompt: msg('task.two-boxes.ask-widths', { a: names[0] ?? text(''), b: names[1] ?? text('') }),
      work: { is: 'boxes', after: [unit, unit] },
      answer: msg('task.two-boxes.answer-widths', {
        first: qty(widths[0], unit),
        second: qty(widths[1], unit),
      }),
      values: [...widths],
      accepted: [],
      steps: pair.fives.map((five, index) =>
        msg('sheet.math', { line: math(five.q3, '−', five.q1, '=', widths[index] as Shown) }),
      ),
    },
    {
      prompt: msg('task.two-boxes.ask-apart'),
      work: { is: 'boxes', after: [unit, null] },
      answer: msg('task.two-boxes.answer-apart', { apart: qty(apart, unit), times: num(times) }),
      values: [apart, times],
      accepted: [],
      steps: [
        msg('sheet.math', { line: math(high, '−', low, '=', apart) }),
        msg('task.two-boxes.step-times', { line: math(apart, '÷', wider), times: num(times) }),
      ],
    },
    {
      ...askInWords(
        msg('task.two-boxes.ask-overlap'),
        verdict === 'touch'
          ? msg('task.two-boxes.answer-touch', { at: qty(edge, unit) })
          : msg(`task.two-boxes.answer-${verdict === 'overlap' ? 'overlap' : 'apart-boxes'}`),
        3,
        [msg('task.two-boxes.accept-overlap')],
      ),
      values: [verdict],
    },
  ];
}

function task(context: TaskContext, from: Pair): Task {
  const worked = workOut(context, from);
  const { unit, widths, range, pair } = worked;
  return {
    kind: 'two-boxes',
    standards: ['7.SP.B.3', '7.SP.B.4'],
    lead: [
      msg(`task.two-boxes.lead-${unit}`),
      ...pair.does.map((doe, index) => fiveLine(doe, pair.fives[index] as FiveNumbers)),
    ],
    picture: pictureOf(pair, unit),
    asks: asksOf(worked),
    mistake:
      valueOf(range) === valueOf(widths[0])
        ? { what: msg('task.two-boxes.mistake-plain'), why: msg('task.two-boxes.why') }
        : {
            what: msg('task.two-boxes.mistake', { wrong: qty(range, unit) }),
            why: msg('task.two-boxes.why'),
          },
    fromBook: pair.does.flatMap((doe) => milkingsFromBook(context, doe)),
  };
}

/** Two distributions compared by centre, spread and overlap (7.SP.B.3, 7.SP.B.4). */
export const twoBoxes = taskKind<Pair>({
  name: 'two-boxes',
  bands: ['6-8'],
  standards: ['7.SP.B.3', '7.SP.B.4'],
  lack: 'no-two-weeks',
  candidates: pairs,
  touches: ({ does }) => does.flatMap(({ doe }) => [doe.id, `${doe.id}|box`]),
  make: task,
});
