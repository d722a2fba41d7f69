// Soap from milk and oil. The lye figures are for trained adults, and each carries its caution.

/** Cautions, as ids of facts, that must stand wherever a lye figure stands. */
export const LYE_CAUTIONS = Object.freeze(['lye-adults-only', 'lye-charts-differ'] as const);

/**
 * Sodium hydroxide that turns a gram of oil to soap, g. Published charts differ by more than 4 %; this
 * takes the lowest printed value for each oil, since too little lye is the safer slip.
 * Source: four charts on the web, of which copies were seen.
 */
export const LYE_PER_OIL = Object.freeze({
  olive: 0.134,
  coconut: 0.183,
  palm: 0.141,
  lard: 0.138,
  tallow: 0.14,
  castor: 0.128,
  shea: 0.128,
  sunflower: 0.134,
  cocoa: 0.137,
  'goat butterfat': 0.167,
});
/** An oil with a known lye figure. */
export type SoapOil = keyof typeof LYE_PER_OIL;

/** Oil that is left unturned, as a part of the whole: never less, since charts and oils differ. */
export const LEAST_SPARE_OIL = 0.05;
/** Milk or water to a gram of oil, g: 6 to 16. Source: the same charts. */
export const LIQUID_PER_OIL = 0.375;

/** What a batch takes, in the unit of its oils. */
export type SoapBatch =
  | { ok: true; oil: number; lye: number; milk: number; cautions: typeof LYE_CAUTIONS }
  | { ok: false; why: 'a batch needs oil' | 'at least a twentieth of the oil must be spare' };

/**
 * Lye and milk for a batch of oils by weight, in the unit the oils are weighed in; `spare` is the part
 * of the oil that stays unturned.
 */
export function soapBatch(
  oils: readonly { readonly oil: SoapOil; readonly weight: number }[],
  spare = LEAST_SPARE_OIL,
): SoapBatch {
  const oil = oils.reduce((sum, one) => sum + one.weight, 0);
  if (!(oil > 0) || oils.some(({ weight }) => weight < 0)) return { ok: false, why: 'a batch needs oil' };
  if (!(spare >= LEAST_SPARE_OIL && spare < 1))
    return { ok: false, why: 'at least a twentieth of the oil must be spare' };
  const all = oils.reduce((sum, one) => sum + one.weight * LYE_PER_OIL[one.oil], 0);
  return { ok: true, oil, lye: all * (1 - spare), milk: oil * LIQUID_PER_OIL, cautions: LYE_CAUTIONS };
}

/** Sodium hydroxide that does what a weight of potassium hydroxide does: times 40.00 ÷ 56.11, by the molar masses. */
export function sodiumFromPotassium(koh: number): number {
  return (koh * 40.0) / 56.11;
}
