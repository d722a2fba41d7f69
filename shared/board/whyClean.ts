// Why so much cleaning? The steps of milking that keep dirt and germs out, and the cloths of a week.
import { MILKING_STEPS, milkingsOfWeek } from './howToMilk.ts';
import { BOOK_COLUMNS, bookRow } from './shown.ts';
import type { Answer, BoardInput } from './types.ts';

/** How many of the steps clean; and one cloth for each doe and milking of the week. */
export function whyClean(input: BoardInput): Answer {
  const { week } = input;
  const { ofDoes } = milkingsOfWeek(input);
  const cleaning = MILKING_STEPS.filter((step) => step.cleans);
  const counts = week.does.filter((doe) => doe.milkings.length > 0);
  const cloths = [
    ...counts.map((doe) => ({ label: doe.name, sum: String(doe.milkings.length) })),
    {
      label: '',
      key: 'clean.cloths',
      sum: `${counts.map((doe) => doe.milkings.length).join(' + ')} = ${ofDoes}`,
    },
  ];
  return {
    name: 'why-clean',
    missing: false,
    live: ofDoes > 0,
    face: null,
    number: String(cleaning.length),
    slots: { n: cleaning.length, all: MILKING_STEPS.length },
    variants: {},
    concrete: ofDoes,
    picture: { kind: 'kitchen', kitchen: { of: 'cleaning', steps: cleaning.map(({ name }) => name) } },
    proof: {
      figure: null,
      steps: [
        ...cleaning.map(({ name }) => ({
          label: '',
          key: `clean.${name}`,
          sum: String(MILKING_STEPS.findIndex((step) => step.name === name) + 1),
        })),
        ...(ofDoes > 0 ? cloths : []),
      ],
      columns: BOOK_COLUMNS,
      rows: week.does.flatMap((doe) => doe.milkings.map((row) => bookRow(input, doe.name, row))),
      missing: week.does.reduce((sum, doe) => sum + doe.missing.length, 0),
      facts: ['not-sterile', 'one-cloth', 'teat-dip', 'teat-stays-open', 'wash-20', 'milking-order'],
      table: null,
    },
  };
}
