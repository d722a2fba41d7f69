// Numbers of the data sheet: guesses and milk as a grade reads them.
import Fraction from 'fraction.js';
import { rounded, shownOf, type Band, type Shown } from '../../quantity/grade.ts';
import { wholeParts } from '../../quantity/show.ts';
import type { GuessPart } from './guessRow.ts';
import { partUnit } from './guessRow.ts';

/** The grades that the data sheet is made for. */
export type PailBand = Exclude<Band, '9-12'>;
/** All of them, the youngest first. */
export const PAIL_BANDS: readonly PailBand[] = Object.freeze(['k-2', '3-5', '6-8']);

/** Steps that a grade reads a part of milk in: whole parts, quarters, hundredths. */
const FINEST: Readonly<Record<PailBand, number>> = Object.freeze({ 'k-2': 1, '3-5': 4, '6-8': 100 });

/** Parts rounded to a grade's finest step, halves up. */
export function readable(parts: number, band: PailBand): number {
  return wholeParts(parts * FINEST[band]) / FINEST[band];
}

/** A number of parts in its unit as a grade writes it: fractions up to grade 5, then decimals, two places at most. */
export function partsShown(parts: number, part: GuessPart, band: PailBand): Shown {
  const perUnit = partUnit(part) === 'cup' ? 1 : 2;
  const value = new Fraction(Math.round(parts * 400), 400 * perUnit);
  if (band !== '6-8') return shownOf(value);
  const places = [0, 1].find((count) => value.mul(10 ** count).d === 1n) ?? 2;
  return rounded(value, places);
}

/**
 * The guesses that were made most often, in order; all of them where all are as often.
 * @example modes([3, 5, 5, 7, 7]) // => [5, 7]
 */
export function modes(guesses: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const one of guesses) counts.set(one, (counts.get(one) ?? 0) + 1);
  const most = Math.max(0, ...counts.values());
  return [...counts].flatMap(([guess, count]) => (count === most ? [guess] : [])).toSorted((a, b) => a - b);
}

/** Single guesses that came nearer to the truth than the middle one. */
export function nearerThan(guesses: readonly number[], middle: number, truth: number): number {
  const off = Math.abs(middle - truth);
  return guesses.filter((one) => Math.abs(one - truth) < off - 1e-9).length;
}
