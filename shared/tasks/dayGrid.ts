// Plot a doe's days on a grid: first the day, then the milk.
import { dayNumber } from '../calendar/day.ts';
import { shownIn, whole } from '../quantity/grade.ts';
import { count, math, msg, qty, row, sub } from '../sheet/message.ts';
import type { DoeWeek } from '../herd/week.ts';
import { doesWithDays, type DoeDay, type TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { nameOf, onDay } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

const LEAST_DAYS = 4;
const WEEK_DAYS = 7;
// A grid with more steps than this is too fine to plot on by hand.
const MOST_STEPS = 12;
const MOST_CUPS = 30;

interface Plotted {
  readonly doe: DoeWeek;
  readonly points: readonly { readonly x: number; readonly cups: number; readonly day: DoeDay }[];
}

function plots(context: TaskContext): Plotted[] {
  const from = context.week.window ? dayNumber(context.week.window.from) : null;
  if (from === null) return [];
  return doesWithDays(context, LEAST_DAYS)
    .map(({ doe, days }): Plotted => ({
      doe,
      points: days.map((day) => ({
        x: (dayNumber(day.date) as number) - from + 1,
        cups: shownIn(day.total_mL, context.cups).num,
        day,
      })),
    }))
    .filter(({ points }) => {
      const cups = points.map((one) => one.cups);
      const most = Math.max(...cups);
      // A pair told the wrong way round must be another point.
      if (points.every(({ x, cups: y }) => x === y)) return false;
      // One day stands above all others, so that "the most" has one answer.
      return Math.min(...cups) >= 1 && most <= MOST_CUPS && cups.filter((one) => one === most).length === 1;
    });
}

/** Points in the first quadrant, and what they say (5.G.A.2). */
export const dayGrid = taskKind<Plotted>({
  name: 'day-grid',
  bands: ['3-5'],
  standards: ['5.G.A.2'],
  lack: 'no-week-of-one-doe',
  candidates: plots,
  touches: ({ doe }) => [doe.id],
  make: (context, plotted) => grid(context, plotted),
});

const pair = (one: { x: number; cups: number }) =>
  sub(msg('task.day-grid.pair', { x: count(one.x), y: count(one.cups) }));
const stepFor = (most: number): number => [1, 2, 5].find((step) => most / step <= MOST_STEPS) ?? 5;

function grid(context: TaskContext, { doe, points }: Plotted): Task {
  const most = points.reduce((best, one) => (one.cups > best.cups ? one : best));
  const least = points.reduce((best, one) => (one.cups < best.cups ? one : best));
  const turned = points.find(({ x, cups }) => x !== cups) ?? most;
  const yStep = stepFor(most.cups);
  const picture = {
    is: 'grid' as const,
    xTop: WEEK_DAYS,
    yTop: Math.ceil(most.cups / yStep) * yStep,
    yStep,
    xLabel: msg('task.day-grid.axis-x'),
    yLabel: msg('task.day-grid.axis-y'),
    points: [],
  };
  const difference = whole(most.cups - least.cups);
  return {
    kind: 'day-grid',
    standards: ['5.G.A.2'],
    lead: [
      msg('task.day-grid.lead', { name: nameOf(doe) }),
      msg('task.day-grid.values', { values: row(points.map(pair)) }),
      ...(points.length < WEEK_DAYS ? [msg('task.day-grid.gap')] : []),
    ],
    picture,
    asks: [
      {
        prompt: msg('task.day-grid.ask-plot'),
        work: { is: 'picture' },
        answer: msg('task.day-grid.answer-plot'),
        values: points.flatMap(({ x, cups }) => [whole(x), whole(cups)]),
        accepted: [],
        steps: [],
        picture: { ...picture, points: points.map(({ x, cups }) => ({ x, y: whole(cups) })) },
      },
      {
        prompt: msg('task.day-grid.ask-most'),
        work: { is: 'boxes', after: [null] },
        answer: msg('task.day-grid.answer-most', { x: count(most.x) }),
        values: [whole(most.x)],
        accepted: [],
        steps: [msg('task.day-grid.step', { pair: pair(most) })],
      },
      {
        prompt: msg('task.day-grid.ask-more', { a: count(most.x), b: count(least.x) }),
        work: { is: 'boxes', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(difference, 'cup') }),
        values: [difference],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(most.cups), '−', whole(least.cups), '=', difference) })],
      },
    ],
    mistake: {
      what: msg('task.day-grid.mistake', { pair: pair({ x: turned.cups, cups: turned.x }) }),
      why: msg('task.day-grid.why'),
    },
    fromBook: points.flatMap(({ day, cups }) =>
      fromBook(sub(msg('sheet.doe-on', { name: nameOf(doe), on: onDay(day.date) })), day.readings, whole(cups), context.cups),
    ),
  };
} // prettier-ignore
