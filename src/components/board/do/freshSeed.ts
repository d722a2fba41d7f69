// A seed for the next round: the only chance on the board.

/** A whole number from 0 to 2^32 - 1 that nobody can foresee. */
export function freshSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}
