// Why do goats have milk? Counted by the kids that it was made for.
import { BIRTH_COLUMNS, birthRow, birthsOfYear, countSum, kidsOf, kidYear } from './herdOn.ts';
import type { Answer, BoardInput } from './types.ts';

/** Kids born on the farm in the year of the last day, up to `asOf`, from the kidding rows that say how many. */
export function whyMilk(input: BoardInput): Answer {
  const births = birthsOfYear(input);
  const kids = kidsOf(births);
  return {
    name: 'why-milk',
    missing: kids === 0,
    live: false,
    face: null,
    number: kids === 0 ? '' : String(kids),
    slots: { n: kids, year: kidYear(input), does: new Set(births.map((birth) => birth.doe)).size },
    variants: {},
    concrete: kids,
    picture: { kind: 'nursing', kids },
    proof: {
      figure: null,
      steps: [{ label: '', sum: countSum(births.map((birth) => birth.kids)) }],
      columns: BIRTH_COLUMNS,
      rows: births.map((birth) => birthRow(input, birth)),
      missing: 0,
      facts: ['newborn-weight', 'litter', 'milk-for-young', 'always-after-kids'],
      table: null,
    },
  };
}
