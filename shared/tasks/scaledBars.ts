// Read a bar graph with a scale of two, five or ten: one day of each doe.
import { shownIn, whole } from '../quantity/grade.ts';
import { math, msg, qty } from '../sheet/message.ts';
import { distinctBy, leastUsed, use, type DoeDay, type TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { nameOf, onDay } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

/** Scales of grade 3 (3.MD.B.3). A bar may end halfway between two lines of an even scale. */
const SCALES = [
  { scale: 2, step: 1 },
  { scale: 5, step: 5 },
  { scale: 10, step: 5 },
] as const;
const MOST_LINES = 12;
const MOST_BARS = 5;

interface Bar {
  readonly day: DoeDay;
  readonly value: number;
}
interface Graph {
  readonly date: string;
  readonly scale: number;
  readonly step: number;
  readonly bars: readonly Bar[];
}

function graphs(context: TaskContext): Graph[] {
  return context.week.days.flatMap(({ date }) => {
    const days = distinctBy(
      context.doeDays.filter((day) => day.date === date),
      ({ doe }) => doe.name,
    );
    const wholes = days.map((day) => ({ day, value: shownIn(day.total_mL, context.cups).num }));
    const most = Math.max(0, ...wholes.map(({ value }) => value));
    const fit = SCALES.find(({ scale }) => most <= scale * MOST_LINES);
    if (!fit) return [];
    const bars = wholes
      .map(({ day, value }) => ({ day, value: Math.floor(value / fit.step + 0.5) * fit.step }))
      .filter(({ value }) => value >= fit.step);
    return bars.length >= 3 && distinctBy(bars, ({ value }) => value).length >= 2
      ? [{ date, ...fit, bars }]
      : [];
  });
}

/** Scaled bar graphs, how many more and how many in all (3.MD.B.3). */
export const scaledBars = taskKind<Graph>({
  name: 'scaled-bars',
  bands: ['3-5'],
  standards: ['3.MD.B.3'],
  lack: 'no-three-does',
  candidates: graphs,
  touches: ({ date }) => [`herd|${date}`],
  make(context, { date, scale, step, bars }) {
    let shown = leastUsed(context, bars, Math.min(bars.length, MOST_BARS), ({ day }) => day.doe.id);
    if (distinctBy(shown, ({ value }) => value).length < 2) {
      const other = bars.find(({ value }) => value !== shown[0]?.value) as Bar;
      shown = [...shown.slice(1), other];
    }
    use(
      context,
      shown.map(({ day }) => day.doe.id),
    );
    return barTask(context, { date, scale, step, bars: shown });
  },
});

function barTask(context: TaskContext, { date, scale, step, bars }: Graph): Task {
  const { unit } = context.cups;
  const pairs = bars.flatMap((high) =>
    bars.filter((low) => low.value < high.value).map((low) => [high, low] as const),
  );
  const [high, low] = context.chance.pick(pairs);
  const rest = bars.filter((bar) => bar !== high);
  const [a, b] = context.chance.shuffle(rest) as [Bar, Bar];
  const difference = whole(high.value - low.value);
  const sum = whole(a.value + b.value);
  const most = Math.max(...bars.map(({ value }) => value));
  return {
    kind: 'scaled-bars',
    standards: ['3.MD.B.3'],
    lead: [
      step === 1
        ? msg('task.scaled-bars.lead-whole')
        : msg('task.scaled-bars.lead', { step: qty(whole(step), unit) }),
    ],
    picture: {
      is: 'bars',
      title: msg('task.scaled-bars.title', { on: onDay(date) }),
      unit,
      scale,
      top: Math.ceil(most / scale) * scale,
      bars: bars.map(({ day, value }) => ({ label: day.doe.name, value: whole(value) })),
    },
    asks: [
      {
        prompt: msg('task.scaled-bars.ask-more', { high: nameOf(high.day.doe), low: nameOf(low.day.doe) }),
        work: { is: 'boxes', after: [unit] },
        answer: msg('sheet.answer', { amount: qty(difference, unit) }),
        values: [difference],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(high.value), '−', whole(low.value), '=', difference) })],
      },
      {
        prompt: msg('task.scaled-bars.ask-both', { a: nameOf(a.day.doe), b: nameOf(b.day.doe) }),
        work: { is: 'boxes', after: [unit] },
        answer: msg('sheet.answer', { amount: qty(sum, unit) }),
        values: [sum],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(a.value), '+', whole(b.value), '=', sum) })],
      },
    ],
    mistake: {
      what: msg('task.scaled-bars.mistake', { scale: qty(whole(scale), unit) }),
      why: msg('task.scaled-bars.why', { scale: qty(whole(scale), unit) }),
    },
    fromBook: bars.flatMap(({ day, value }) =>
      fromBook(nameOf(day.doe), day.readings, whole(value), context.cups),
    ),
  };
}
