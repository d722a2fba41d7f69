// The amount and unit cells of a row, as an exact amount or the words of a fault.
import Fraction from 'fraction.js';
import { amount_mL, readNumber, type Amount, type AmountFault } from '../../shared/quantity/amount.ts';
import { AMOUNT_UNITS, UNIT_ML, unitNamed, type AmountUnit } from '../../shared/quantity/units.ts';
import { shown } from './fault.ts';
import { nearestName } from './nearest.ts';

/** What is wrong, and under which heading. */
interface AmountCellFault {
  readonly column: 'amount' | 'unit';
  readonly found: string;
  readonly expected: string;
  readonly nearest: string | null;
  readonly todo: string;
}

/** Amount is null where the cell is empty: the entry is struck out. */
export type AmountCell = { ok: true; amount: Amount | null } | { ok: false; faults: AmountCellFault[] };

/** The farm's rules for amounts; `largest` is null where farm.yaml could not be read. */
export interface AmountRules {
  readonly recordUnit: AmountUnit;
  readonly largest: { readonly amount: number; readonly unit: AmountUnit; readonly from: string } | null;
}

const EXPECTED = 'a number such as 11, 11.5, 11 1/2 or 11½';

/**
 * A reader that remembers what it has read: a long book repeats its amounts. `decimalComma` is true
 * in semicolon-separated files.
 */
export function amountReader(
  rules: AmountRules,
): (amount: string, unit: string, decimalComma: boolean) => AmountCell {
  const known = new Map<string, Map<string, AmountCell>>();
  return (amount, unit, decimalComma) => {
    const dialect = decimalComma ? `;${unit}` : unit;
    let ofUnit = known.get(dialect);
    if (ofUnit === undefined) known.set(dialect, (ofUnit = new Map<string, AmountCell>()));
    let cell = ofUnit.get(amount);
    if (cell === undefined) ofUnit.set(amount, (cell = readAmountCell(amount, unit, decimalComma, rules)));
    return cell;
  };
}

function readAmountCell(
  text: string,
  unitText: string,
  decimalComma: boolean,
  rules: AmountRules,
): AmountCell {
  const unit = unitText === '' ? rules.recordUnit : unitNamed(unitText);
  const number = readNumber(text, decimalComma);
  const faults: AmountCellFault[] = [];
  if (!number.ok && number.why !== 'empty') faults.push(notANumber(text, number.why, decimalComma));
  if (unit === null) faults.push(unknownUnit(unitText));
  if (unit === null || faults.length > 0) return { ok: false, faults };
  if (!number.ok) return { ok: true, amount: null };
  const amount = { num: number.num, den: number.den, unit };
  const { largest } = rules;
  if (largest && isLarger(amount, largest)) return { ok: false, faults: [tooLarge(amount, text, largest)] };
  return { ok: true, amount };
}

function isLarger(amount: Amount, largest: { amount: number; unit: AmountUnit }): boolean {
  return amount_mL(amount).compare(UNIT_ML[largest.unit].mul(new Fraction(largest.amount))) > 0;
}

function tooLarge(
  amount: Amount,
  text: string,
  largest: NonNullable<AmountRules['largest']>,
): AmountCellFault {
  return {
    column: 'amount',
    found: `${text} ${amount.unit}`,
    expected: `at most ${largest.amount} ${largest.unit} from one doe at one milking (largestMilking ${largest.from})`,
    nearest: null,
    todo: 'check: correct the amount or its unit; or, if she truly gave so much, make largestMilking larger in farm.yaml',
  };
}

function unknownUnit(text: string): AmountCellFault {
  const fault = {
    column: 'unit',
    found: shown(text),
    expected: `one of ${AMOUNT_UNITS.join(', ')}`,
  } as const;
  const nearest = nearestName(text, AMOUNT_UNITS);
  if (readNumber(text, true).ok)
    return {
      ...fault,
      nearest: null,
      todo: 'put the number under amount and the unit here; leave the cell empty for the unit that farm.yaml names',
    };
  return {
    ...fault,
    nearest,
    todo: 'write one of these, or leave the cell empty for the unit that farm.yaml names (recordUnit)',
  };
}

function notANumber(text: string, why: AmountFault, decimalComma: boolean): AmountCellFault {
  const fault = { column: 'amount', found: shown(text), expected: EXPECTED, nearest: null } as const;
  if (why === 'negative')
    return {
      ...fault,
      expected: 'an amount of 0 or more',
      todo: 'correct the amount; to strike an entry out, leave the amount empty',
    };
  if (why === 'too many digits')
    return {
      ...fault,
      expected: 'a number of at most 12 digits',
      todo: 'round the amount to what the jug or scale shows',
    };
  if (why === 'divided by zero')
    return { ...fault, expected: 'a fraction with a number below the line', todo: 'correct the fraction' };
  const unit = withUnit(text, decimalComma);
  if (unit)
    return {
      ...fault,
      nearest: unit.number,
      todo: `put the unit in the unit column: ${unit.number} under amount, ${unit.unit} under unit`,
    };
  const point = text.replace(',', '.');
  if (/^\d+,\d+$/.test(text) && readNumber(point).ok)
    return {
      ...fault,
      nearest: point,
      todo: `write ${point}; a decimal comma is read only in files whose cells stand between semicolons`,
    };
  return { ...fault, todo: 'write the number alone; leave the cell empty to strike the entry out' };
}

function withUnit(text: string, decimalComma: boolean): { number: string; unit: AmountUnit } | null {
  const match = /^(.*?[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])\s*(\p{L}[\p{L}. ]*)$/u.exec(text);
  const number = match?.[1] ?? '';
  const unit = unitNamed(match?.[2] ?? '');
  return unit && readNumber(number, decimalComma).ok ? { number, unit } : null;
}
