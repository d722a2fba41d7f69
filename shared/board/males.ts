// Do males give milk? No. The book can only show the other side: that each doe with milk had kids first.
import { BIRTH_COLUMNS, birthRow, dayOf } from './herdOn.ts';
import { middleDoe } from './howMuch.ts';
import { dayAmount } from './shown.ts';
import type { Answer, BoardInput } from './types.ts';

/** Nothing from a male, by what is known of mammals; beside it the does with milk, and their latest births. */
export function males(input: BoardInput): Answer {
  const asOf = dayOf(input);
  const inMilk = input.week.does.filter((doe) => (doe.total_mL ?? 0) > 0);
  const births = inMilk.flatMap(({ id }) => {
    const own = input.kiddings.filter((one) => one.doe === id && one.day <= asOf);
    return own.toSorted((a, b) => b.day - a.day).slice(0, 1);
  });
  const middle = middleDoe(input);
  const amount = dayAmount(input, middle?.mean_mL ?? 0);
  return {
    name: 'males',
    missing: false,
    live: inMilk.length > 0,
    face: null,
    number: '0',
    slots: { n: 0, all: inMilk.length, mothers: births.length },
    variants: { unit: input.units, concrete: births.length === inMilk.length ? 'all' : 'part' },
    concrete: births.length,
    picture: {
      kind: 'goats',
      goats: {
        what: 'males',
        jar_mL: input.jar_mL,
        milk_mL: middle?.mean_mL ?? null,
        amount: amount.text,
        n: amount.n,
      },
    },
    proof: {
      figure: null,
      steps: [
        { label: '', key: 'inMilk', sum: String(inMilk.length) },
        { label: '', key: 'ofThemMothers', sum: String(births.length) },
      ],
      columns: BIRTH_COLUMNS,
      rows: births.map((birth) => birthRow(input, birth, 'long')),
      missing: 0,
      facts: ['always-after-kids', 'male-milk-rare', 'bucks-smell', 'wether'],
      table: null,
    },
  };
}
