// The amount in a cell of an imported sheet: a number, perhaps with its unit, or what is wrong with it.
import Fraction from 'fraction.js';
import { amount_mL, readNumber, type Amount } from '../quantity/amount.ts';
import { UNIT_ML, unitNamed, type AmountUnit } from '../quantity/units.ts';
import type { Told } from './importTypes.ts';

/** A read cell; `amount` null where it is empty. `text` is the number as it will be written. */
export type ImportedAmount =
  | {
      readonly ok: true;
      readonly amount: Amount | null;
      readonly text: string | null;
      readonly warning: Told | null;
    }
  | { readonly ok: false; readonly told: Told };

/** How amounts are read. */
export interface AmountReading {
  /** The unit where the cell names none. */
  readonly unit: AmountUnit;
  readonly decimalComma: boolean;
  readonly largest: { readonly amount: number; readonly unit: AmountUnit };
}

// As long as the desk takes one from a phone: beyond it stands no amount, and looking for one takes long.
const LONGEST_AMOUNT = 60;
const NOTHING = new Set(['', '-', '–', '—']);

/** Reads `11 1/2`, `9.5`, `9½ cups`, `9,5`; a dash is an empty cell. */
export function importedAmount(cell: string, reading: AmountReading): ImportedAmount {
  const plain = cell.trim();
  if (NOTHING.has(plain)) return { ok: true, amount: null, text: null, warning: null };
  if (plain.length > LONGEST_AMOUNT) return { ok: false, told: { key: 'fault.amount.number', slots: {} } };
  const { number, unit } = apart(plain, reading.unit);
  const exact = readNumber(number, reading.decimalComma);
  const comma = !exact.ok && /^\d+,\d{1,2}$/.test(number) ? readNumber(number, true) : null;
  const read = comma?.ok ? comma : exact;
  if (!read.ok) return { ok: false, told: { key: `fault.amount.${keyOf(read.why)}`, slots: {} } };
  const amount = { num: read.num, den: read.den, unit };
  const { largest } = reading;
  if (amount_mL(amount).compare(UNIT_ML[largest.unit].mul(new Fraction(largest.amount))) > 0)
    return {
      ok: false,
      told: { key: 'fault.amount.tooMuch', slots: { most: `${largest.amount} ${largest.unit}` } },
    };
  const point = reading.decimalComma || comma?.ok ? number.replace(',', '.') : number;
  const warning = comma?.ok ? { key: 'warn.comma', slots: { found: number, read: point } } : null;
  return { ok: true, amount, text: point, warning };
}

// A unit behind the number counts before the one of the column.
function apart(text: string, unit: AmountUnit): { number: string; unit: AmountUnit } {
  const match = /^(.*?[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])\s*(\p{L}[\p{L}. ]*)$/u.exec(text);
  const named = match ? unitNamed(match[2] ?? '') : null;
  return named && match ? { number: match[1] ?? '', unit: named } : { number: text, unit };
}

function keyOf(why: string): string {
  const keys: Readonly<Record<string, string>> = {
    negative: 'negative',
    'too many digits': 'digits',
    'divided by zero': 'zero',
  };
  return keys[why] ?? 'number';
}
