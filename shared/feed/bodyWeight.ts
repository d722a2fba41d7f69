// What a doe weighs: as the farm wrote it down, else what her breed usually weighs.
import type { Doe } from '../herd/types.ts';
import type { Range } from './range.ts';

const LB_KG = 0.45359237;

// Grown does in pounds, standard or typical. Alpine seen at Purdue; Nubian, Saanen and Nigerian Dwarf on
// breed pages; LaMancha, Toggenburg and Oberhasli from memory.
const BREED_LB: Readonly<Record<string, readonly [number, number]>> = {
  alpine: [135, 135],
  saanen: [135, 145],
  nubian: [135, 135],
  lamancha: [130, 130],
  toggenburg: [120, 120],
  oberhasli: [120, 120],
  'nigerian dwarf': [60, 80],
};

/** Her weight and where it is from, or why there is none. */
export type BodyWeight =
  | { ok: true; weight_kg: Range; from: 'does.csv' | 'breed' }
  | { ok: false; why: 'does.csv gives neither her weight nor a breed with a known weight' };

/** A doe's weight, kg: one number from `does.csv`, or her breed's range. */
export function bodyWeight(doe: Pick<Doe, 'breed' | 'weight_kg'>): BodyWeight {
  if (doe.weight_kg !== null)
    return { ok: true, weight_kg: { low: doe.weight_kg, high: doe.weight_kg }, from: 'does.csv' };
  const breed = doe.breed.trim().toLowerCase();
  const pounds = Object.hasOwn(BREED_LB, breed) ? BREED_LB[breed] : undefined;
  if (!pounds) return { ok: false, why: 'does.csv gives neither her weight nor a breed with a known weight' };
  return { ok: true, weight_kg: { low: pounds[0] * LB_KG, high: pounds[1] * LB_KG }, from: 'breed' };
}
