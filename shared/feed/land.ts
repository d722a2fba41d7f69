// Land and animal units.

/** Dry feed of one animal unit, a 1,000-pound cow with her calf, lb a day. Source: USDA-NRCS; University of Nebraska-Lincoln. */
export const ANIMAL_UNIT_LB = 26;

/**
 * Animal units of an animal on pasture. Source: USDA-NRCS handbook through a stocking table. A milking
 * doe eats more than 0.15 of a unit: the figure was made for goats of 100 to 120 lb without milk.
 */
export const ANIMAL_UNITS = Object.freeze({
  cow: 1,
  goat: 0.15,
  'goat kid': 0.1,
  sheep: 0.2,
  lamb: 0.15,
});
/** An animal that the table counts. */
export type GrazingAnimal = keyof typeof ANIMAL_UNITS;

/**
 * Dry feed of an animal as pasture tables count it, lb a day.
 * @example tableFeed_lb('sheep') // => 5.2
 */
export function tableFeed_lb(animal: GrazingAnimal): number {
  return ANIMAL_UNITS[animal] * ANIMAL_UNIT_LB;
}

/** Part of body weight that a grazing animal takes a day, by the same agency's small-farm sheet of 2009. */
export const GRAZED_PART = 0.04;

/** Grazing to be fed from pasture. */
export interface Grazing {
  readonly head: number;
  readonly weight_lb: number;
  readonly days: number;
  /** Dry forage that an acre gives in those days. */
  readonly forage_lbPerAcre: number;
}

/**
 * Pasture, acres: head × weight × 0.04 × days ÷ forage an acre gives; null where the forage is not
 * known to be above 0. Source: USDA-NRCS small farm sheet 2009, through a summary.
 */
export function pasture_acres({ head, weight_lb, days, forage_lbPerAcre }: Grazing): number | null {
  return forage_lbPerAcre > 0 ? (head * weight_lb * GRAZED_PART * days) / forage_lbPerAcre : null;
}
