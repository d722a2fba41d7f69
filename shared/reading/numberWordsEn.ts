// Whole numbers as English words.

const SMALL = [
  'zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen',
  'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen',
]; // prettier-ignore
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const ORDINALS: Readonly<Record<string, string>> = {
  one: 'first',
  two: 'second',
  three: 'third',
  five: 'fifth',
  eight: 'eighth',
  nine: 'ninth',
  twelve: 'twelfth',
};

/** Above this a number is read digit by digit. */
export const LARGEST_SPELLED = 999_999_999;

/**
 * A whole number from 0 to 999,999,999 in US English words, without "and". Throws for any other.
 * @example cardinalEn(1_250) // => 'one thousand two hundred fifty'
 */
export function cardinalEn(n: number): string {
  if (!Number.isInteger(n) || n < 0 || n > LARGEST_SPELLED) throw new RangeError(`no words for ${n}`);
  if (n < 20) return SMALL[n] as string;
  if (n < 100) return `${TENS[Math.floor(n / 10)] as string}${n % 10 === 0 ? '' : `-${SMALL[n % 10]}`}`;
  for (const [size, name] of [[1_000_000, 'million'], [1_000, 'thousand'], [100, 'hundred']] as const) {
    if (n < size) continue;
    const rest = n % size;
    return `${cardinalEn(Math.floor(n / size))} ${name}${rest === 0 ? '' : ` ${cardinalEn(rest)}`}`;
  } // prettier-ignore
  throw new RangeError(`no words for ${n}`);
}

/**
 * The ordinal of a whole number from 1 to 999,999,999.
 * @example ordinalEn(22) // => 'twenty-second'
 */
export function ordinalEn(n: number): string {
  return cardinalEn(n).replace(/[a-z]+$/, (last) => ORDINALS[last] ?? `${last.replace(/y$/, 'ie')}th`);
}

/**
 * A fraction in words, both numbers from 1 up.
 * @example fractionEn(3, 4) // => 'three fourths'
 */
export function fractionEn(num: number, den: number): string {
  const part = den === 1 ? 'whole' : den === 2 ? 'half' : ordinalEn(den);
  const many = den === 2 ? 'halves' : `${part}s`;
  return `${cardinalEn(num)} ${num === 1 ? part : many}`;
}
