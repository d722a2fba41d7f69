// A text of a sheet as pieces to print: fractions in it are stacked, as those of the tasks are.
import type { Piece } from './tell.ts';

// Not the day and month of a date with strokes.
const FRACTION = /(?<![\d/])(\d+)\/(\d+)(?![\d/])/;

/**
 * Texts and fractions of a line; the space between a whole number and its fraction goes, since a stacked one needs none.
 * @example textPieces('It was 2 1/4 cups.') // => ['It was 2', { top: '1', bottom: '4' }, ' cups.']
 */
export function textPieces(text: string): Piece[] {
  const parts = text.split(FRACTION);
  return parts.flatMap((part, index): Piece[] => {
    if (index % 3 === 1) return [{ top: part, bottom: parts[index + 1] ?? '' }];
    if (index % 3 === 2) return [];
    const plain = index + 1 < parts.length ? part.replace(/(\d) $/, '$1') : part;
    return plain === '' ? [] : [plain];
  });
}
