// Sums as a pocket calculator would take them: with an equals sign only where the shown numbers really add up.
import { decimalText } from './show.ts';

const PLACES = 2;
const hundredths = (value: number) => Math.round(value * 100 + 1e-7);

/**
 * `a + b = c` with two decimals each; `≈` where the rounded parts do not add up to the rounded sum.
 * @example sumText([1.5, 1], 2.5, 'en') // => '1.50 + 1.00 = 2.50'
 * @example sumText([1.374, 1.374], 2.748, 'en') // => '1.37 + 1.37 ≈ 2.75'
 */
export function sumText(parts: readonly number[], total: number, lang: string): string {
  const shown = decimalText(total, PLACES, lang);
  if (parts.length < 2) return shown;
  const added = parts.reduce((sum, part) => sum + hundredths(part), 0);
  const sign = added === hundredths(total) ? '=' : '≈';
  return `${parts.map((part) => decimalText(part, PLACES, lang)).join(' + ')} ${sign} ${shown}`;
}

/**
 * `a ÷ n = b` with two decimals; `≈` where the shown quotient is rounded. `count` is at least 1.
 * @example quotientText(24, 6, 'en') // => '24.00 ÷ 6 = 4.00'
 * @example quotientText(10, 3, 'en') // => '10.00 ÷ 3 ≈ 3.33'
 */
export function quotientText(total: number, count: number, lang: string): string {
  const quotient = total / count;
  const exact = hundredths(quotient) * count === hundredths(total);
  return `${decimalText(total, PLACES, lang)} ÷ ${count} ${exact ? '=' : '≈'} ${decimalText(quotient, PLACES, lang)}`;
}
