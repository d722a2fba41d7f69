// The row of amounts to guess from: wide enough that the truth lies well inside.
import type { UnitSystem } from '../../herd/types.ts';
import { mixedText, trimmedText, wholeParts } from '../../quantity/show.ts';
import { UNIT_SIZE_mL } from '../../quantity/unitSize.ts';
import type { AskedMilking } from './pailBook.ts';

/** What a guess counts: whole cups, or half liters. */
export type GuessPart = 'cup' | 'half-L';

/** A farm's part. */
export function guessPart(units: UnitSystem): GuessPart {
  return units === 'us' ? 'cup' : 'half-L';
}

const PARTS: Readonly<Record<GuessPart, { readonly mL: number; readonly perUnit: 1 | 2; readonly unit: 'cup' | 'L' }>> =
  Object.freeze({
    cup: { mL: UNIT_SIZE_mL.cup, perUnit: 1, unit: 'cup' },
    'half-L': { mL: UNIT_SIZE_mL.L / 2, perUnit: 2, unit: 'L' },
  }); // prettier-ignore

/** Milk of one part, mL. */
export function part_mL(part: GuessPart): number {
  return PARTS[part].mL;
}

/** The unit that parts are told in: its key under `barn.unit`. */
export function partUnit(part: GuessPart): 'cup' | 'L' {
  return PARTS[part].unit;
}

/** A volume in parts, not rounded. */
export function inGuessParts(volume_mL: number, part: GuessPart): number {
  return volume_mL / PARTS[part].mL;
}

/**
 * A number of parts, to the half of a part: whole cups and halves, or liters in quarters; `n` is its number.
 * @example partsTold(9, 'cup', 'en') // => { n: 9, text: '9' }
 * @example partsTold(3, 'half-L', 'en') // => { n: 1.5, text: '1½' }
 */
export function partsTold(parts: number, part: GuessPart, lang: string): { n: number; text: string } {
  return finely(parts, part, lang, 2);
}

/** A number of parts as a book may have it: cups to the quarter, liters to two decimals. */
export function partsExact(parts: number, part: GuessPart, lang: string): { n: number; text: string } {
  if (part === 'cup') return finely(parts, part, lang, 4);
  const liters = parts / PARTS[part].perUnit;
  return { n: liters, text: trimmedText(liters, lang) };
}

function finely(parts: number, part: GuessPart, lang: string, per: 2 | 4): { n: number; text: string } {
  const perUnit = (PARTS[part].perUnit * per) as 2 | 4;
  const steps = wholeParts(parts * per);
  return { n: steps / perUnit, text: mixedText(steps, perUnit, lang) };
}

/** A row of amounts to guess from, in parts: `count` of them from `from`, each `stride` more. */
export interface GuessRow {
  readonly part: GuessPart;
  readonly from: number;
  readonly stride: number;
  readonly count: number;
}

const LEAST_ROOM = 2;
// A doe in heat, off her feed or frightened gives a good deal less than the day before (common practice, no source).
const ROOM_SHARE = 0.3;
const MOST_CHOICES = 12;

/** The row for a milking: from well below her least of the week, or from nothing, to well above her most. */
export function guessRow(asked: Pick<AskedMilking, 'low_mL' | 'high_mL'>, part: GuessPart): GuessRow {
  const low = Math.floor(inGuessParts(asked.low_mL, part) + 1e-9);
  const high = Math.ceil(inGuessParts(asked.high_mL, part) - 1e-9);
  const room = Math.max(LEAST_ROOM, Math.ceil(high * ROOM_SHARE));
  const from = Math.max(0, low - room);
  for (let stride = 1; ; stride += 1) {
    // Round numbers: a row in twos is even, one in fives ends in 0 or 5.
    const first = from - (from % stride);
    const count = Math.ceil((high + room - first) / stride) + 1;
    if (count <= MOST_CHOICES) return { part, from: first, stride, count };
  }
}

/** The amounts of a row, in parts. */
export function rowChoices({ from, stride, count }: GuessRow): number[] {
  return Array.from({ length: count }, (_, index) => from + index * stride);
}
