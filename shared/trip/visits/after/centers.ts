// Questions about the middle and the spread of a class's own numbers, as far as a grade has met them.
import type Fraction from 'fraction.js';
import { exactly, rounded, shownOf, type Shown, type SheetUnit } from '../../../quantity/grade.ts';
import { count, joined, math, msg, num, row, type Message } from '../../../sheet/message.ts';
import { meanOf, medianOf, sampleSd, sortedShown } from '../../../tasks/spread.ts';
import type { Grade } from '../../../tasks/grades.ts';
import type { Ask } from '../../../tasks/task.ts';
import { amountAsk, KEY } from './madeTask.ts';

// 5.MD.B.2 evens amounts out in halves, quarters and eighths; 6.SP.B.5.c calls it the mean.
const [EVEN_OUT, CENTERS, DEVIATION] = [5, 6, 9];
const EVEN_DENS: readonly number[] = [1, 2, 4, 8];
// A line of arithmetic with more numbers than this fills the key.
const MOST_SUMMED = 8;

/** The largest less the smallest. */
export function rangeAsk(shown: readonly Shown[], unit: SheetUnit, grade: Grade): Ask {
  const sorted = sortedShown(shown);
  const [low, high] = [sorted[0] as Shown, sorted.at(-1) as Shown];
  const value = shownOf(exactly(high).sub(exactly(low)), high.places);
  const steps = [msg('sheet.math', { line: math(high, '−', low, '=', value) })];
  return amountAsk(msg(`${KEY}.ask.${grade >= CENTERS ? 'range' : 'apart'}`), value, unit, steps);
}

/** From grade 5 on the amounts evened out, from 6 on median and mean, from 9 on the standard deviation. */
export function centerAsks(shown: readonly Shown[], unit: SheetUnit, grade: Grade): Ask[] {
  if (grade < EVEN_OUT) return [];
  if (grade < CENTERS) {
    const mean = meanOf(shown);
    return EVEN_DENS.includes(Number(mean.d)) ? [amountAsk(msg(`${KEY}.ask.even`), shownOf(mean), unit, meanSteps(shown, mean, shownOf(mean)))] : [];
  }
  const places = Math.max(1, shown[0]?.places ?? 0);
  const median = written(medianOf(shown), places);
  const mean = rounded(meanOf(shown), places);
  const asks = [
    amountAsk(msg(`${KEY}.ask.median`), median, unit, [medianStep(shown)]),
    amountAsk(msg(`${KEY}.ask.mean`, { n: count(places) }), mean, unit, meanSteps(shown, meanOf(shown), mean)),
  ];
  if (grade < DEVIATION || shown.length < 3) return asks;
  return [...asks, amountAsk(msg(`${KEY}.ask.sd`), sampleSd(shown, places + 1), unit, [])];
} // prettier-ignore

/** With as many places as the value has, at least those. */
function written(value: Fraction, places: number): Shown {
  const exact = rounded(value, places);
  return exactly(exact).equals(value) ? exact : rounded(value, places + 1);
}

function meanSteps(shown: readonly Shown[], mean: Fraction, told: Shown): Message[] {
  const sum = shownOf(mean.mul(shown.length), shown[0]?.places);
  const n = { num: shown.length, den: 1 };
  const sign = exactly(told).equals(mean) ? '=' : '≈';
  const divided = msg('sheet.math', { line: math(sum, '÷', n, sign, told) });
  if (shown.length > MOST_SUMMED) return [msg(`${KEY}.step.sum`, { n: count(shown.length), sum: num(sum) }), divided];
  return [msg('sheet.math', { line: math(...joined(shown, '+'), '=', sum) }), divided];
} // prettier-ignore

/** Which places the middle has: one of an odd count, two of an even one. */
function medianStep(shown: readonly Shown[]): Message {
  const sorted = sortedShown(shown);
  const half = Math.floor(sorted.length / 2);
  if (sorted.length % 2 === 1) return msg(`${KEY}.step.odd`, { n: count(sorted.length), place: count(half + 1) });
  const two = row([num(sorted[half - 1] as Shown), num(sorted[half] as Shown)]);
  return msg(`${KEY}.step.even`, { n: count(sorted.length), two });
} // prettier-ignore
