// Amounts as people read them: rounded once, here, and told in the units of the farm.
import { UNIT_ML, type AmountUnit } from './units.ts';

// School Spanish in the Americas writes the decimal point; a bare `es` would write a comma.
const NUMBER_LOCALE: Readonly<Record<string, string>> = { en: 'en-US', es: 'es-MX' };
const PART_SIGNS: Readonly<Record<string, string>> = { '1/4': '¼', '1/2': '½', '3/4': '¾' };

/**
 * A volume in parts of a unit, rounded half up to a whole number of them.
 * @example inParts(473.176473, 'cup', 4) // => 8
 */
export function inParts(volume_mL: number, unit: AmountUnit, partsPerUnit: number): number {
  return Math.floor((volume_mL / UNIT_ML[unit].valueOf()) * partsPerUnit + 0.5);
}

/**
 * A number of halves or quarters as a mixed number.
 * @example mixedText(47, 4, 'en') // => '11¾'
 * @example mixedText(2, 4, 'en') // => '½'
 */
export function mixedText(parts: number, partsPerUnit: 1 | 2 | 4, lang: string): string {
  const whole = Math.floor(parts / partsPerUnit);
  const rest = parts - whole * partsPerUnit;
  if (rest === 0) return decimalText(whole, 0, lang);
  const sign = PART_SIGNS[partsPerUnit === 4 && rest === 2 ? '1/2' : `${rest}/${partsPerUnit}`] ?? '';
  return whole === 0 ? sign : `${decimalText(whole, 0, lang)}${sign}`;
}

/**
 * A number with a fixed count of decimals, grouped as the language does.
 * @example decimalText(1234.5, 2, 'en') // => '1,234.50'
 */
export function decimalText(value: number, places: number, lang: string): string {
  return new Intl.NumberFormat(NUMBER_LOCALE[lang] ?? lang, {
    minimumFractionDigits: places,
    maximumFractionDigits: places,
  }).format(value);
}

/**
 * A span of dates in words, such as `May 14 – 20, 2026`.
 * Both are ISO dates; they are read as plain calendar days, whatever the zone.
 */
export function spanText(from: string, to: string, lang: string): string {
  const format = new Intl.DateTimeFormat(NUMBER_LOCALE[lang] ?? lang, { dateStyle: 'long', timeZone: 'UTC' });
  const text = from === to ? format.format(noon(to)) : format.formatRange(noon(from), noon(to));
  // Thin spaces of the locale data are missing from some fonts.
  return text.replace(/[\u2009\u202f]/g, ' ');
}

/** One date in words, with or without its weekday and year. */
export function dateText(iso: string, lang: string, style: 'day' | 'long' = 'long'): string {
  const options: Intl.DateTimeFormatOptions =
    style === 'long'
      ? { dateStyle: 'long', timeZone: 'UTC' }
      : { weekday: 'short', month: 'short', day: 'numeric', timeZone: 'UTC' };
  return new Intl.DateTimeFormat(NUMBER_LOCALE[lang] ?? lang, options).format(noon(iso));
}

// A date given by its text alone reads no clock.
const noon = (iso: string) => new Date(`${iso}T12:00:00Z`);
