// Numbers and signs as the words that a reader says, so that a text is counted as it is read.
import { cardinalEn, fractionEn, LARGEST_SPELLED, ordinalEn } from './numberWordsEn.ts';
import { beforeNoun, cardinalEs, fractionEs } from './numberWordsEs.ts';

/** Languages that texts are counted in. */
export type ReadingLanguage = 'en' | 'es';

interface Said {
  readonly cardinal: (n: number) => string;
  readonly fraction: (num: number, den: number) => string;
  readonly and: string;
  readonly point: string;
  readonly to: string;
  readonly oclock: string;
  readonly dollars: readonly [one: string, many: string];
  readonly cents: readonly [one: string, many: string];
  readonly degrees: Readonly<Record<string, string>>;
  readonly signs: Readonly<Record<string, string>>;
  /** Units after a number: one and many. */
  readonly units: Readonly<Record<string, readonly [string, string]>>;
}

const SAID: Readonly<Record<ReadingLanguage, Said>> = {
  en: {
    cardinal: cardinalEn,
    fraction: fractionEn,
    and: 'and',
    point: 'point',
    to: 'to',
    oclock: "o'clock",
    dollars: ['dollar', 'dollars'],
    cents: ['cent', 'cents'],
    degrees: { F: 'degrees Fahrenheit', C: 'degrees Celsius', '': 'degrees' },
    signs: { '%': 'percent', '+': 'plus', '−': 'minus', '×': 'times', '÷': 'divided by', '=': 'equals', '&': 'and', '<': 'less than', '>': 'greater than', '≈': 'about' },
    units: {
      lb: ['pound', 'pounds'], oz: ['ounce', 'ounces'], qt: ['quart', 'quarts'], pt: ['pint', 'pints'], gal: ['gallon', 'gallons'],
      ft: ['foot', 'feet'], mL: ['milliliter', 'milliliters'], L: ['liter', 'liters'], kg: ['kilogram', 'kilograms'],
      g: ['gram', 'grams'], mm: ['millimeter', 'millimeters'], cm: ['centimeter', 'centimeters'], m: ['meter', 'meters'],
      km: ['kilometer', 'kilometers'], min: ['minute', 'minutes'], h: ['hour', 'hours'], s: ['second', 'seconds'],
    },
  },
  es: {
    cardinal: cardinalEs,
    fraction: fractionEs,
    and: 'y',
    point: 'punto',
    to: 'a',
    oclock: 'en punto',
    dollars: ['dólar', 'dólares'],
    cents: ['centavo', 'centavos'],
    degrees: { F: 'grados Fahrenheit', C: 'grados Celsius', '': 'grados' },
    signs: { '%': 'por ciento', '+': 'más', '−': 'menos', '×': 'por', '÷': 'entre', '=': 'igual a', '&': 'y', '<': 'menor que', '>': 'mayor que', '≈': 'cerca de' },
    units: {
      lb: ['libra', 'libras'], oz: ['onza', 'onzas'], qt: ['cuarto de galón', 'cuartos de galón'], gal: ['galón', 'galones'],
      ft: ['pie', 'pies'], mL: ['mililitro', 'mililitros'], L: ['litro', 'litros'], kg: ['kilogramo', 'kilogramos'],
      g: ['gramo', 'gramos'], mm: ['milímetro', 'milímetros'], cm: ['centímetro', 'centímetros'], m: ['metro', 'metros'],
      km: ['kilómetro', 'kilómetros'], min: ['minuto', 'minutos'], h: ['hora', 'horas'], s: ['segundo', 'segundos'],
    },
  },
}; // prettier-ignore

const NUMBER = String.raw`\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?`;
const SLASHED = /(?:(\d+)[\s\u00a0-])?(\d+)\s?[/⁄]\s?(\d+)(?![/\d])/g;
const SINGLE_FRACTIONS: Readonly<Record<string, string>> = { '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' }; // prettier-ignore

/**
 * A text with its numbers, fractions, times, money, units behind numbers and signs written as words.
 * @example spellOut('Fill 1 1/2 cups to 72 °F.', 'en') // => 'Fill one and one half cups to seventy-two degrees Fahrenheit.'
 */
