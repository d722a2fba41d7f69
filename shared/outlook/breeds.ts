// What a doe of a breed gives in a year, for does that have no milk of their own on record.
import { UNIT_ML } from '../quantity/units.ts';

/** A breed's yearly milk with its source. */
export interface BreedYear {
  readonly breed: string;
  /** Milk of a doe in a year, L. */
  readonly year_L: number;
  readonly source: string;
  readonly sure: 'seen' | 'memory';
}

const SOURCE =
  'Council on Dairy Cattle Breeding, national herd averages of dairy goats 2024, as relayed by a farm';
const YEAR_LB = [
  ['Alpine', 2534],
  ['LaMancha', 2226],
  ['Nigerian Dwarf', 562],
  ['Nubian', 1376],
  ['Oberhasli', 1463],
  ['Saanen', 2837],
  ['Sable', 1487],
  ['Toggenburg', 1913],
] as const;

/** US herd averages of a year by breed, turned to litres at 1.03 kg/L. Few herds stand behind the small breeds. */
export const BREED_YEARS: readonly BreedYear[] = Object.freeze(
  YEAR_LB.map(([breed, pounds]) => ({
    breed,
    year_L: (pounds * UNIT_ML.lb.valueOf()) / 1000,
    source: SOURCE,
    sure: 'seen' as const,
  })),
);

/**
 * The figures of a breed as farms write its name: any letter case, with or without spaces and hyphens.
 * Null where the table has none; a cross has none, as nothing says which parent she takes after.
 */
export function breedYear(breeds: readonly BreedYear[], breed: string): BreedYear | null {
  const plain = (name: string) => name.toLowerCase().replace(/[\s-]+/g, '');
  return breeds.find((one) => plain(one.breed) === plain(breed)) ?? null;
}
