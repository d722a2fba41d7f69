// May I pet the goats, and what then? Told by the seconds that washing takes.
import type { Answer } from './types.ts';

/**
 * Least seconds of washing hands with soap and running water. Source: US Centers for Disease Control and
 * Prevention, on washing hands and on animals in public settings (fact `wash-20`).
 */
export const WASH_S = 20;
/** Below this age children take extra care near animals, years. Source: the same (fact `extra-care`). */
export const YOUNG_YEARS = 5;

/** The seconds of washing; the same in every book. */
export function stroke(): Answer {
  return {
    name: 'stroke',
    missing: false,
    live: false,
    face: null,
    number: String(WASH_S),
    slots: { n: WASH_S, years: YOUNG_YEARS },
    variants: {},
    concrete: WASH_S,
    picture: { kind: 'kitchen', kitchen: { of: 'washing', seconds: WASH_S } },
    proof: {
      figure: null,
      steps: [{ label: '', key: 'stroke.seconds', sum: String(WASH_S) }],
      columns: [],
      rows: [],
      missing: 0,
      facts: ['wash-20', 'extra-care', 'no-food-near-animals', 'birth-and-q-fever'],
      table: null,
    },
  };
}
