// How much cheese a milk gives, by its fat and casein.

/**
 * Casein as a part of the protein of each milk. Sources: goat 2.65 of 3.54 % in a published table
 * (Hindawi 2019); cow from memory.
 */
export const CASEIN_PART = Object.freeze({ goat: 0.749, cow: 0.78 });

/** Moisture of cheddar, as a part of the cheese, that the formula is usually told with. */
export const CHEDDAR_MOISTURE = 0.37;

/** A yield in kg of cheese from 100 kg of milk, or why the formula has no answer. */
export type CheeseYield =
  | { ok: true; yield_kgPer100kg: number }
  | { ok: false; why: 'the moisture must be at least 0 and below 1' | 'fat and casein must be above 0' };

/**
 * Cheese from 100 kg of milk: (0.93 × fat % + casein % − 0.1) × 1.09 ÷ (1 − moisture). It was found for
 * cheddar and tells too little for moist cheese. Source: Van Slyke and Price; University of Guelph.
 * @example vanSlyke(3.6, 2.5, 0.37).ok // => true
 */
export function vanSlyke(fat_pct: number, casein_pct: number, moisture: number): CheeseYield {
  if (!(moisture >= 0 && moisture < 1))
    return { ok: false, why: 'the moisture must be at least 0 and below 1' };
  if (!(fat_pct > 0 && casein_pct > 0)) return { ok: false, why: 'fat and casein must be above 0' };
  return { ok: true, yield_kgPer100kg: ((0.93 * fat_pct + casein_pct - 0.1) * 1.09) / (1 - moisture) };
}

/**
 * A yield at one moisture told as if the cheese had another, so that two cheeses compare: the dry part
 * stays the same. Moistures in percent. Source: University of Guelph.
 */
export function atMoisture(yield_kgPer100kg: number, is_pct: number, told_pct: number): number {
  return (yield_kgPer100kg * (100 - is_pct)) / (100 - told_pct);
}
