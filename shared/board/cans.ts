// Do goats eat cans? None that anybody we could ask has seen.
import type { Answer } from './types.ts';

/** Sources asked whether goats eat cans, with how many of each kind say yes. Read in 2026. */
export const ASKED: readonly { readonly key: string; readonly count: number; readonly yes: number }[] =
  Object.freeze([
    { key: 'university', count: 1, yes: 0 },
    { key: 'farms', count: 3, yes: 0 },
  ]);

/** The number of sources that say yes, which is none. No herd's book counts cans. */
export function cans(): Answer {
  const asked = ASKED.reduce((sum, { count }) => sum + count, 0);
  const yes = ASKED.reduce((sum, one) => sum + one.yes, 0);
  return {
    name: 'cans',
    missing: false,
    live: false,
    face: null,
    number: String(yes),
    slots: { n: yes, asked },
    variants: {},
    concrete: yes,
    picture: { kind: 'food', food: { kind: 'cans' } },
    proof: {
      figure: null,
      steps: [
        ...ASKED.map((one) => ({ label: '', key: `cans.${one.key}`, sum: `${one.yes} / ${one.count}` })),
        { label: '', key: 'cans.all', sum: `${ASKED.map((one) => one.yes).join(' + ')} = ${yes}` },
      ],
      columns: [],
      rows: [],
      missing: 0,
      facts: ['choosy-browser', 'lips-first', 'no-upper-front-teeth'],
      table: null,
    },
  };
}
