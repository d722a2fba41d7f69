// Amounts as people read them: rounded once, here, and told in the units of the farm.
import { UNIT_SIZE_mL } from './unitSize.ts';
import type { AmountUnit } from './units.ts';

// School Spanish in the Americas writes the decimal point; a bare `es` would write a comma.
const NUMBER_LOCALE: Readonly<Record<string, string>> = { en: 'en-US', es: 'es-MX' };
const PART_SIGNS: Readonly<Record<string, string>> = { '1/4': '¼', '1/2': '½', '3/4': '¾' };

// A double of half a part may lie a hair below it. No amount in a book is written so finely.
const HAIR = 1e-9;

/**
 * The nearest whole number of parts, halves up, also where arithmetic left them a hair below the half.
 * @example wholeParts(5.499999999999999) // => 6
 */
export function wholeParts(parts: number): number {
  return Math.floor(parts + 0.5 + HAIR);
}

/**
 * A volume in parts of a unit, rounded half up to a whole number of them.
 * @example inParts(473.176473, 'cup', 4) // => 8
 */
export function inParts(volume_mL: number, unit: AmountUnit, partsPerUnit: number): number {
  return wholeParts((volume_mL / UNIT_SIZE_mL[unit]) * partsPerUnit);
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
  return numberFormat(lang, places, places).format(value);
}

/**
 * A number with no more decimals than it needs, two at most.
 * @example trimmedText(78.5, 'en') // => '78.5'
 */
export function trimmedText(value: number, lang: string): string {
  return numberFormat(lang, 0, 2).format(value);
}

// Making a formatter costs a hundred times its use; they are kept by what they were made for.
const numberFormats = new Map<string, Intl.NumberFormat>();
const dateFormats = new Map<string, Intl.DateTimeFormat>();

function numberFormat(lang: string, least: number, most: number): Intl.NumberFormat {
  const key = `${lang} ${least} ${most}`;
  let format = numberFormats.get(key);
  if (format === undefined) {
    const digits = { minimumFractionDigits: least, maximumFractionDigits: most };
    numberFormats.set(key, (format = new Intl.NumberFormat(NUMBER_LOCALE[lang] ?? lang, digits)));
  }
  return format;
}

const DATE_STYLES: Readonly<Record<'day' | 'long' | 'clock', Intl.DateTimeFormatOptions>> = {
  day: { weekday: 'short', month: 'short', day: 'numeric' },
  long: { dateStyle: 'long' },
  clock: { timeStyle: 'short' },
};

function dateFormat(lang: string, style: keyof typeof DATE_STYLES): Intl.DateTimeFormat {
  const key = `${lang} ${style}`;
  let format = dateFormats.get(key);
  if (format === undefined) {
    const options = { ...DATE_STYLES[style], timeZone: 'UTC' };
    dateFormats.set(key, (format = new Intl.DateTimeFormat(NUMBER_LOCALE[lang] ?? lang, options)));
  }
  return format;
}

/**
 * A span of dates in words, such as `May 14 – 20, 2026`.
 * Both are ISO dates; they are read as plain calendar days, whatever the zone.
 */
export function spanText(from: string, to: string, lang: string): string {
  const format = dateFormat(lang, 'long');
  const text = from === to ? format.format(noon(to)) : format.formatRange(noon(from), noon(to));
  // Thin spaces of the locale data are missing from some fonts.
  return text.replace(/[\u2009\u202f]/g, ' ');
}

/** One date in words, with or without its weekday and year. */
export function dateText(iso: string, lang: string, style: 'day' | 'long' = 'long'): string {
  return dateFormat(lang, style).format(noon(iso));
}

// A date given by its text alone reads no clock.
const noon = (iso: string) => new Date(`${iso}T12:00:00Z`);

/**
 * A number with as many decimals as its size asks for: none from a hundred, one from ten, two above a
 * tenth, three below; without zeros at the end.
 * @example sizedText(134.2, 'en') // => '134'
 * @example sizedText(0.0701, 'en') // => '0.07'
 */
export function sizedText(value: number, lang: string): string {
  const size = Math.abs(value);
  const places = size >= 100 ? 0 : size >= 10 ? 1 : size >= 0.1 ? 2 : 3;
  return numberFormat(lang, 0, places).format(value);
}

/**
 * A least and a most, or the one number where both read alike.
 * @example rangeText(1.2, 3, 'en') // => '1.2–3'
 */
export function rangeText(low: number, high: number, lang: string): string {
  const [least, most] = [sizedText(low, lang), sizedText(high, lang)];
  return least === most ? most : `${least}–${most}`;
}

/**
 * A time of day in words; minutes after midnight, 1440 and more is the next day.
 * @example clockText(630, 'en') // => '10:30 AM'
 */
export function clockText(minutes: number, lang: string): string {
  const text = dateFormat(lang, 'clock').format(new Date(Date.UTC(2001, 0, 1, 0, minutes)));
  return text.replace(/[\u2009\u202f]/g, ' ');
}
