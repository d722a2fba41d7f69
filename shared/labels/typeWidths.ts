// How wide a text is in our two faces of type, so that a label can be set where nothing can be measured.

/** The faces of a label: plain and bold Andika, and the slab of big words. */
export type LabelFace = 'plain' | 'bold' | 'slab';

// Advance widths in hundredths of the type size, rounded up: signs 32 to 126, then 160 to 255 of Unicode. Read from the
// font files of the packages @fontsource/andika and @fontsource/alfa-slab-one, 5.3.0.
const WIDTHS: Readonly<Record<LabelFace, readonly [string, string]>> = Object.freeze({
  plain: [
    '27 38 51 59 59 75 60 30 39 39 51 59 32 42 32 49 59 59 59 59 59 59 59 59 59 59 32 32 59 59 59 52 84 69 63 67 71 57 57 70 73 48 48 64 53 88 74 72 59 73 64 58 62 71 67 102 65 65 61 39 49 39 42 63 29 57 57 50 59 54 37 55 58 28 30 51 28 83 58 56 58 56 44 48 41 58 53 76 53 52 51 49 34 49 55',
    '27 38 59 59 59 59 50 50 0 74 40 64 59 0 79 35 32 59 42 42 29 58 51 34 20 42 39 64 79 79 79 52 69 69 69 69 69 69 89 67 57 57 57 57 48 48 48 48 71 74 72 72 72 72 72 59 72 71 71 71 71 65 59 61 57 57 57 57 57 57 86 50 54 54 54 54 28 28 28 28 57 58 56 56 56 56 56 59 56 58 58 58 58 52 58 52',
  ],
  bold: [
    '27 39 53 61 61 77 67 31 42 42 51 59 33 44 35 53 61 61 61 61 61 61 61 61 61 61 35 35 59 59 59 54 86 73 68 68 73 60 59 72 74 52 51 70 56 91 76 74 63 76 68 61 62 73 72 105 67 67 62 42 53 42 43 64 32 62 60 50 62 55 40 58 61 32 33 56 32 86 61 57 61 60 49 51 44 61 54 77 58 54 52 51 34 51 55',
    '27 39 54 61 61 61 52 54 0 75 40 64 59 0 76 41 35 59 42 42 32 61 54 37 21 42 40 64 85 85 85 54 73 73 73 73 73 73 90 68 60 60 60 60 52 52 52 52 74 76 74 74 74 74 74 59 74 73 73 73 73 67 63 70 62 62 62 62 62 62 87 50 55 55 55 55 32 32 32 32 57 61 57 57 57 57 57 59 57 61 61 61 61 54 60 54',
  ],
  slab: [
    '30 34 36 74 69 89 83 20 38 38 41 58 25 39 25 43 74 53 65 63 70 66 70 65 70 70 25 25 50 50 50 63 115 81 78 73 81 72 64 79 84 42 67 84 66 115 95 80 74 81 80 68 78 79 79 121 80 78 69 33 43 33 42 60 41 62 67 57 66 60 39 66 70 35 32 68 35 105 70 64 66 66 53 52 46 69 66 96 64 64 57 30 26 30 62',
    '30 35 56 64 59 77 26 61 51 73 34 52 55 0 73 44 28 58 32 32 41 68 76 21 35 28 33 52 78 82 78 63 81 81 81 81 81 81 114 73 72 72 72 72 42 42 42 42 83 95 80 80 80 80 80 57 80 79 79 79 79 78 77 71 62 62 62 62 62 62 91 57 60 60 60 60 35 35 35 35 61 70 64 64 64 64 64 53 64 69 69 69 69 64 66 64',
  ],
}); // prettier-ignore

const numbers = (face: LabelFace) => {
  const [first, second] = WIDTHS[face];
  return { first: first.split(' ').map(Number), second: second.split(' ').map(Number) };
};
const TABLES = Object.freeze({ plain: numbers('plain'), bold: numbers('bold'), slab: numbers('slab') });

// Letters that our faces lack come from whatever face the machine has; hardly any is wider than this.
const OTHER = 115;
const PICTURE = 150;
// Dashes and quotation marks: the widest of the three faces.
const MARKS: Readonly<Record<string, number>> = {
  '–': 56,
  '—': 94,
  '‘': 38,
  '’': 38,
  '“': 65,
  '”': 65,
  '…': 85,
};

/**
 * The width of a text, in type sizes. It is the width or a hair more, never less, for what our faces hold; a letter that
 * they lack counts as a wide one.
 *
 * @example textWidth_em('Ida', 'bold') // => 1.76
 */
export function textWidth_em(text: string, face: LabelFace): number {
  const { first, second } = TABLES[face];
  let hundredths = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    hundredths += first[code - 32] ?? second[code - 160] ?? MARKS[sign] ?? (code > 0xffff ? PICTURE : OTHER);
  }
  return hundredths / 100;
}
