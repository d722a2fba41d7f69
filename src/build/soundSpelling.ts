// How a text is written for the voice, so that it is said as a person would say it. Checked by ear and by espeak-ng's phonemes.

const HALVES: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/3': '⅓',
  '2/3': '⅔',
};
const PARTS_EN: Readonly<Record<string, string>> = {
  '½': 'a half',
  '¼': 'a quarter',
  '¾': 'three quarters',
  '⅓': 'a third',
  '⅔': 'two thirds',
};
const PARTS_ES: Readonly<Record<string, string>> = {
  '½': 'medio',
  '¼': 'un cuarto',
  '¾': 'tres cuartos',
  '⅓': 'un tercio',
  '⅔': 'dos tercios',
};

/** Units as they are written behind a number, and as they are said. */
const UNITS: Readonly<Record<string, Readonly<Record<string, readonly [string, string]>>>> = {
  en: {
    'fl oz': ['fluid ounce', 'fluid ounces'],
    oz: ['ounce', 'ounces'],
    lb: ['pound', 'pounds'],
    qt: ['quart', 'quarts'],
    gal: ['gallon', 'gallons'],
    mL: ['milliliter', 'milliliters'],
    L: ['liter', 'liters'],
    kg: ['kilogram', 'kilograms'],
    mg: ['milligram', 'milligrams'],
    g: ['gram', 'grams'],
    cm: ['centimeter', 'centimeters'],
    '°F': ['degree Fahrenheit', 'degrees Fahrenheit'],
    '°C': ['degree Celsius', 'degrees Celsius'],
  },
  es: {
    'fl oz': ['onza líquida', 'onzas líquidas'],
    oz: ['onza', 'onzas'],
    lb: ['libra', 'libras'],
    qt: ['cuarto de galón', 'cuartos de galón'],
    gal: ['galón', 'galones'],
    mL: ['mililitro', 'mililitros'],
    L: ['litro', 'litros'],
    kg: ['kilogramo', 'kilogramos'],
    mg: ['miligramo', 'miligramos'],
    g: ['gramo', 'gramos'],
    cm: ['centímetro', 'centímetros'],
    '°F': ['grado Fárenjait', 'grados Fárenjait'],
    '°C': ['grado Celsius', 'grados Celsius'],
  },
};

// The voice reads "does" as in "does it hurt". Where goats are meant, a word for how many or which stands before it,
// or what they do comes after it.
const BEFORE_DOES =
  'the|some|all|our|both|these|those|many|most|few|more|other|from|single|between|milking|dry|old|older|young|younger|of|no|her|two|three|four|five|six|seven|eight|nine|ten|adult|resting|grown|\\d+';
const AFTER_DOES =
  'are|were|have|had|give|gave|rest|rested|eat|drink|need|can|may|will|do|alone|and|or|with|in|on|of|come|stay|live|milked|make';

/** Said like this in any language: a pause for an arrow. */
const arrowsOut = (text: string) => text.replace(/\s*[→⇒←]\s*/gu, ', ');
const plainParts = (text: string) =>
  text.replace(/(?<![\d/])(\d+ )?([123]\/[234])(?![\d/])/g, (all, whole: string | undefined, part: string) =>
    HALVES[part] === undefined ? all : `${whole ?? ''}${HALVES[part]}`,
  );

function unitsOut(text: string, lang: 'en' | 'es'): string {
  const names = UNITS[lang] ?? {};
  const any = Object.keys(names).join('|');
  const found = new RegExp(`(\\d[\\d.,]*|[½¼¾⅓⅔])(\\s?[½¼¾⅓⅔])?\\s?(${any})(?![\\p{L}\\d])`, 'gu');
  return text.replace(found, (_, amount: string, part: string | undefined, unit: string) => {
    const [one = unit, many = unit] = names[unit] ?? [];
    return `${amount}${part ?? ''} ${amount === '1' && part === undefined ? one : many}`;
  });
}

function english(text: string): string {
  return unitsOut(text, 'en')
    .replace(new RegExp(`\\b(${BEFORE_DOES})( |-)does\\b`, 'giu'), '$1$2doze')
    .replace(new RegExp(`\\bdoes( (?:${AFTER_DOES}))\\b`, 'giu'), 'doze$1')
    .replace(/(\d)\s?([½¼¾⅓⅔])/gu, (_, whole: string, part: string) => `${whole} and ${PARTS_EN[part] ?? part}`)
    .replace(/[½¼¾⅓⅔]/gu, (part) => PARTS_EN[part] ?? part)
    .replace(/(\d)\s?[–-]\s?(?=\d)/gu, '$1 to ')
    .replace(/\bcasein\b/giu, 'kay-seen')
    .replaceAll('≈', 'about ')
    .replaceAll('−', ' minus '); // prettier-ignore
}

