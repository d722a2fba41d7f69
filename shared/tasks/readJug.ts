// Read two jugs in liters, then add or compare: one step, one unit.
import Fraction from 'fraction.js';
import { shownIn, whole, type Measure } from '../quantity/grade.ts';
import { math, msg, qty, type Message } from '../sheet/message.ts';
import type { HerdWholeDay, TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { onDay } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

// Marks of a drawn jug stand far enough apart up to so many liters.
const MOST_L = 20;
const SMALL_JUG_L = 10;
/** Whole liters, whatever the farm reads in: grade 3 measures in liters and names no cups (3.MD.A.2). */
const LITRES: Measure = { unit: 'L', unit_mL: new Fraction(1000), den: 1 };

interface Jugs {
  readonly day: HerdWholeDay | null;
  readonly morning: number;
  readonly evening: number;
}

const litresOf = (day: HerdWholeDay, milking: 'am' | 'pm'): number =>
  shownIn(
    day.readings.filter((one) => one.milking === milking).reduce((sum, one) => sum + one.amount_mL, 0),
    LITRES,
  ).num;

/** The days whose two milkings fill jugs to different whole liters; where there is none, two pails of water. */
function jugs(context: TaskContext): Jugs[] {
  const days = context.herdDays
    .map((day): Jugs => ({ day, morning: litresOf(day, 'am'), evening: litresOf(day, 'pm') }))
    .filter(
      ({ morning, evening }) =>
        Math.min(morning, evening) >= 1 && Math.max(morning, evening) <= MOST_L && morning !== evening,
    );
  return days.length > 0 ? days : [{ day: null, morning: 0, evening: 0 }];
}

/** Liters of a liquid in one step (3.MD.A.2). */
export const readJug = taskKind<Jugs>({
  name: 'read-jug',
  bands: ['3-5'],
  standards: ['3.MD.A.2'],
  lack: 'no-milk',
  candidates: jugs,
  touches: ({ day }) => (day ? [day.date] : []),
  make(context, { day, morning, evening }) {
    if (day) return read(context, day, [morning, evening]);
    const first = context.chance.int(3, SMALL_JUG_L);
    const second = context.chance.pick([2, 4, 6, 8, 9].filter((one) => one !== first));
    return read(context, null, [first, second]);
  },
});

function read(context: TaskContext, day: HerdWholeDay | null, litres: readonly [number, number]): Task {
  const [a, b] = litres;
  const together = context.chance.int(0, 1) === 1;
  const [high, low] = [Math.max(a, b), Math.min(a, b)];
  const result = whole(together ? a + b : high - low);
  const label = (key: string): Message => msg(`task.read-jug.label-${day ? key : `water-${key}`}`);
  const L = (n: number) => qty(whole(n), 'L');
  return {
    kind: 'read-jug',
    standards: ['3.MD.A.2'],
    lead: [day ? msg('task.read-jug.lead', { on: onDay(day.date) }) : msg('task.read-jug.lead-water')],
    picture: {
      is: 'jugs',
      top: high <= SMALL_JUG_L ? SMALL_JUG_L : MOST_L,
      jugs: [
        { label: label('am'), litres: whole(a) },
        { label: label('pm'), litres: whole(b) },
      ],
    },
    asks: [
      {
        prompt: msg('task.read-jug.ask-read'),
        work: { is: 'boxes', after: ['L', 'L'] },
        answer: msg('sheet.answer-and', { a: L(a), b: L(b) }),
        values: [whole(a), whole(b)],
        accepted: [],
        steps: [msg('task.read-jug.step')],
      },
      {
        prompt: msg(`task.read-jug.ask-${together ? 'together' : 'more'}`),
        work: { is: 'working', after: ['L'] },
        answer: msg('sheet.answer', { amount: qty(result, 'L') }),
        values: [result],
        accepted: [],
        steps: [
          msg('sheet.math', {
            line: together
              ? math(whole(a), '+', whole(b), '=', result)
              : math(whole(high), '−', whole(low), '=', result),
          }),
        ],
      },
    ],
    mistake: { what: msg('task.read-jug.mistake'), why: msg('task.read-jug.why') },
    fromBook: day
      ? (['am', 'pm'] as const).flatMap((milking, index) =>
          fromBook(
            { is: 'message', message: msg(`task.read-jug.label-${milking}`) },
            day.readings.filter((one) => one.milking === milking),
            whole(litres[index] as number),
            LITRES,
          ),
        )
      : [],
  };
}
