// Put three numbers of cups in order, from least to most.
import { whole, type Shown } from '../quantity/grade.ts';
import { msg, num, row } from '../sheet/message.ts';
import type { CardsPicture } from '../sheet/picture.ts';
import { distinctBy, leastUsed, use, type Reading, type TaskContext } from './context.ts';
import { mostToCompare } from './countable.ts';
import { readingFromBook } from './fromBook.ts';
import { sameMilking } from './oneMilking.ts';
import { cupsOf, dayLabel, faceOf, nameOf, onOf, touchesOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

const CARDS = 3;

interface Trio {
  readonly of: 'does' | 'days';
  readonly readings: readonly Reading[];
}

/** One doe's mornings, or evenings, over the week. */
function runs(context: TaskContext): Reading[][] {
  const keys = new Map<string, Reading[]>();
  for (const reading of context.readings) {
    const cups = cupsOf(reading, context.cups);
    if (cups < 1 || cups > mostToCompare(context)) continue;
    const key = `${reading.doe.id}|${reading.milking}`;
    keys.set(key, [...(keys.get(key) ?? []), reading]);
  }
  return [...keys.values()];
}

function trios(context: TaskContext): Trio[] {
  const ready = (readings: readonly Reading[]) =>
    distinctBy(readings, (one) => cupsOf(one, context.cups)).length >= CARDS;
  const does = sameMilking(context, mostToCompare(context))
    .map((group) => distinctBy(group, ({ doe }) => doe.name))
    .filter(ready)
    .map((readings): Trio => ({ of: 'does', readings }));
  if (does.length > 0) return does;
  return runs(context)
    .filter(ready)
    .map((readings): Trio => ({ of: 'days', readings }));
}

/** Comparing numerals to ten (K.CC.C.7) or two-digit numbers (1.NBT.B.3). */
export const orderCups = taskKind<Trio>({
  name: 'order-cups',
  bands: ['k-2'],
  standards: ['K.CC.C.7', '1.NBT.B.3'],
  lack: 'no-three-amounts',
  candidates: trios,
  touches: ({ readings }) => readings.slice(0, 1).map(({ date, milking }) => `${date}|${milking}`),
  make(context, { of, readings }) {
    const mixed = leastUsed(context, readings, readings.length, ({ doe, date }) =>
      of === 'does' ? doe.id : date,
    );
    const three = distinctBy(mixed, (one) => cupsOf(one, context.cups)).slice(0, CARDS);
    use(context, touchesOf(three));
    return order(context, of, apart(context, three));
  },
});

/** A trio that lies in order already would be no question: its first two change places. */
function apart(context: TaskContext, three: readonly Reading[]): Reading[] {
  const [a, b, c] = three as [Reading, Reading, Reading];
  const cups = (one: Reading) => cupsOf(one, context.cups);
  const sorted = cups(a) < cups(b) && cups(b) < cups(c);
  return sorted ? [b, a, c] : [a, b, c];
}

function order(context: TaskContext, of: Trio['of'], three: readonly Reading[]): Task {
  const shown = three.map((one) => whole(cupsOf(one, context.cups)));
  const sorted: Shown[] = [...shown].sort((a, b) => a.num - b.num);
  const first = three[0] as Reading;
  const picture: CardsPicture = {
    is: 'cards',
    cards: three.map((one, index) => ({
      label: of === 'does' ? one.doe.name : dayLabel(one.date),
      face: of === 'does' ? faceOf(one.doe) : null,
      value: shown[index] as Shown,
      unit: 'cup',
    })),
  };
  return {
    kind: 'order-cups',
    standards: [Math.max(...shown.map(({ num: n }) => n)) <= 10 ? 'K.CC.C.7' : '1.NBT.B.3'],
    lead: [
      of === 'does'
        ? msg('task.order-cups.lead-does', { on: onOf(first.date, first.milking) })
        : msg(`task.order-cups.lead-days-${first.milking}`, { name: nameOf(first.doe) }),
    ],
    picture,
    asks: [
      {
        prompt: msg('task.order-cups.ask'),
        work: { is: 'boxes', after: [null, null, null] },
        answer: msg('sheet.answer-row', { row: row(sorted.map(num)) }),
        values: sorted,
        accepted: [],
        steps: [
          msg('task.order-cups.step', { least: num(sorted[0] as Shown), most: num(sorted[2] as Shown) }),
        ],
      },
    ],
    mistake: {
      what: msg('task.order-cups.mistake', { row: row([...sorted].reverse().map(num)) }),
      why: msg('task.order-cups.why'),
    },
    fromBook: three.flatMap((one, index) => readingFromBook(one, shown[index] as Shown, context.cups)),
  };
}
