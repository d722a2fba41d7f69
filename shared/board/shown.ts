// How the board tells volumes: cups or litres for a day, the farm's jars for a week, and the sums behind them.
import type { WeekMilking } from '../herd/week.ts';
import type { Amount } from '../quantity/amount.ts';
import { dateText, decimalText, inParts, mixedText, wholeParts } from '../quantity/show.ts';
import { quotientText, sumText } from '../quantity/sumText.ts';
import { shownUnit, UNIT_ML, type VolumeUnit } from '../quantity/units.ts';
import type { BoardInput, ProofRow } from './types.ts';

/** A school serving of milk is half a US pint, 8 fl oz. Source: USDA school meals (from memory). */
export const SERVING_ML = UNIT_ML['fl oz'].mul(8).valueOf();

/** The unit that the farm's pages count a day's milk in. */
export function dayUnit({ units }: BoardInput): VolumeUnit {
  return shownUnit(units);
}

/** A volume in that unit as a child reads it: whole cups, or litres in halves. */
export function dayAmount(input: BoardInput, volume_mL: number): { n: number; text: string } {
  const partsPerUnit = input.units === 'us' ? 1 : 2;
  const parts = inParts(volume_mL, dayUnit(input), partsPerUnit);
  return { n: parts / partsPerUnit, text: mixedText(parts, partsPerUnit, input.lang) };
}

/** A volume in the farm's jars, to the half jar. */
export function jarAmount(input: BoardInput, volume_mL: number): { n: number; text: string } {
  const halves = wholeParts((volume_mL / input.jar_mL) * 2);
  // A few spoons of milk are not none.
  if (halves === 0 && volume_mL > 0) return { n: 1, text: '<½' };
  // Half a jar is told in the singular.
  return { n: halves === 1 ? 1 : halves / 2, text: mixedText(halves, 2, input.lang) };
}

/**
 * How many jars one drawn jar stands for, so that no more than `most` are drawn for the largest
 * volume: 1, or a power of ten.
 * @example jarScale(9000, 1000, 20) // => 1
 * @example jarScale(90000, 1000, 20) // => 10
 */
export function jarScale(largest_mL: number, jar_mL: number, most: number): number {
  let scale = 1;
  while (largest_mL / (jar_mL * scale) > most) scale *= 10;
  return scale;
}

/** Whole school servings in a volume. */
export function servings(volume_mL: number): number {
  return Math.floor(volume_mL / SERVING_ML + 1e-9);
}

/** A volume as a number of the day's unit, not rounded. */
function inDayUnit(input: BoardInput, volume_mL: number): number {
  return volume_mL / UNIT_ML[dayUnit(input)].valueOf();
}

/** A volume with two decimals in the day's unit, as a calculator shows it. */
export function exactText(input: BoardInput, volume_mL: number): string {
  return decimalText(inDayUnit(input, volume_mL), 2, input.lang);
}

/** The sum of some volumes as a calculator takes it. */
export function sumOf_mL(input: BoardInput, parts_mL: readonly number[], total_mL: number): string {
  return sumText(
    parts_mL.map((one) => inDayUnit(input, one)),
    inDayUnit(input, total_mL),
    input.lang,
  );
}

/** A total shared evenly over a count, as a calculator takes it. */
export function quotientOf_mL(input: BoardInput, total_mL: number, count: number): string {
  return quotientText(inDayUnit(input, total_mL), count, input.lang);
}

/** An amount as the book has it, such as `11 1/2 cup`. */
export function writtenText({ num, den, unit }: Amount): string {
  const whole = Math.floor(num / den);
  const rest = num - whole * den;
  if (rest === 0) return `${whole} ${unit}`;
  if (/^10*$/.test(String(den))) return `${num / den} ${unit}`;
  return whole === 0 ? `${rest}/${den} ${unit}` : `${whole} ${rest}/${den} ${unit}`;
}

/** A row of the book as the proof lists it: date, milking, doe, amount as written, in the day's unit, use. */
export function bookRow(input: BoardInput, doe: string, row: WeekMilking): ProofRow {
  return {
    cells: [
      dateText(row.date, input.lang, 'day'),
      row.milking,
      doe,
      writtenText(row.amount),
      exactText(input, row.amount_mL),
      row.use,
    ],
    place: `${row.file}:${row.line}`,
  };
}

/** Headings of such rows, keys under `barn.proof.column`. */
export const BOOK_COLUMNS: readonly string[] = Object.freeze([
  'date',
  'milking',
  'doe',
  'written',
  'amount',
  'use',
]);
