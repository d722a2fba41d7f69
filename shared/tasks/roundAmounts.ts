// Round a number of the farm to tens, hundreds and thousands.
import { shownIn, whole } from '../quantity/grade.ts';
import { count, msg, qty, type Message } from '../sheet/message.ts';
import type { SheetUnit } from '../quantity/grade.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

/** All milk of the window's week, mL; 0 where there is none. */
export function weekMilk_mL(context: TaskContext): number {
  return context.week.does.reduce((sum, doe) => sum + (doe.total_mL ?? 0), 0);
}

interface Known {
  readonly n: number;
  readonly unit: SheetUnit;
  readonly lead: Message;
  readonly touch: string;
}

// A year; a lactation as it is counted (content/facts/breeding.yaml); a quart and a pint in whole milliliters.
const KNOWN: readonly Known[] = Object.freeze(
  (
    [
      [365, 'day', 'year'],
      [305, 'day', 'lactation'],
      [946, 'mL', 'quart'],
      [473, 'mL', 'pint'],
    ] as const
  ).map(([n, unit, key]) => ({ n, unit, touch: `round ${key}`, lead: msg(`task.round-amounts.${key}`) })),
);
const KNOWN_LARGE: readonly Known[] = Object.freeze([
  { n: 3785, unit: 'mL', touch: 'round gallon', lead: msg('task.round-amounts.gallon') },
  { n: 8760, unit: 'hour', touch: 'round hours', lead: msg('task.round-amounts.hours') },
]);

const roundTo = (n: number, place: number): number => Math.floor((n + place / 2) / place) * place;

/** Places to round to: tens and hundreds to a thousand (3.NBT.A.1), hundreds and thousands above (4.NBT.A.3). */
function places(n: number): readonly [number, number] {
  return n <= 1000 ? [10, 100] : [100, 1000];
}

/** Neither rounding may give the number itself, nor both the same, nor none at all. */
const tells = ({ n }: Known): boolean => {
  const [small, large] = places(n).map((place) => roundTo(n, place)) as [number, number];
  return n >= 100 && n < 1_000_000 && small !== n && large !== n && small !== large;
};

function numbers(context: TaskContext): Known[] {
  const week = weekMilk_mL(context);
  const own: Known[] = [];
  if (week > 0) {
    const cups = shownIn(week, context.cups).num;
    if (cups <= 1000)
      own.push({ n: cups, unit: 'cup', touch: 'round cups', lead: msg('task.round-amounts.week', { amount: qty(whole(cups), 'cup') }) });
    const mL = Math.round(week);
    if (context.grade >= 4 && mL > 1000)
      own.push({ n: mL, unit: 'mL', touch: 'round mL', lead: msg('task.round-amounts.week', { amount: qty(whole(mL), 'mL') }) });
  }
  const good = own.filter(tells);
  const known = context.grade >= 4 ? KNOWN_LARGE : KNOWN;
  return good.length > 0 ? good : known.filter(tells);
} // prettier-ignore

/** Rounding whole numbers by place value. */
export const roundAmounts = taskKind<Known>({
  name: 'round-amounts',
  bands: ['3-5'],
  standards: ['3.NBT.A.1', '4.NBT.A.3'],
  lack: 'no-milk',
  candidates: numbers,
  touches: ({ touch }) => [touch],
  make: (_, number) => round(number),
});

function round({ n, unit, lead }: Known): Task {
  const asked = places(n);
  const older = n > 1000;
  // Cutting off instead of rounding gives the same where the next digit is small; then the slip is to round up.
  const [small] = asked;
  const cut = Math.floor(n / small) * small;
  const right = roundTo(n, small);
  const wrong = cut === right ? cut + small : cut;
  return {
    kind: 'round-amounts',
    standards: [older ? '4.NBT.A.3' : '3.NBT.A.1'],
    lead: [lead],
    picture: null,
    asks: asked.map((place) => {
      const rounded = whole(roundTo(n, place));
      const below = whole(Math.floor(n / place) * place);
      const above = whole(below.num + place);
      return {
        prompt: msg(`task.round-amounts.ask-${place}`),
        work: { is: 'boxes', after: [unit] },
        answer: msg('sheet.answer', { amount: qty(rounded, unit) }),
        values: [rounded],
        accepted: [],
        steps: [
          msg('task.round-amounts.step', {
            number: count(n),
            below: { is: 'number', ...below },
            above: { is: 'number', ...above },
            near: { is: 'number', ...rounded },
          }),
          ...(above.num - n === n - below.num ? [msg('task.round-amounts.step-half')] : []),
        ],
      };
    }),
    mistake: {
      what: msg('task.round-amounts.mistake', { wrong: qty(whole(wrong), unit) }),
      why: msg(`task.round-amounts.why-${cut === right ? 'up' : 'cut'}`),
    },
    fromBook: [],
  };
}
