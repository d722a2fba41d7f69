// How many times as much: multiplying to compare, beside how much more.
import { shownIn, whole } from '../quantity/grade.ts';
import type { SheetUnit } from '../quantity/grade.ts';
import { math, msg, num, qty, sub, type Message, type Slot } from '../sheet/message.ts';
import { type DoeDay, type TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { nameOf, onDay } from './phrases.ts';
import { taskKind, type FromBook, type Task } from './task.ts';

interface Compared {
  readonly large: number;
  readonly small: number;
  readonly unit: SheetUnit;
  readonly days: readonly [DoeDay, DoeDay] | null;
  readonly touch: readonly string[];
}

const MOST_TIMES = 12;
// A newborn kid weighs about 3 kg, a doe about 50 to 65 kg: the numbers of the story keep to that (from memory).
const KID_KG = 3;
const DOE_TIMES = [17, 18, 19, 20, 21] as const;
const WEIGHTS: readonly Compared[] = DOE_TIMES.map((times) => ({
  large: KID_KG * times,
  small: KID_KG,
  unit: 'kg',
  days: null,
  touch: [`times ${times}`],
}));

/** Pairs of does of one day, the one a whole number of times the other; or a doe and her kid on a scale. */
function pairs(context: TaskContext): readonly Compared[] {
  const cups = (one: DoeDay) => shownIn(one.total_mL, context.cups).num;
  const found = context.doeDays.flatMap((a) =>
    context.doeDays
      .filter((b) => b.date === a.date && b.doe.name !== a.doe.name && cups(b) >= 2)
      // Twice one, or three times one and a half: where both ways of comparing agree, neither is told apart.
      .filter((b) => cups(a) % cups(b) === 0 && cups(a) > cups(b) && cups(a) / cups(b) <= MOST_TIMES)
      .filter((b) => cups(a) / cups(b) !== cups(a) - cups(b))
      .map((b): Compared => ({ large: cups(a), small: cups(b), unit: 'cup', days: [a, b], touch: [a.doe.id, b.doe.id] })),
  );
  return found.length > 0 ? found : WEIGHTS;
} // prettier-ignore

/** Multiplicative comparison, told apart from additive comparison (4.OA.A.2). */
export const timesAsMany = taskKind<Compared>({
  name: 'times-as-many',
  bands: ['3-5'],
  standards: ['4.OA.A.2'],
  lack: 'no-milk',
  candidates: pairs,
  touches: ({ touch }) => touch,
  make: (context, compared) => times(context, compared),
});

function times(context: TaskContext, { large, small, unit, days }: Compared): Task {
  const amounts = { large: qty(whole(large), unit), small: qty(whole(small), unit) };
  const key = days ? 'milk' : 'weight';
  const names: Readonly<Record<string, Slot>> = days
    ? { a: nameOf(days[0].doe), b: nameOf(days[1].doe) }
    : {};
  const told = (name: string): Message => msg(`task.times-as-many.${name}-${key}`, names);
  const factor = whole(large / small);
  const more = whole(large - small);
  return {
    kind: 'times-as-many',
    standards: ['4.OA.A.2'],
    lead: [
      msg(`task.times-as-many.lead-${key}`, {
        ...amounts,
        ...names,
        ...(days ? { on: onDay(days[0].date) } : {}),
      }),
    ],
    picture: null,
    asks: [
      {
        prompt: told('ask-times'),
        work: { is: 'working', after: [null] },
        answer: msg('task.times-as-many.answer', { times: num(factor) }),
        values: [factor],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(large), '÷', whole(small), '=', factor) })],
      },
      {
        prompt: told('ask-more'),
        work: { is: 'boxes', after: [unit] },
        answer: msg('sheet.answer', { amount: qty(more, unit) }),
        values: [more],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(large), '−', whole(small), '=', more) })],
      },
    ],
    mistake: {
      what: msg('task.times-as-many.mistake', { wrong: num(more) }),
      why: msg('task.times-as-many.why'),
    },
    fromBook: days ? days.flatMap((one): readonly FromBook[] => bookOf(context, one)) : [],
  };
}

function bookOf(context: TaskContext, one: DoeDay): readonly FromBook[] {
  const what = sub(msg('sheet.doe-on', { name: nameOf(one.doe), on: onDay(one.date) }));
  return fromBook(what, one.readings, shownIn(one.total_mL, context.cups), context.cups);
}
