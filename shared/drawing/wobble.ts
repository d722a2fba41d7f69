// The unsteadiness of a hand, without chance: the same seed always gives the same wobble.

/**
 * A whole number from a text, spread evenly over 0 .. 2^32 - 1 (FNV-1a, 32 bits). Same text, same number.
 * Source: the FNV-1a description by Fowler, Noll and Vo (from memory).
 */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  return hash >>> 0;
}

/** A number in -1 .. 1 for a place along a cut. No unit; the same seed and place give the same number. */
export function wobble(seed: number, place: number): number {
  let mixed = (seed ^ Math.imul(Math.floor(place) + 1, 0x9e3779b1)) >>> 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b) >>> 0;
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35) >>> 0;
  mixed = (mixed ^ (mixed >>> 16)) >>> 0;
  return (mixed / 0xffffffff) * 2 - 1;
}

/** A slow swell in -1 .. 1: wobbles at whole places, eased between them, so that neighbours stay close. */
export function swell(seed: number, place: number): number {
  const low = Math.floor(place);
  const part = place - low;
  const eased = part * part * (3 - 2 * part);
  return wobble(seed, low) * (1 - eased) + wobble(seed, low + 1) * eased;
}
