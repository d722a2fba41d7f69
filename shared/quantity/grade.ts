// Rounding for a grade band: which unit a child meets, how fine it is read, and how it is written.
import Fraction from 'fraction.js';
import type { Band } from './band.ts';
import { UNIT_ML, type AmountUnit } from './units.ts';

export { BANDS, type Band } from './band.ts';

/**
 * A number as it stands on a page: `num / den` in lowest terms, exact. With `places` it is written as
 * a decimal of that many places, without as a whole or mixed number. `den` is at least 1.
 */
export interface Shown {
  readonly num: number;
  readonly den: number;
  readonly places?: number;
}

/** What sheets write after a number. `cup` is a US cup, or 250 mL on the sheets of a metric farm that say so. */
export type SheetUnit =
  | AmountUnit
  | 'jar'
  | 'day'
  | 'milking'
  | 'kid'
  | 'hour'
  | 'minute'
  | 'percent'
  // What a class measures for itself on a visit.
  | 'handful'
  | 'hand-span'
  | 'stride'
  | 'in'
  | 'cm';

/** What a band reads milk in: a unit, and the finest step that it reads. */
export interface Measure {
  readonly unit: 'cup' | 'L';
  /** Exact size of the unit, mL. */
  readonly unit_mL: Fraction;
  /** The step is 1 / `den` of the unit. */
  readonly den: number;
  /** Decimal places where the band writes decimals. */
  readonly places?: number;
}

/** Cup of a metric farm's youngest readers, mL: four fill a litre, as four US cups fill a quart. */
export const METRIC_CUP_ML = 250;

const US_CUP = UNIT_ML.cup;
const METRIC_CUP = new Fraction(METRIC_CUP_ML);
const LITRE = UNIT_ML.L;

const MEASURES: Readonly<Record<'us' | 'metric', Readonly<Record<Band, Measure>>>> = Object.freeze({
  us: {
    'k-2': { unit: 'cup', unit_mL: US_CUP, den: 1 },
    '3-5': { unit: 'cup', unit_mL: US_CUP, den: 4 },
    '6-8': { unit: 'cup', unit_mL: US_CUP, den: 10, places: 1 },
    '9-12': { unit: 'cup', unit_mL: US_CUP, den: 10, places: 1 },
  },
  metric: {
    'k-2': { unit: 'cup', unit_mL: METRIC_CUP, den: 1 },
    '3-5': { unit: 'L', unit_mL: LITRE, den: 4 },
    '6-8': { unit: 'L', unit_mL: LITRE, den: 100, places: 2 },
    '9-12': { unit: 'L', unit_mL: LITRE, den: 100, places: 2 },
  },
});

/**
 * What a band reads milk in: whole cups in K-2, quarters in 3-5, decimals from 6 on.
 * The bands follow the number limits of the Common Core mathematics standards.
 */
export function measureOf(band: Band, units: 'us' | 'metric'): Measure {
  return MEASURES[units][band];
}

/** The whole cups that both unit systems count in, whatever the band. */
export function cupMeasure(units: 'us' | 'metric'): Measure {
  return MEASURES[units]['k-2'];
}

// Sums of doubles miss a written half by a few units in the last place; no amount is read this finely.
const HAIR = 1e-9;

/**
 * An amount in mL (zero or more) rounded to a measure's step, halves up.
 * @example shownIn(591.47, measureOf('3-5', 'us')) // => { num: 5, den: 2 }
 */
export function shownIn(amount_mL: number, measure: Measure): Shown {
  const steps = Math.floor((amount_mL / measure.unit_mL.valueOf()) * measure.den + 0.5 + HAIR);
  return shownOf(new Fraction(steps, measure.den), measure.places);
}

/** A fraction as a number on a page; throws where its parts pass the whole numbers a double holds. */
export function shownOf(value: Fraction, places?: number): Shown {
  const num = Number(value.s * value.n);
  const den = Number(value.d);
  if (!Number.isSafeInteger(num) || !Number.isSafeInteger(den))
    throw new Error(`${value.toString()} is too long for a page.`);
  return places === undefined ? { num, den } : { num, den, places };
}

/** The exact fraction behind a number on a page. */
export function exactly(shown: Shown): Fraction {
  return new Fraction(shown.num, shown.den);
}

/**
 * A fraction rounded to decimal places, halves away from zero, and written with them.
 * @example rounded(new Fraction(2, 3), 1) // => { num: 7, den: 10, places: 1 }
 */
export function rounded(value: Fraction, places: number): Shown {
  const scaled = value
    .abs()
    .mul(10 ** places)
    .add(1, 2)
    .floor();
  return shownOf(scaled.div(10 ** places).mul(value.s < 0n ? -1 : 1), places);
}

/** A whole number on a page. */
export function whole(n: number): Shown {
  return { num: n, den: 1 };
}

/** The value of a number on a page as a double. */
export function valueOf(shown: Shown): number {
  return shown.num / shown.den;
}

/**
 * How a number on a page is written, in pieces: sign, whole part, and a fraction to be stacked.
 * A decimal is one text. Both languages write the decimal point and the thousands comma (US and Mexico).
 * @example writtenParts({ num: 11, den: 4 }) // => { whole: '2', num: '3', den: '4' }
 */
export function writtenParts(shown: Shown): { whole: string; num?: string; den?: string } {
  const sign = shown.num < 0 ? '−' : '';
  const size = Math.abs(shown.num);
  if (shown.places !== undefined) return { whole: sign + grouped((size / shown.den).toFixed(shown.places)) };
  if (shown.den === 1) return { whole: sign + grouped(String(size)) };
  const units = Math.floor(size / shown.den);
  return {
    whole: units === 0 ? sign : sign + grouped(String(units)),
    num: String(size - units * shown.den),
    den: String(shown.den),
  };
}

/** The same as plain text: "2 3/4". */
export function written(shown: Shown): string {
  const { whole: units, num, den } = writtenParts(shown);
  if (num === undefined) return units;
  return units === '' || units === '−' ? `${units}${num}/${den}` : `${units} ${num}/${den}`;
}

function grouped(digits: string): string {
  return digits.replace(/\B(?<!\.\d*)(?=(\d{3})+(?!\d))/g, ',');
}
