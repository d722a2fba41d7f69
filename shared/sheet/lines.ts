// How many lines a text takes on paper: the widths of Andika's letters, and words that wrap.

// Advance widths in hundredths of the type size, read from Andika 6 Regular as it ships with @fontsource/andika 5.3.0.
const WIDTHS: readonly (readonly [number, string])[] = [
  [27, ' \u00a0’'], [28, 'ilí'], [29, 'j'], [30, "'"], [31, '.:'], [32, ',;'], [33, '·'], [37, '!f¡'], [39, '()'], [41, 't'],
  [42, '-'], [43, 'r'], [47, 'Js'], [48, 'IÍ'], [49, '/”'], [50, '"*c'], [51, '?kz¿“'], [52, 'vy–'], [53, 'Lexé'],
  [55, 'gq'], [56, 'Faboáó'], [57, 'EShpÉ'], [58, 'Pdnuúüñ'], [59, '+0123456789×÷−='], [60, 'Z'], [62, 'T'], [63, 'B«»'],
  [64, 'KRY'], [65, 'X'], [66, 'C'], [67, 'V'], [68, 'AÁ'], [69, 'G'], [70, 'DUÚ'], [71, 'OÓ'], [72, 'HQ'], [73, 'NÑ'],
  [75, '%'], [76, 'w'], [82, 'm'], [85, '—'], [88, 'M'], [102, 'W'],
]; // prettier-ignore
// Letters of names that the table lacks are taken as wide ones.
const UNKNOWN = 75;
const widthOf = new Map(WIDTHS.flatMap(([width, signs]) => [...signs].map((sign) => [sign, width] as const)));

/** Width of a text on one line, in parts of the type size. */
export function textWidth_em(text: string): number {
  return [...text].reduce((sum, sign) => sum + (widthOf.get(sign) ?? UNKNOWN), 0) / 100;
}

/** Lines that a text takes in a width (in parts of the type size), at least one; a word is not parted. */
export function linesOf(text: string, width_em: number): number {
  const space = textWidth_em(' ');
  let lines = 1;
  let filled = 0;
  for (const word of text.split(/ +/).filter((one) => one !== '')) {
    const wide = textWidth_em(word);
    if (filled > 0 && filled + space + wide > width_em) {
      lines += 1;
      filled = wide;
    } else filled += filled === 0 ? wide : space + wide;
  }
  return lines;
}
