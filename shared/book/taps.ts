// The pad's arithmetic: taps, jars and keys make an amount, exact as a fraction, and it is written as the book writes it.
import Fraction from 'fraction.js';
import { readNumber, type Amount } from '../quantity/amount.ts';
import { trimmedText } from '../quantity/show.ts';
import { UNIT_ML, type AmountUnit, type VolumeUnit } from '../quantity/units.ts';

/** An amount without its unit, exact. */
export type Value = Fraction;

/** How the pad works in a unit. */
export interface Pad {
  readonly unit: AmountUnit;
  /** `mixed` units are written `9 1/2`, `decimal` ones `9.5`. */
  readonly style: 'mixed' | 'decimal';
  /** The finest step of the taps; the usual amount is offered at it. */
  readonly step: Fraction;
  /** What the taps take away and add, least first. */
  readonly less: readonly Fraction[];
  readonly more: readonly Fraction[];
}

/** A key of the pad's keys: a digit, the point, a part, or taking back the last one. */
export type Key = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | '¼' | '½' | '¾' | 'back';

const of = (...texts: string[]): readonly Fraction[] => texts.map((text) => new Fraction(text));

// A jug in cups is marked in quarters; scales and jugs in litres are marked in tenths. Common practice, no source.
const CUPS = {
  style: 'mixed',
  step: new Fraction(1, 4),
  less: of('1/4', '1'),
  more: of('1/4', '1/2', '1'),
} as const;
const TENTHS = {
  style: 'decimal',
  step: new Fraction(1, 10),
  less: of('1/10'),
  more: of('1/10', '1/4', '1/2', '1'),
} as const;
const FIFTIES = {
  style: 'decimal',
  step: new Fraction(50),
  less: of('50'),
  more: of('50', '100', '250', '500'),
} as const;
const OUNCES = {
  style: 'mixed',
  step: new Fraction(1),
  less: of('1'),
  more: of('1', '4', '8', '16'),
} as const;

const PADS: Readonly<Record<AmountUnit, Omit<Pad, 'unit'>>> = {
  cup: CUPS, pt: CUPS, qt: CUPS, gal: CUPS,
  'fl oz': OUNCES, oz: OUNCES,
  L: TENTHS, kg: TENTHS, lb: TENTHS,
  mL: FIFTIES, g: FIFTIES,
}; // prettier-ignore

/** How the pad works in a unit: a quarter, a half and a whole one a tap, and what else the unit's jugs are marked in. */
export function padOf(unit: AmountUnit): Pad {
  return { unit, ...PADS[unit] };
}

/** An amount after a tap that adds or takes away; nothing is the start, and nothing is the least there is. */
export function tapped(value: Fraction | null, by: Fraction): Fraction {
  const sum = (value ?? new Fraction(0)).add(by);
  return sum.compare(0) < 0 ? new Fraction(0) : sum;
}

/** The amounts that lie around her usual one, two finest steps to each side; none is below 0. */
export function amountsAround(usual: Fraction, { step }: Pad): Fraction[] {
  const lowest = usual.sub(step.mul(2));
  const first = lowest.compare(0) < 0 ? new Fraction(0) : lowest;
  return [0, 1, 2, 3, 4].map((place) => first.add(step.mul(place)));
}

/** Amounts to start from where nothing is usual yet: a quarter, a half, one, one and a half and two of the farm's jars. */
export function amountsOfJars(
  jar: { readonly size: number; readonly unit: VolumeUnit },
  pad: Pad,
): Fraction[] {
  const all = ['1/4', '1/2', '1', '3/2', '2'].map((jars) => jarsAmount(of(jars), jar, pad));
  return all.filter(
    (one, place) => one.compare(0) > 0 && all.findIndex((other) => other.equals(one)) === place,
  );
}

/**
 * The amount of some jars, each filled to a share of its full line, in the pad's unit: exact where a jug could show it
 * (a jar of 64 fl oz is 8 cups), else rounded half up to a hundredth, or to an eighth where amounts are mixed numbers.
 */
export function jarsAmount(
  shares: readonly Fraction[],
  jar: { readonly size: number; readonly unit: VolumeUnit },
  { unit, style }: Pick<Pad, 'unit' | 'style'>,
): Fraction {
  const jars = shares.reduce((sum, share) => sum.add(share), new Fraction(0));
  const exact = jars.mul(UNIT_ML[jar.unit].mul(jar.size)).div(UNIT_ML[unit]);
  const parts = style === 'mixed' ? 8 : 100;
  if (style === 'mixed' && exact.d <= 16n) return exact;
  return exact.mul(parts).add(1, 2).floor().div(parts);
}

