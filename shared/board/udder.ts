// The udder inside: two halves with a teat each, counted over the herd.
import type { Answer, BoardInput } from './types.ts';

/** Teats of a doe and of a cow. Source: textbook anatomy (from memory). */
export const TEATS = Object.freeze({ goat: 2, cow: 4 });

/** Milk of an udder that waits in its cisterns, percent. Sources: Salama and others 2004 (goats); Pfeilsticker and others 1996 (cows). */
export const IN_CISTERN_PCT = Object.freeze({ low: 57, high: 75, cowLow: 12, cowHigh: 17 });

/** Two teats a doe; over the herd, as many as all its does have. */
export function udder(input: BoardInput): Answer {
  const does = input.does.length;
  const teats = does * TEATS.goat;
  return {
    name: 'udder',
    missing: false,
    live: false,
    face: null,
    number: String(TEATS.goat),
    slots: { n: TEATS.goat, does, teats, cow: TEATS.cow, cows: does * TEATS.cow, ...IN_CISTERN_PCT },
    variants: {},
    concrete: does,
    picture: { kind: 'food', food: { kind: 'udder' } },
    proof: {
      figure: null,
      steps: [
        { label: '', key: 'udder.doe', sum: `1 + 1 = ${TEATS.goat}` },
        { label: '', key: 'udder.cow', sum: `2 + 2 = ${TEATS.cow}` },
        { label: '', key: 'udder.herd', sum: `${does} × ${TEATS.goat} = ${teats}` },
      ],
      columns: ['doe', 'teats'],
      rows: input.does.map(({ name }) => ({ cells: [name, String(TEATS.goat)], place: 'does.csv' })),
      missing: 0,
      facts: ['two-teats', 'milk-in-cistern', 'stop-and-ask'],
      table: null,
    },
  };
}
