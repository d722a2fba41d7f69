// How far off a sum of readings can be when each is read to a step of the jug.
import Fraction from 'fraction.js';
import { exactly, rounded, shownOf, whole, type Shown } from '../quantity/grade.ts';
import { count, math, msg, qty, stepOf } from '../sheet/message.ts';
import type { DoeWeek } from '../herd/week.ts';
import type { VolumeUnit, WeightUnit } from '../quantity/units.ts';
import { total, type Reading, type TaskContext } from './context.ts';
import { nameOf } from './phrases.ts';
import { taskKind } from './task.ts';

const LEAST_READINGS = 4;
const STEPS = [1, 2, 4, 8, 10, 16, 20, 100];

interface Readings {
  readonly doe: DoeWeek;
  readonly readings: readonly Reading[];
  /** The jug is read to 1 / `den` of the unit. */
  readonly den: number;
  readonly unit: VolumeUnit | WeightUnit;
}

/** The finest step that the doe's amounts are written in: 1/4 where they are quarters, halves and wholes. */
function jugStep(doe: DoeWeek, readings: readonly Reading[]): Readings[] {
  const units = new Set(readings.map(({ amount }) => amount.unit));
  const [unit] = units;
  if (unit === undefined || units.size > 1 || readings.length < LEAST_READINGS) return [];
  const values = readings.map(({ amount }) => new Fraction(amount.num, amount.den));
  const den = STEPS.find((one) => values.every((value) => value.mul(one).d === 1n));
  return den === undefined ? [] : [{ doe, readings, den, unit }];
}

/** The accuracy a measurement allows (HSN-Q.A.3). */
export const errorBound = taskKind<Readings>({
  name: 'error-bound',
  bands: ['9-12'],
  standards: ['HSN-Q.A.3'],
  lack: 'no-week-of-one-doe',
  candidates: (context: TaskContext) =>
    context.week.does.flatMap((doe) =>
      jugStep(
        doe,
        context.readings.filter((one) => one.doe.id === doe.id),
      ),
    ),
  touches: ({ doe }) => [doe.id],
  make(_, { doe, readings, den, unit }) {
    const n = readings.length;
    const decimal = [10, 20, 100].includes(den);
    const write = (value: Fraction, places: number): Shown =>
      decimal ? rounded(value, places) : shownOf(value);
    const step = write(new Fraction(1, den), den === 100 ? 2 : den === 20 ? 2 : 1);
    const half = write(new Fraction(1, den * 2), 3);
    const bound = write(new Fraction(n, den * 2), 3);
    const sum = write(total(readings.map(({ amount }) => new Fraction(amount.num, amount.den))), 2);
    const percent = rounded(exactly(bound).div(exactly(sum)).mul(100), 1);
    return {
      kind: 'error-bound',
      standards: ['HSN-Q.A.3'],
      lead: [
        msg('task.error-bound.lead', { name: nameOf(doe), n: count(n), sum: qty(sum, unit) }),
        msg('task.error-bound.step', { step: stepOf(step, unit) }),
      ],
      picture: null,
      asks: [
        {
          prompt: msg('task.error-bound.ask-one'),
          work: { is: 'boxes', after: [unit] },
          answer: msg('sheet.answer', { amount: qty(half, unit) }),
          values: [half],
          accepted: [],
          steps: [msg('sheet.math', { line: math(step, '÷', whole(2), '=', half) })],
        },
        {
          prompt: msg('task.error-bound.ask-sum'),
          work: { is: 'working', after: [unit, 'percent'] },
          answer: msg('task.error-bound.answer', {
            amount: qty(bound, unit),
            percent: qty(percent, 'percent'),
          }),
          values: [bound, percent],
          accepted: [],
          steps: [
            msg('sheet.math', { line: math(whole(n), '×', half, '=', bound) }),
            msg('task.share-of-week.step', {
              line: math(bound, '÷', sum, '×', whole(100)),
              percent: qty(percent, 'percent'),
            }),
          ],
        },
        {
          prompt: msg('task.error-bound.ask-likely'),
          work: { is: 'lines', lines: 2 },
          answer: msg('task.error-bound.answer-likely'),
          values: [],
          accepted: [],
          steps: [],
        },
      ],
      mistake: {
        what: msg('task.error-bound.mistake', { wrong: qty(half, unit) }),
        why: msg('task.error-bound.why', { n: count(n) }),
      },
      fromBook: [],
    };
  },
});
