// A class word: what picks the numbers of a class's sheets; part of an address and of a file's name.

/** The longest class word, and what it may be made of: it becomes part of an address and of a file's name. */
export const LONGEST_WORD = 40;
const WORD = /^[\p{L}\p{N}][\p{L}\p{M}\p{N}_-]{0,39}$/u;

/**
 * Whether a text can be a class word: letters, digits, `-` and `_`, up to 40 of them.
 * @example isClassWord('fern') // => true
 * @example isClassWord('two words') // => false
 */
export function isClassWord(text: string): boolean {
  return WORD.test(text);
}
