// Where a printed number comes from: the amount in the book, when the band does not read it as finely.
import { amount_mL } from '../quantity/amount.ts';
import { UNIT_ML } from '../quantity/units.ts';
import { exactly, rounded, shownOf, type Measure, type Shown, type SheetUnit } from '../quantity/grade.ts';
import { count, msg, sub, text, type Slot } from '../sheet/message.ts';
import { total, type Reading } from './context.ts';
import { whenOf } from './phrases.ts';
import type { FromBook } from './task.ts';

// A sum in sixty-fourths of a cup is still a sum that someone could have measured.
const LONGEST_PART = 100n;
const isDecimal = (den: number): boolean => [1, 10, 100, 1000, 10_000].includes(den);

/**
 * The sum of some milkings as the book writes them: in the unit of the first, as a decimal where all are
 * written so, and in whole mL where units were mixed so that the sum is no plain part of that unit.
 */
export function bookSum(readings: readonly Reading[]): Shown & { readonly unit: SheetUnit } {
  const [first] = readings;
  if (!first) throw new Error('A sum of no milkings was asked for.');
  const { unit } = first.amount;
  const sum = total(readings.map(({ amount }) => amount_mL(amount).div(UNIT_ML[unit])));
  if (sum.d > LONGEST_PART) return { ...shownOf(sum.mul(UNIT_ML[unit]).round(0)), unit: 'mL' };
  const decimals = readings.map(({ amount }) => amount.den);
  if (decimals.every(isDecimal) && decimals.some((den) => den > 1)) {
    const places = Math.max(...decimals.map((den) => String(den).length - 1));
    return { ...rounded(sum, places), unit };
  }
  return { ...shownOf(sum), unit };
}

/** The amount of the book beside a printed number, or nothing where both are the same amount. */
export function fromBook(
  what: Slot,
  readings: readonly Reading[],
  here: Shown,
  measure: Measure,
): readonly FromBook[] {
  const book = bookSum(readings);
  const same = exactly(book)
    .mul(UNIT_ML[book.unit as keyof typeof UNIT_ML])
    .equals(exactly(here).mul(measure.unit_mL));
  return same ? [] : [{ what, book, here: { ...here, unit: measure.unit } }];
}

/** The same for one milking, named by doe and time. */
export function readingFromBook(reading: Reading, here: Shown, measure: Measure): readonly FromBook[] {
  const what = msg('sheet.who-when', {
    name: text(reading.doe.name),
    when: whenOf(reading.date, reading.milking),
  });
  return fromBook(sub(what), [reading], here, measure);
}

/**
 * The same for many milkings of one doe: those that the book writes alike are told together, so that a week does not
 * fill half a key.
 */
export function milkingsTold(
  doe: string,
  readings: readonly Reading[],
  shown: readonly Shown[],
  measure: Measure,
): FromBook[] {
  const notes = readings.flatMap((one, index) => readingFromBook(one, shown[index] as Shown, measure));
  const alike = new Map<string, FromBook[]>();
  for (const note of notes) {
    const { book } = note;
    const amount = `${book.num}/${book.den} ${book.unit}`;
    alike.set(amount, [...(alike.get(amount) ?? []), note]);
  }
  return [...alike.values()].map((group) => {
    const [first] = group as [FromBook];
    if (group.length === 1) return first;
    return { ...first, what: sub(msg('sheet.milkings-of', { name: text(doe), n: count(group.length) })) };
  });
}
