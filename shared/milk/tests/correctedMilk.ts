// Milk of different richness brought to one measure.

/** Milk and its test. */
export interface TestedMilk {
  readonly milk_kg: number;
  readonly fat_pct: number;
  readonly protein_pct: number;
}

/**
 * Energy-corrected milk, kg, of 3.14 MJ a kilogram: milk × (383 × fat % + 242 × protein % + 780.8) ÷ 3140.
 * Source: the formula that the open herd record `milkman` (Friggens and others 2007) is computed by.
 * The constants were found in cows.
 */
export function ecm_kg({ milk_kg, fat_pct, protein_pct }: TestedMilk): number {
  return (milk_kg * (383 * fat_pct + 242 * protein_pct + 780.8)) / 3140;
}

/**
 * Energy-corrected milk to 3.5 % fat and 3.2 % protein, in the unit of the milk:
 * 0.327 × milk + 12.95 × fat + 7.2 × protein, by weight. Source: Tyrrell and Reid 1965, in the form
 * that US extension pages print. The constants were found in cows.
 */
export function ecmTyrrellReid_kg({ milk_kg, fat_pct, protein_pct }: TestedMilk): number {
  return 0.327 * milk_kg + (12.95 * milk_kg * fat_pct) / 100 + (7.2 * milk_kg * protein_pct) / 100;
}

/**
 * Fat-corrected milk of a base fat percent, in the unit of the milk. With the base at 4 % it is Gaines'
 * 0.4 × milk + 15 × fat (1928); any other base divides by the value of milk of that base.
 * Source: Cassell, Virginia Tech Extension.
 * @example fcm_kg(1000, 3.5) // => 925
 */
export function fcm_kg(milk_kg: number, fat_pct: number, base_pct = 4): number {
  return (milk_kg * (0.4 + 0.15 * fat_pct)) / (0.4 + 0.15 * base_pct);
}

/**
 * Goat's milk corrected to 3.5 % fat, kg: milk × (0.634 + 0.1046 × fat %).
 * Source: as used for goats by INRA and Pulina 1991 (from memory).
 */
export function goatFcm35_kg(milk_kg: number, fat_pct: number): number {
  return milk_kg * (0.634 + 0.1046 * fat_pct);
}

/**
 * Fat- and protein-corrected milk of 4.0 % fat and 3.3 % protein, kg:
 * milk × (0.1226 × fat % + 0.0776 × true protein % + 0.2534).
 * Source: International Dairy Federation, Bulletin 479/2015 (from memory).
 */
export function fpcm_kg({ milk_kg, fat_pct, protein_pct }: TestedMilk): number {
  return milk_kg * (0.1226 * fat_pct + 0.0776 * protein_pct + 0.2534);
}

/**
 * The same as the climate model of the Food and Agriculture Organization counts it (GLEAM), kg:
 * milk × (0.337 + 0.116 × fat % + 0.06 × protein %). From memory.
 */
export function fpcmGleam_kg({ milk_kg, fat_pct, protein_pct }: TestedMilk): number {
  return milk_kg * (0.337 + 0.116 * fat_pct + 0.06 * protein_pct);
}

/**
 * Energy of goat's milk, MJ/kg: 1.4694 + 0.4025 × fat %.
 * Source: Nsahlai and others 2004, Small Ruminant Research 53:253.
 */
export function goatMilkEnergy_MJPerKg(fat_pct: number): number {
  return 1.4694 + 0.4025 * fat_pct;
}
