// The units a milk book may be written in, each an exact number of millilitres.
import Fraction from 'fraction.js';

/** US customary and metric units of volume that a row may name. */
export type VolumeUnit = 'cup' | 'pt' | 'qt' | 'gal' | 'fl oz' | 'mL' | 'L';
/** Units of weight that a row may name; they are turned to volume by the density of milk. */
export type WeightUnit = 'lb' | 'oz' | 'kg' | 'g';
/** Any unit of an amount in the milk book. */
export type AmountUnit = VolumeUnit | WeightUnit;

/** Density that turns weights to volumes, kg/L. The contract fixes it; 8.6 lb a US gallon is 1.0305 kg/L. */
export const MILK_DENSITY_KG_PER_L = new Fraction('1.03');

const GALLON_ML = new Fraction('3785.411784');
const POUND_G = new Fraction('453.59237');
const mLOfGrams = (grams: Fraction) => grams.div(MILK_DENSITY_KG_PER_L);

/**
 * Millilitres in one of each unit, exact.
 * Source: NIST Handbook 44, Appendix C: 1 US gallon = 231 cubic inches = 3.785411784 L and its
 * binary parts; 1 avoirdupois pound = 453.59237 g, 1 oz = 1/16 lb.
 */
export const UNIT_ML: Readonly<Record<AmountUnit, Fraction>> = Object.freeze({
  'fl oz': GALLON_ML.div(128),
  cup: GALLON_ML.div(16),
  pt: GALLON_ML.div(8),
  qt: GALLON_ML.div(4),
  gal: GALLON_ML,
  mL: new Fraction(1),
  L: new Fraction(1000),
  g: mLOfGrams(new Fraction(1)),
  kg: mLOfGrams(new Fraction(1000)),
  oz: mLOfGrams(POUND_G.div(16)),
  lb: mLOfGrams(POUND_G),
});

/** Every unit's name as the contract writes it. */
export const AMOUNT_UNITS = Object.freeze(Object.keys(UNIT_ML) as AmountUnit[]);

/**
 * The unit that pages tell a day's milk in.
 * @example shownUnit('us') // => 'cup'
 */
export function shownUnit(units: 'us' | 'metric'): 'cup' | 'L' {
  return units === 'us' ? 'cup' : 'L';
}

// Spellings people write; compared in lower case, without full stops and with single spaces.
const SPELLINGS: Readonly<Record<string, AmountUnit>> = {
  cup: 'cup', cups: 'cup', c: 'cup',
  pt: 'pt', pts: 'pt', pint: 'pt', pints: 'pt',
  qt: 'qt', qts: 'qt', quart: 'qt', quarts: 'qt',
  gal: 'gal', gals: 'gal', gallon: 'gal', gallons: 'gal',
  'fl oz': 'fl oz', floz: 'fl oz', 'fluid ounce': 'fl oz', 'fluid ounces': 'fl oz',
  ml: 'mL', l: 'L', liter: 'L', liters: 'L', litre: 'L', litres: 'L',
  lb: 'lb', lbs: 'lb', pound: 'lb', pounds: 'lb',
  oz: 'oz', ounce: 'oz', ounces: 'oz',
  kg: 'kg', g: 'g',
}; // prettier-ignore

/**
 * The unit that a text names, whatever its letter case, or null where no unit is spelled so.
 * @example unitNamed('Cups') // => 'cup'
 * @example unitNamed('fl. oz.') // => 'fl oz'
 * @example unitNamed('bucket') // => null
 */
export function unitNamed(text: string): AmountUnit | null {
  const plain = text.toLowerCase().replaceAll('.', '').replace(/\s+/g, ' ').trim();
  return Object.hasOwn(SPELLINGS, plain) ? (SPELLINGS[plain] ?? null) : null;
}