function spanish(text: string): string {
  return agreeing(
    unitsOut(text, 'es')
      // A comma stands for thousands here, and a point before decimals.
      .replace(/(\d),(?=\d{3}\b)/g, '$1')
      .replace(/(?<!\d)(\d+)\s?½ (\p{L}+)/gu, (_, whole: string, noun: string) =>
        `${whole} ${whole === '1' ? noun.replace(/s$/, '') : noun} y ${halfOf(noun)}`)
      .replace(/½ (\p{L}+)/gu, (_, noun: string) => `${halfOf(noun)} ${noun}`)
      .replace(/(\d)\s?([½¼¾⅓⅔])(?: (\p{L}+))?/gu, (_, whole: string, part: string, noun: string | undefined) =>
        `${whole}${noun ? ` ${noun}` : ''} y ${PARTS_ES[part] ?? part}`)
      .replace(/[½¼¾⅓⅔]/gu, (part) => PARTS_ES[part] ?? part)
      .replace(/(\d)\s?[–-]\s?(?=\d)/gu, '$1 a ')
      .replace(/\ba\.\s?m\.(?!\p{L})/giu, 'de la mañana')
      .replace(/\bp\.\s?m\.(?!\p{L})/giu, 'de la tarde')
      .replace(/ ?× ?/gu, ' por ')
      .replace(/ ?÷ ?/gu, ' entre ')
      .replace(/ ?− ?/gu, ' menos ')
      .replaceAll('≈', 'más o menos '),
  ); // prettier-ignore
}

const isFeminine = (noun: string) => /as?$/iu.test(noun) && !/^d[ií]as?$/iu.test(noun);
const halfOf = (noun: string) => (isFeminine(noun) ? 'media' : 'medio');

/** Numbers agree with what they count: una taza, veintiún frascos, doscientas cabras. The voice says "uno taza". */
function agreeing(text: string): string {
  return text.replace(/(?<![\d.:/])(\d{1,6}) (\p{Ll}\p{L}*)/gu, (all, digits: string, noun: string) => {
    const said = agreed(Number(digits), noun);
    return said === null ? all : `${said} ${noun}`;
  });
}

const HUNDREDS = ['', '', 'doscient', 'trescient', 'cuatrocient', 'quinient', 'seiscient', 'setecient', 'ochocient', 'novecient']; // prettier-ignore
const TENS = ['', '', 'veinti', 'treinta y ', 'cuarenta y ', 'cincuenta y ', 'sesenta y ', 'setenta y ', 'ochenta y ', 'noventa y ']; // prettier-ignore
// Words that are no count's noun: "1 de 3", "16 y 20", "5 por 2".
const NOT_COUNTED =
  /^(?:de|del|y|o|u|a|al|por|en|que|entre|menos|más|es|son|con|va|hay|da|dan|contra|hasta|para|cada|pesa|queda|dura|llena|alcanza)$/iu;

function agreed(count: number, noun: string): string | null {
  if (NOT_COUNTED.test(noun)) return null;
  const end = isFeminine(noun) ? 'a' : '';
  const [hundreds, ones] = [Math.floor((count % 1000) / 100), count % 100];
  const isOne = ones % 10 === 1 && ones !== 11;
  const isMany = hundreds > 1 && end === 'a';
  if (!isOne && !isMany) return null;
  const thousands = Math.floor(count / 1000);
  const tens = Math.floor(ones / 10);
  const one = end === 'a' ? 'una' : tens === 2 ? 'ún' : 'un';
  return [
    thousands === 0 ? '' : thousands === 1 ? 'mil' : `${thousands} mil`,
    hundreds === 0 ? '' : hundreds === 1 ? 'ciento' : `${HUNDREDS[hundreds]}${end || 'o'}s`,
    ones === 0 ? '' : isOne ? `${TENS[tens] ?? ''}${one}` : String(ones),
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** A name or word as a farm wants it said: `Wren` as `Ren`. */
export type SayAs = ReadonlyMap<string, string>;

/**
 * A text as it is written for the voice of a language: units and parts of numbers in full, goats told from the verb
 * "does", Spanish numbers in agreement, and a farm's own ways of saying a name.
 */
export function spelledFor(lang: string, text: string, sayAs: SayAs = new Map()): string {
  const plain = plainParts(arrowsOut(text));
  const spelled = lang === 'en' ? english(plain) : lang === 'es' ? spanish(plain) : plain;
  const named = wholeNames([...sayAs.keys()]);
  return named === null ? spelled : spelled.replace(named, (name) => sayAs.get(name) ?? name);
}

/** Finds every place where one of some names, of a word or more, stands whole; null where there are none. */
export function wholeNames(names: readonly string[]): RegExp | null {
  if (names.length === 0) return null;
  // Of "Miss Wren" and "Wren" the longer one is meant.
  const longest = names.toSorted((a, b) => b.length - a.length);
  const any = longest.map((name) => name.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')).join('|');
  return new RegExp(`(?<![\\p{L}\\d])(?:${any})(?![\\p{L}\\d])`, 'gu');
}
