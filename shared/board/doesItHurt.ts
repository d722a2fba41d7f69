// Does milking hurt? Counted by how often the does come to be milked.
import { CISTERN_PCT } from './howToMilk.ts';
import { BOOK_COLUMNS, bookRow } from './shown.ts';
import type { Answer, BoardInput } from './types.ts';

/** The milkings of the week, and how many of them were withheld because a doe was under treatment. */
export function doesItHurt(input: BoardInput): Answer {
  const { week, figures } = input;
  const n = figures.figures['herd.week.total']?.rows ?? 0;
  const counts = week.does.filter((doe) => doe.milkings.length > 0);
  const rows = week.does.flatMap((doe) => doe.milkings.map((row) => bookRow(input, doe.name, row)));
  const withheld = week.does.flatMap((doe) => doe.milkings).filter((row) => row.use === 'withheld').length;
  return {
    name: 'does-it-hurt',
    missing: n === 0,
    live: true,
    face: null,
    number: n === 0 ? '' : String(n),
    slots: { n, milkings: n, least: CISTERN_PCT.least, most: CISTERN_PCT.most },
    variants: {},
    concrete: withheld,
    picture: { kind: 'hands' },
    proof: {
      figure: 'herd.week.total',
      steps: [
        ...counts.map((doe) => ({ label: doe.name, sum: String(doe.milkings.length) })),
        { label: '', sum: `${counts.map((doe) => doe.milkings.length).join(' + ')} = ${n}` },
      ],
      columns: BOOK_COLUMNS,
      rows,
      missing: week.does.reduce((sum, doe) => sum + doe.missing.length, 0),
      facts: ['milking-gentle', 'two-teats', 'milk-in-cistern', 'stop-and-ask', 'withheld-milk'],
      table: null,
    },
  };
}
