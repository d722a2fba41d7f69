// How is a goat milked? The farm's usual steps in their order, and how many of them a week makes.
import { decimalText } from '../quantity/show.ts';
import { BOOK_COLUMNS, bookRow } from './shown.ts';
import type { Answer, BoardInput } from './types.ts';

/** A step of milking: taken for each doe, or once for all of a milking; whether it is there to keep dirt and germs out. */
export interface MilkingStep {
  readonly name: string;
  readonly forEach: 'doe' | 'milking';
  readonly cleans: boolean;
}

/** The farm's usual order of milking by hand. Common practice, no source. */
export const MILKING_STEPS = Object.freeze([
  { name: 'hands', forEach: 'milking', cleans: true },
  { name: 'brush', forEach: 'doe', cleans: true },
  { name: 'stand', forEach: 'doe', cleans: false },
  { name: 'wipe', forEach: 'doe', cleans: true },
  { name: 'strip', forEach: 'doe', cleans: false },
  { name: 'milk', forEach: 'doe', cleans: false },
  { name: 'dip', forEach: 'doe', cleans: true },
  { name: 'strain', forEach: 'milking', cleans: true },
  { name: 'chill', forEach: 'milking', cleans: false },
  { name: 'washUp', forEach: 'milking', cleans: true },
] as const satisfies readonly MilkingStep[]);

/** Name of one of these steps. */
export type MilkingStepName = (typeof MILKING_STEPS)[number]['name'];

/** Steps taken for each doe, and steps taken once for all of them. */
export const STEPS_EACH_DOE = MILKING_STEPS.filter((step) => step.forEach === 'doe').length;
export const STEPS_FOR_ALL = MILKING_STEPS.length - STEPS_EACH_DOE;
/** Share of a goat's milk that waits above the teat, percent: the fact `milk-in-cistern` has the sources. */
export const CISTERN_PCT = Object.freeze({ least: 57, most: 75 });

/** The week's milkings: of single does, and how often the milkers came for all of them. */
export function milkingsOfWeek({ week }: BoardInput): { ofDoes: number; times: number } {
  const rows = week.does.flatMap((doe) => doe.milkings);
  return { ofDoes: rows.length, times: new Set(rows.map((row) => `${row.date} ${row.milking}`)).size };
}

/** The number of steps, which holds with an empty book too; and the steps that the week's milkings made. */
export function howToMilk(input: BoardInput): Answer {
  const { week, lang } = input;
  const { ofDoes, times } = milkingsOfWeek(input);
  const shown = (n: number) => decimalText(n, 0, lang);
  const taken = STEPS_EACH_DOE * ofDoes + STEPS_FOR_ALL * times;
  const made = [
    {
      label: '',
      key: 'milking.eachDoe',
      sum: `${STEPS_EACH_DOE} × ${ofDoes} = ${shown(STEPS_EACH_DOE * ofDoes)}`,
    },
    {
      label: '',
      key: 'milking.forAll',
      sum: `${STEPS_FOR_ALL} × ${times} = ${shown(STEPS_FOR_ALL * times)}`,
    },
    {
      label: '',
      key: 'milking.week',
      sum: `${shown(STEPS_EACH_DOE * ofDoes)} + ${shown(STEPS_FOR_ALL * times)} = ${shown(taken)}`,
    },
  ];
  return {
    name: 'how-to-milk',
    missing: false,
    live: ofDoes > 0,
    face: null,
    number: String(MILKING_STEPS.length),
    slots: {
      n: MILKING_STEPS.length,
      each: STEPS_EACH_DOE,
      shared: STEPS_FOR_ALL,
      milkings: ofDoes,
      taken: shown(taken),
    },
    variants: {},
    concrete: taken,
    picture: {
      kind: 'kitchen',
      kitchen: { of: 'milking-steps', steps: MILKING_STEPS.map(({ name }) => name) },
    },
    proof: {
      figure: null,
      steps: [
        { label: '', sum: `${STEPS_EACH_DOE} + ${STEPS_FOR_ALL} = ${MILKING_STEPS.length}` },
        ...(ofDoes > 0 ? made : []),
      ],
      columns: BOOK_COLUMNS,
      rows: week.does.flatMap((doe) => doe.milkings.map((row) => bookRow(input, doe.name, row))),
      missing: week.does.reduce((sum, doe) => sum + doe.missing.length, 0),
      facts: ['milking-order', 'strip-cup', 'milking-gentle', 'teat-dip', 'cooling-clock', 'stop-and-ask'],
      table: null,
    },
  };
}
