// Feed and water that an animal takes in a day.
import type { Range } from './range.ts';

/** Dry feed as a part of body weight. Sources: course of the Indian Council of Agricultural Research; NRC 2007 (from memory). */
export const DRY_FEED_PART = Object.freeze({
  milking: Object.freeze({ low: 0.04, high: 0.05 }),
  dry: Object.freeze({ low: 0.02, high: 0.03 }),
});

/** Dry feed of a doe from her weight alone, kg a day: the lightest at the least part, the heaviest at the most. */
export function dryFeed_kg(weight_kg: Range, phase: keyof typeof DRY_FEED_PART): Range {
  const part = DRY_FEED_PART[phase];
  return { low: weight_kg.low * part.low, high: weight_kg.high * part.high };
}

/**
 * Dry feed of a doe in milk, kg a day: 0.062 × weight^0.75 + 0.305 × milk of 3.5 % fat (kg).
 * Source: Agricultural and Food Research Council 1998, The Nutrition of Goats (from memory).
 */
export function goatDryFeed_kg(weight_kg: number, fcm35_kg: number): number {
  return 0.062 * weight_kg ** 0.75 + 0.305 * fcm35_kg;
}

/**
 * Dry feed of a cow past the first weeks of milk, kg a day: 0.372 × milk of 4 % fat (kg) + 0.0968 × weight^0.75.
 * Source: National Research Council 2001, Nutrient Requirements of Dairy Cattle (from memory).
 */
export function cowDryFeed_kg(weight_kg: number, fcm4_kg: number): number {
  return 0.372 * fcm4_kg + 0.0968 * weight_kg ** 0.75;
}

const GALLON_L = 3.785411784;
const POUND_KG = 0.45359237;
/** A goat of 100 lb drinks 1 to 3 gallons a day before milk, L. Source: J. Bentley, Iowa State University Extension 2022. */
export const WATER_BASE_L: Range = Object.freeze({ low: GALLON_L, high: 3 * GALLON_L });
/** Half a gallon more for 2 lb of milk, L/kg. Same source. */
export const WATER_PER_MILK_LPERKG = (0.5 * GALLON_L) / (2 * POUND_KG);

/** Water of a doe, L a day; her weight is left out, since the source speaks of one size alone. */
export function water_L(milk_kg: number): Range {
  const forMilk_L = WATER_PER_MILK_LPERKG * milk_kg;
  return { low: WATER_BASE_L.low + forMilk_L, high: WATER_BASE_L.high + forMilk_L };
}

/** Concentrate for a kilogram of milk, kg. Source: Morand-Fehr and Sauvant 1980, Journal of Dairy Science 63:1671. */
export const CONCENTRATE_PER_MILK: Range = Object.freeze({ low: 0.3, high: 0.4 });
/** Hay of a grown doe, kg a day (4 to 5 lb). Source: extension pages (from memory). */
export const HAY_KG: Range = Object.freeze({ low: 1.8, high: 2.3 });