/**
 * The text of the keys after one more: digits, a point or one part. A part takes the place of another; a key that makes
 * no amount changes nothing. Empty text is no amount.
 * @example keyed('9', '½') // => '9 1/2'
 * @example keyed('9 1/2', 'back') // => '9'
 */
export function keyed(text: string, key: Key): string {
  const whole = text.replace(/ ?\d+\/\d+$/, '');
  const hasPart = whole !== text;
  if (key === 'back') return hasPart ? whole : text.slice(0, -1);
  if (key === '¼' || key === '½' || key === '¾') {
    if (whole.includes('.')) return text;
    const part = { '¼': '1/4', '½': '1/2', '¾': '3/4' }[key];
    return whole === '' ? part : `${whole} ${part}`;
  }
  if (hasPart || whole.length >= MOST_KEYS) return text;
  if (key === '.') return whole.includes('.') ? text : `${whole || '0'}.`;
  return whole === '0' ? key : whole + key;
}

// Six signs are more than any doe gives, also in millilitres.
const MOST_KEYS = 6;

/** The amount that the keys' text stands for, exact; null where it is none yet. */
export function keyedAmount(text: string): Fraction | null {
  const read = readNumber(text.replace(/\.$/, ''));
  return read.ok ? new Fraction(read.num, read.den) : null;
}

/**
 * An amount as it is written in the book: `9 1/2` where a unit is told in parts, else `9.5`. Every part of a whole that
 * no short decimal tells is written as a fraction, so that what is read back is the same amount.
 */
export function writtenAmount(value: Fraction, { style }: Pick<Pad, 'style'>): string {
  if (value.d === 1n) return String(value.n);
  const places = placesOf(value.d);
  if (style === 'decimal' && places !== null) return (Number(value.n) / Number(value.d)).toFixed(places);
  const whole = value.floor();
  const part = value.sub(whole);
  return whole.n === 0n ? `${part.n}/${part.d}` : `${whole.n} ${part.n}/${part.d}`;
}

/** Decimal places that tell a fraction of this denominator exactly; null where none of up to six do. */
function placesOf(den: bigint): number | null {
  const places = [1, 2, 3, 4, 5, 6].find((count) => 10n ** BigInt(count) % den === 0n);
  return places ?? null;
}

const SIGNS: Readonly<Record<string, string>> = { '1/4': '¼', '1/2': '½', '3/4': '¾' };

/**
 * An amount as the page shows it, without its unit: `9½`, `9 1/8`, `9.5`; decimals are rounded to two.
 * @example shownAmount({ num: 19, den: 2, unit: 'cup' }, 'en') // => '9½'
 * @example shownAmount({ num: 19, den: 2, unit: 'L' }, 'en') // => '9.5'
 */
export function shownAmount({ num, den, unit }: Amount, lang: string): string {
  const value = new Fraction(num, den);
  if (PADS[unit].style === 'decimal' || value.d > 16n) return trimmedText(num / den, lang);
  const whole = value.floor();
  const part = value.sub(whole);
  if (part.n === 0n) return trimmedText(Number(whole.n), lang);
  const text = `${part.n}/${part.d}`;
  const sign = SIGNS[text];
  const units = whole.n === 0n ? '' : trimmedText(Number(whole.n), lang);
  return sign ? `${units}${sign}` : `${units} ${text}`.trim();
}

/** A step as it stands on its block: `¼`, `½`, `1`, `0.1`. */
export function shownStep(step: Fraction, lang: string): string {
  return SIGNS[`${step.n}/${step.d}`] ?? trimmedText(step.valueOf(), lang);
}

/** How far a jar may be filled by one tap, as shares of its full line. */
export const JAR_LEVELS: readonly Fraction[] = of('1/4', '1/2', '3/4', '1');

/** The number of an amount, exact. */
export function valueIn({ num, den }: Amount): Fraction {
  return new Fraction(num, den);
}

/** A fraction as an amount of a unit. */
export function amountOf(value: Fraction, unit: AmountUnit): Amount {
  return { num: Number(value.s * value.n), den: Number(value.d), unit };
}
