// Do kids look like their mothers? Told by what the farm's book knows of a kid, and what it does not.
import { BIRTH_COLUMNS, birthRow, birthsOfYear, countSum, doeNamed, kidsOf, kidYear } from './herdOn.ts';
import type { Answer, BoardInput } from './types.ts';

/** The year's kids whose mothers are in the book. It has no fathers, and says nothing of how a kid looks. */
export function likeness(input: BoardInput): Answer {
  const births = birthsOfYear(input).filter((birth) => birth.kids > 0);
  const n = kidsOf(births);
  const ids = [...new Set(births.map(({ doe }) => doe))];
  const mothers = ids.map((id) => ({
    doe: doeNamed(input, id),
    kids: kidsOf(births.filter(({ doe }) => doe === id)),
  }));
  return {
    name: 'likeness',
    missing: n === 0,
    live: false,
    face: null,
    number: n === 0 ? '' : String(n),
    slots: { n, year: kidYear(input), mothers: mothers.length },
    variants: {},
    concrete: mothers.length,
    picture: { kind: 'goats', goats: { what: 'family', mothers } },
    proof: {
      figure: null,
      steps: [
        ...mothers.map(({ doe, kids }) => ({ label: doe.name, sum: String(kids) })),
        { label: '', sum: countSum(mothers.map(({ kids }) => kids)) },
      ],
      columns: BIRTH_COLUMNS,
      rows: births.map((birth) => birthRow(input, birth)),
      missing: 0,
      facts: ['half-from-each', 'like-not-same', 'ears-passed-on'],
      table: null,
    },
  };
}
