// How much is told of what a link has wrong: anybody can make a link that is wrong in a hundred thousand places.

const MOST_TOLD = 12;
const LONGEST = 80;

/**
 * The first few of the parts that could not be used, each cut where nobody reads on.
 * @example toldAsides([{ found: 'goat-bran' }]) // => [{ found: 'goat-bran' }]
 */
export function toldAsides<T extends { readonly found: string }>(asides: readonly T[]): T[] {
  return asides.slice(0, MOST_TOLD).map((one) => {
    const letters = [...one.found.slice(0, 2 * LONGEST + 2)];
    return letters.length > LONGEST ? { ...one, found: `${letters.slice(0, LONGEST).join('')}…` } : one;
  });
}