export function spellOut(text: string, lang: ReadingLanguage): string {
  const said = SAID[lang];
  return withSigns(withNumbers(withFractions(withTimes(text, said), said), said, lang), said)
    .replace(/[ \t]{2,}/g, ' ')
    .replace(/ (?=[.,;:!?)])/g, '')
    .trim();
}

function withTimes(text: string, { cardinal, oclock, dollars, cents, and }: Said): string {
  return text
    .replace(/\b([ap])\.\s?m\./gi, (_, half: string) => `${half.toUpperCase()} M`)
    .replace(/(?<![\d:])(\d{1,2}):([0-5]\d)(?![\d:])/g, (_, hour: string, minute: string) => {
      const rest = minute === '00' ? oclock : cardinal(Number(minute));
      return `${cardinal(Number(hour))} ${rest}`;
    })
    .replace(/\$(\d{1,6})(?:\.(\d\d))?(?!\d)/g, (_, whole: string, part: string | undefined) => {
      const counted = (n: number, names: readonly [string, string]) =>
        `${beforeNoun(cardinal(n))} ${names[n === 1 ? 0 : 1]}`;
      const small = Number(part ?? 0);
      return `${counted(Number(whole), dollars)}${small > 0 ? ` ${and} ${counted(small, cents)}` : ''}`;
    });
}

function withFractions(text: string, { cardinal, fraction, and }: Said): string {
  return text
    .replace(
      /(\d?)\s?([½⅓⅔¼¾⅛⅜⅝⅞])/g,
      (_, before: string, sign: string) => `${before === '' ? '' : `${before} `}${SINGLE_FRACTIONS[sign]}`,
    )
    .replace(SLASHED, (all, whole: string | undefined, num: string, den: string) => {
      if (Number(den) === 0 || Number(num) === 0 || all.length > 16) return all;
      const part = fraction(Number(num), Number(den));
      return whole === undefined ? part : `${cardinal(Number(whole))} ${and} ${part}`;
    });
}

function withNumbers(text: string, said: Said, lang: ReadingLanguage): string {
  const ranges = text.replace(new RegExp(`(?<=\\d)\\s?[–—-]\\s?(?=\\d)`, 'g'), ` ${said.to} `);
  const ordinals =
    lang === 'en'
      ? ranges.replace(/\b(\d{1,6})(?:st|nd|rd|th)\b/g, (_, n: string) => ordinalEn(Number(n)))
      : ranges;
  const units = Object.keys(said.units).join('|');
  const withUnits = new RegExp(`(${NUMBER})[\\s\\u00a0]?(?:(${units})\\b\\.?|°[\\s\\u00a0]?([FC]?))`, 'g');
  return ordinals
    .replace(
      withUnits,
      (_, number: string, unit: string | undefined, degree: string | undefined) =>
        `${number} ${unit === undefined ? said.degrees[degree ?? ''] : said.units[unit]?.[number === '1' ? 0 : 1]}`,
    )
    .replace(new RegExp(`(${NUMBER})(\\s\\p{L}+)?`, 'gu'), (_, number: string, noun: string | undefined) => {
      const told = numberTold(number, said);
      if (lang === 'en' || noun === undefined) return `${told}${noun ?? ''}`;
      // "1 taza" is read "una taza", "21 vasos" "veintiún vasos"; "1 y 2" stays as it is.
      const isNoun = noun.length > 2;
      return `${isNoun ? beforeNoun(told, /as?$/.test(noun)) : told}${noun}`;
    });
}

function numberTold(written: string, { cardinal, point }: Said): string {
  const [whole = '0', places] = written.replaceAll(',', '').split('.');
  const digits = (text: string) => [...text].map((digit) => cardinal(Number(digit))).join(' ');
  const told = Number(whole) > LARGEST_SPELLED ? digits(whole) : cardinal(Number(whole));
  return places === undefined ? told : `${told} ${point} ${digits(places)}`;
}

function withSigns(text: string, { signs }: Said): string {
  const minus = text.replace(/(^|[\s(])-(?=\p{L})/gu, '$1−');
  return minus.replace(/[%+−×÷=&<>≈]/g, (sign) => ` ${signs[sign]} `);
}
