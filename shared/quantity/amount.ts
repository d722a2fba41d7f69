// An amount as it stands in the milk book: a fraction of whole numbers and a unit, nothing rounded.
import Fraction from 'fraction.js';
import { UNIT_ML, type AmountUnit } from './units.ts';

/** `num / den` of `unit`, as written; both are safe whole numbers, `den` at least 1. */
export interface Amount {
  readonly num: number;
  readonly den: number;
  readonly unit: AmountUnit;
}

/** What was wrong with the text of an amount. */
export type AmountFault = 'empty' | 'negative' | 'not a number' | 'too many digits' | 'divided by zero';

/** A number read from text, exactly, or why it could not be. */
export type ReadNumber = { ok: true; num: number; den: number } | { ok: false; why: AmountFault };

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8',
}; // prettier-ignore
const VULGAR_ANY = new RegExp(`[${Object.keys(VULGAR).join('')}]`, 'g');
// Sixteen digits and more could pass the whole numbers that a double holds exactly.
const MOST_DIGITS = 12;

/**
 * Reads a whole number, a decimal, a fraction or a mixed number without rounding.
 * With `decimalComma` (a semicolon-separated file) a comma may stand for the decimal point.
 * @example readNumber('11 1/2') // => { ok: true, num: 23, den: 2 }
 * @example readNumber('11,5', true) // => { ok: true, num: 115, den: 10 }
 * @example readNumber('-3') // => { ok: false, why: 'negative' }
 */
export function readNumber(text: string, decimalComma = false): ReadNumber {
  let plain = text
    .replace(VULGAR_ANY, (sign) => ` ${VULGAR[sign]}`)
    .replaceAll('⁄', '/')
    .replace(/\s+/g, ' ')
    .trim();
  if (plain === '') return { ok: false, why: 'empty' };
  if (decimalComma) plain = plain.replace(/^(\d*),(\d+)$/, '$1.$2');
  if (/^[-−–]\s*[\d.,]/.test(plain)) return { ok: false, why: 'negative' };
  const decimal = /^\+?(\d+)(?:\.(\d*))?$|^\+?\.(\d+)$/.exec(plain);
  if (decimal) return fromDecimal(decimal[1] ?? '0', (decimal[2] ?? decimal[3] ?? '').replace(/0+$/, ''));
  const mixed = /^(?:(\d+) )?(\d+) ?\/ ?(\d+)$/.exec(plain);
  if (!mixed) return { ok: false, why: 'not a number' };
  if (plain.length > MOST_DIGITS) return { ok: false, why: 'too many digits' };
  const [whole, num, den] = [Number(mixed[1] ?? 0), Number(mixed[2]), Number(mixed[3])];
  if (den === 0) return { ok: false, why: 'divided by zero' };
  const top = whole * den + num;
  return Number.isSafeInteger(top) ? { ok: true, num: top, den } : { ok: false, why: 'too many digits' };
}

function fromDecimal(whole: string, part: string): ReadNumber {
  if (whole.replace(/^0+/, '').length + part.length > MOST_DIGITS)
    return { ok: false, why: 'too many digits' };
  return { ok: true, num: Number(whole + part), den: 10 ** part.length };
}

/** The exact volume of an amount, mL. */
export function amount_mL(amount: Amount): Fraction {
  return new Fraction(amount.num, amount.den).mul(UNIT_ML[amount.unit]);
}
