// A doe's weight between the farm's unit and the kilograms of does.csv.
import type { UnitSystem } from '../../../../shared/herd/types.ts';

// NIST Handbook 44: the avoirdupois pound, exact.
const POUND_KG = 0.45359237;

/** A weight as the form shows it; what is no number stays as it is written. */
export function shownWeight(written_kg: string, units: UnitSystem): string {
  const kg = numberIn(written_kg);
  if (units === 'metric' || kg === null) return written_kg;
  return String(Math.round((kg / POUND_KG) * 10) / 10);
}

/** What is written into the table; what is no number goes as it is, for the desk to say what is wrong. */
export function kilograms(shown: string, units: UnitSystem): string {
  const value = numberIn(shown);
  if (value === null) return shown;
  return String(units === 'metric' ? value : Math.round(value * POUND_KG * 10) / 10);
}

function numberIn(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}
