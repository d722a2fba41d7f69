// How many lines a text takes on paper: the widths of the letters of our two faces, and words that wrap.

// Advance widths in hundredths of the type size, read from Andika 6 Regular as it ships with @fontsource/andika 5.3.0.
const WIDTHS: readonly (readonly [number, string])[] = [
  [27, ' \u00a0’'], [28, 'ilí'], [29, 'j'], [30, "'"], [31, '.:'], [32, ',;'], [33, '·'], [37, '!f¡'], [39, '()'], [41, 't'],
  [42, '-'], [43, 'r'], [47, 'Js'], [48, 'IÍ'], [49, '/”'], [50, '"*c'], [51, '?kz¿“'], [52, 'vy–'], [53, 'Lexé'],
  [55, 'gq'], [56, 'Faboáó'], [57, 'EShpÉ'], [58, 'Pdnuúüñ'], [59, '+0123456789×÷−='], [60, 'Z'], [62, 'T'], [63, 'B«»'],
  [64, 'KRY'], [65, 'X'], [66, 'C'], [67, 'V'], [68, 'AÁ'], [69, 'G'], [70, 'DUÚ'], [71, 'OÓ'], [72, 'HQ'], [73, 'NÑ'],
  [75, '%'], [76, 'w'], [82, 'm'], [85, '—'], [88, 'M'], [102, 'W'],
]; // prettier-ignore
// The same of Alfa Slab One as it ships with @fontsource/alfa-slab-one 5.
const SLAB_WIDTHS: readonly (readonly [number, string])[] = [
  [19, "'"], [21, '’'], [24, '.:,;'], [30, ' \u00a0'], [31, 'j'], [34, '!¡'], [35, 'ilí'], [37, '()'], [38, 'f'], [39, '-'], [42, 'IÍ/'],
  [45, 't'], [52, 's1'], [53, 'r'], [55, '–'], [56, 'c'], [57, 'z'], [59, 'eé'], [61, 'aá'], [62, '3'], [63, 'oóyF?¿'], [64, 'x'],
  [65, 'gqvL257'], [66, 'bdp'], [67, 'JS'], [68, 'k'], [69, 'uúüZ469'], [70, 'hnñ8'], [71, 'EÉ'], [72, 'C'], [73, '0'], [74, 'P'],
  [77, 'B'], [78, 'GTUÚY'], [79, 'OÓV'], [80, 'DRX'], [81, 'AÁQ'], [83, 'K&'], [84, 'H'], [94, 'NÑ'], [96, 'w'], [104, 'm'], [114, 'M'], [121, 'W'],
]; // prettier-ignore

/** The faces: what is read, and the slab of titles. */
export type TypeFace = 'text' | 'slab';

// Letters of names that the table lacks are taken as wide ones.
const UNKNOWN = 75;
const byLetter = (widths: typeof WIDTHS): ReadonlyMap<string, number> =>
  new Map(widths.flatMap(([width, signs]) => [...signs].map((sign) => [sign, width] as const)));
const widthOf: Readonly<Record<TypeFace, ReadonlyMap<string, number>>> = {
  text: byLetter(WIDTHS),
  slab: byLetter(SLAB_WIDTHS),
};

/** Width of a text on one line, in parts of the type size. */
export function textWidth_em(text: string, face: TypeFace = 'text'): number {
  return [...text].reduce((sum, sign) => sum + (widthOf[face].get(sign) ?? UNKNOWN), 0) / 100;
}

/** Lines that a text takes in a width (in parts of the type size), at least one; a word is not parted. */
export function linesOf(text: string, width_em: number, face: TypeFace = 'text'): number {
  const space = textWidth_em(' ', face);
  let lines = 1;
  let filled = 0;
  for (const word of text.split(/ +/).filter((one) => one !== '')) {
    const wide = textWidth_em(word, face);
    if (filled > 0 && filled + space + wide > width_em) {
      lines += 1;
      filled = wide;
    } else filled += filled === 0 ? wide : space + wide;
  }
  return lines;
}
