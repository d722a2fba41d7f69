// How many kids come at once? Births by the size of their litter, over the whole list.
import { decimalText } from '../quantity/show.ts';
import { BIRTH_COLUMNS, birthRow, countSum, kidsOf, knownBirths } from './herdOn.ts';
import type { Answer, BoardInput } from './types.ts';

/** Kids a birth in the published study. Fact `litter`: Amoah and others 1996, Journal of Animal Science. */
export const LITTER_MEAN = 1.85;
const TWINS = 2;
// So many births that one more hardly moves a share.
const MANY_BIRTHS = 100;

/** Births of twins out of all births whose kids are counted; smaller and larger litters stand beside them. */
export function twins(input: BoardInput): Answer {
  const births = knownBirths(input);
  const all = births.length;
  const kids = kidsOf(births);
  const sizes = [...new Set([1, TWINS, 3, ...births.map((birth) => birth.kids)])].toSorted((a, b) => a - b);
  const rows = sizes.map((size) => ({
    kids: size,
    births: births.filter((birth) => birth.kids === size).length,
  }));
  const n = rows.find((row) => row.kids === TWINS)?.births ?? 0;
  const mean = all === 0 ? 0 : kids / all;
  const meanText = decimalText(mean, 2, input.lang);
  const isMost = rows.every((row) => row.kids === TWINS || row.births < n);
  return {
    name: 'twins',
    missing: all === 0,
    live: false,
    face: null,
    number: all === 0 ? '' : String(n),
    slots: {
      n,
      all,
      kids,
      percent: all === 0 ? 0 : Math.round((n / all) * 100),
      mean: meanText,
      typical: decimalText(LITTER_MEAN, 2, input.lang),
    },
    variants: {
      headline: isMost ? 'most' : 'other',
      'why.second': mean > LITTER_MEAN ? 'more' : 'fewer',
      'why.third': all < MANY_BIRTHS ? 'short' : 'long',
    },
    concrete: kids,
    picture: { kind: 'goats', goats: { what: 'litters', rows } },
    proof: {
      figure: null,
      steps: [
        ...rows.map((row) => ({ ...litterLabel(row.kids), sum: String(row.births) })),
        { label: '', key: 'litter.all', sum: countSum(rows.map((row) => row.births)) },
        { label: '', key: 'litter.mean', sum: `${kids} ÷ ${all} ≈ ${meanText}` },
      ],
      columns: BIRTH_COLUMNS,
      rows: births.map((birth) => birthRow(input, birth, 'long')),
      missing: 0,
      facts: ['litter', 'newborn-weight', 'two-teats', 'birth-and-q-fever'],
      table: null,
    },
  };
}

// Litters have words of their own up to four kids; a larger one is told by its number.
const LITTER_WORDS = ['none', 'single', 'twins', 'triplets', 'quadruplets'];

function litterLabel(kids: number): { label: string; key?: string } {
  const word = LITTER_WORDS[kids];
  return word === undefined ? { label: String(kids) } : { label: '', key: `litter.${word}` };
}
