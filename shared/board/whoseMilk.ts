// Who gave how much this week? Every doe in the order of the herd, not of the amounts.
import type { DoeWeek } from '../herd/week.ts';
import { BOOK_COLUMNS, bookRow, dayAmount, exactText, jarAmount, sumOf_mL } from './shown.ts';
import type { Answer, BoardInput, DoeJars } from './types.ts';

/** Each doe's milk of the week in jars; the number is the jars that all filled together. */
export function whoseMilk(input: BoardInput): Answer {
  const { week, figures } = input;
  const total_L = figures.figures['herd.week.total']?.value ?? null;
  const total_mL = (total_L ?? 0) * 1000;
  const jars = jarAmount(input, total_mL);
  const milked = week.does.filter((doe) => doe.total_mL !== null);
  const inMilk = milked.filter((doe) => (doe.total_mL ?? 0) > 0);
  return {
    name: 'whose-milk',
    missing: total_mL === 0,
    live: true,
    face: null,
    number: total_mL === 0 ? '' : jars.text,
    slots: { n: jars.n, amount: jars.text },
    variants: {},
    concrete: inMilk.length,
    picture: { kind: 'does', does: week.does.map((doe) => doeJars(input, doe)) },
    proof: {
      figure: 'herd.week.total',
      steps: [
        ...milked.map((doe) => ({
          label: doe.name,
          sum: sumOf_mL(
            input,
            doe.milkings.map((row) => row.amount_mL),
            doe.total_mL ?? 0,
          ),
        })),
        {
          label: '',
          sum: sumOf_mL(
            input,
            milked.map((doe) => doe.total_mL ?? 0),
            total_mL,
          ),
        },
        {
          label: '',
          sum: `${exactText(input, total_mL)} ÷ ${exactText(input, input.jar_mL)} ≈ ${jars.text}`,
        },
      ],
      columns: BOOK_COLUMNS,
      rows: week.does.flatMap((doe) => doe.milkings.map((row) => bookRow(input, doe.name, row))),
      missing: week.does.reduce((sum, doe) => sum + doe.missing.length, 0),
      facts: ['breed-size', 'peak-weeks', 'share-milk'],
      table: null,
    },
  };
}

function doeJars(input: BoardInput, doe: DoeWeek): DoeJars {
  const { id, name, breed, total_mL } = doe;
  const amount = total_mL === null ? '' : dayAmount(input, total_mL).text;
  return {
    id,
    name,
    breed,
    milk_mL: total_mL,
    amount,
    standing: standingOf(doe, input.treated.includes(id)),
  };
}

function standingOf({ phase, total_mL }: DoeWeek, isTreated: boolean): DoeJars['standing'] {
  if (phase === 'none') return 'unknown';
  if (phase === 'dry') return 'dry';
  if (phase === 'with kids') return 'withKids';
  if (isTreated) return 'treated';
  if (phase === 'nights apart') return 'morning';
  if (total_mL === null) return 'noEntry';
  return 'twice';
}
