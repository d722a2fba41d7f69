// Whole numbers as Spanish words.
import { LARGEST_SPELLED } from './numberWordsEn.ts';

const SMALL = [
  'cero', 'uno', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve', 'diez', 'once', 'doce', 'trece', 'catorce', 'quince',
  'dieciséis', 'diecisiete', 'dieciocho', 'diecinueve', 'veinte', 'veintiuno', 'veintidós', 'veintitrés', 'veinticuatro', 'veinticinco',
  'veintiséis', 'veintisiete', 'veintiocho', 'veintinueve',
]; // prettier-ignore
const TENS = ['', '', '', 'treinta', 'cuarenta', 'cincuenta', 'sesenta', 'setenta', 'ochenta', 'noventa'];
const HUNDREDS = [
  '', 'ciento', 'doscientos', 'trescientos', 'cuatrocientos', 'quinientos', 'seiscientos', 'setecientos', 'ochocientos', 'novecientos',
]; // prettier-ignore
const PARTS = ['', '', 'medio', 'tercio', 'cuarto', 'quinto', 'sexto', 'séptimo', 'octavo', 'noveno', 'décimo']; // prettier-ignore

/**
 * A whole number from 0 to 999,999,999 in Spanish words, as it stands alone ("uno"). Throws for any other.
 * @example cardinalEs(1_231) // => 'mil doscientos treinta y uno'
 */
export function cardinalEs(n: number): string {
  if (!Number.isInteger(n) || n < 0 || n > LARGEST_SPELLED) throw new RangeError(`no words for ${n}`);
  if (n < 30) return SMALL[n] as string;
  if (n < 100) return `${TENS[Math.floor(n / 10)] as string}${n % 10 === 0 ? '' : ` y ${SMALL[n % 10]}`}`;
  if (n === 100) return 'cien';
  if (n < 1_000) return withRest(HUNDREDS[Math.floor(n / 100)] as string, n % 100);
  if (n < 1_000_000) {
    const thousands = Math.floor(n / 1_000);
    return withRest(thousands === 1 ? 'mil' : `${beforeNoun(cardinalEs(thousands))} mil`, n % 1_000);
  }
  const millions = Math.floor(n / 1_000_000);
  const told = millions === 1 ? 'un millón' : `${beforeNoun(cardinalEs(millions))} millones`;
  return withRest(told, n % 1_000_000);
}

const withRest = (told: string, rest: number) => (rest === 0 ? told : `${told} ${cardinalEs(rest)}`);

/**
 * A number as it stands before what is counted: "un", "veintiún"; "una" before a feminine noun.
 * @example beforeNoun('veintiuno') // => 'veintiún'
 */
export function beforeNoun(told: string, feminine = false): string {
  if (!told.endsWith('uno')) return told;
  if (feminine) return `${told.slice(0, -1)}a`;
  return told.endsWith('veintiuno') ? `${told.slice(0, -3)}ún` : told.slice(0, -1);
}

/**
 * A fraction in words, both numbers from 1 up.
 * @example fractionEs(3, 4) // => 'tres cuartos'
 */
export function fractionEs(num: number, den: number): string {
  const part = den === 1 ? 'entero' : den === 100 ? 'centésimo' : (PARTS[den] ?? `${cardinalEs(den)}avo`);
  return `${beforeNoun(cardinalEs(num))} ${part.replaceAll(' ', '')}${num === 1 ? '' : 's'}`;
}
