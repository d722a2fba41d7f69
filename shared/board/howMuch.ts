// How much milk does one doe give? Told by the doe in the middle, so that nobody wins.
import type { DoeWeek } from '../herd/week.ts';
import { dateText } from '../quantity/show.ts';
import { UNIT_ML } from '../quantity/units.ts';
import { BOOK_COLUMNS, bookRow, dayAmount, dayUnit, quotientOf_mL, servings, sumOf_mL } from './shown.ts';
import type { Answer, BoardInput, ProofStep } from './types.ts';

/**
 * The doe in the middle by her mean day of the week, among those milked twice a day if there are
 * any. Of an even number the lower of the two middle ones is taken, so that she is a real doe.
 * `inMiddle` tells whether others really give more and less than she.
 */
export function middleDoe(input: BoardInput): { doe: DoeWeek; mean_mL: number; inMiddle: boolean } | null {
  const { week, figures } = input;
  const known = week.does.flatMap((doe) => {
    const mean_L = figures.figures[`doe.${doe.id}.week.dailyMean`]?.value ?? null;
    return mean_L === null ? [] : [{ doe, mean_mL: mean_L * 1000 }];
  });
  const twice = known.filter(({ doe }) => doe.phase === 'twice a day');
  const inOrder = (twice.length > 0 ? twice : known).toSorted((a, b) => a.mean_mL - b.mean_mL);
  const place = Math.floor((inOrder.length - 1) / 2);
  const middle = inOrder[place];
  if (middle === undefined) return null;
  const less = (inOrder[place - 1]?.mean_mL ?? Infinity) < middle.mean_mL;
  const more = (inOrder[place + 1]?.mean_mL ?? -Infinity) > middle.mean_mL;
  return { ...middle, inMiddle: less && more };
}

/** The middle doe's mean day, in cups or litres, and how many children it serves. */
export function howMuch(input: BoardInput): Answer {
  const middle = middleDoe(input);
  if (middle === null) return noDoe(input);
  const { doe, mean_mL, inMiddle } = middle;
  const company = inMiddle ? 'middle' : 'few';
  const { n, text } = dayAmount(input, mean_mL);
  // Served from the amount that is shown, so that sixteen cups are school milk for sixteen.
  const children = servings(n * UNIT_ML[dayUnit(input)].valueOf());
  return {
    name: 'how-much',
    missing: false,
    live: true,
    face: doe,
    number: text,
    slots: { n, amount: text, name: doe.name },
    variants: { unit: input.units, headline: company, 'why.third': company },
    concrete: children,
    picture: { kind: 'jars', milk_mL: mean_mL, children },
    proof: {
      figure: `doe.${doe.id}.week.dailyMean`,
      steps: meanSteps(input, doe),
      columns: BOOK_COLUMNS,
      rows: doe.milkings.map((row) => bookRow(input, doe.name, row)),
      missing: doe.missing.length,
      facts: ['school-serving'],
      table: null,
    },
  };
}

/** One line a day that counts, then the division. Days that are not whole stand in no line. */
function meanSteps(input: BoardInput, doe: DoeWeek): ProofStep[] {
  const days = doe.wholeDates.map((date) => {
    const rows = doe.milkings.filter((row) => row.date === date);
    const total_mL = rows.reduce((sum, row) => sum + row.amount_mL, 0);
    const sum = sumOf_mL(
      input,
      rows.map((row) => row.amount_mL),
      total_mL,
    );
    return { label: dateText(date, input.lang, 'day'), sum, total_mL };
  });
  const all_mL = days.reduce((sum, day) => sum + day.total_mL, 0);
  const division = quotientOf_mL(input, all_mL, days.length);
  return [...days.map(({ label, sum }) => ({ label, sum })), { label: '', sum: division }];
}

function noDoe(input: BoardInput): Answer {
  return {
    name: 'how-much',
    missing: true,
    live: true,
    face: null,
    number: '',
    slots: { n: 0, amount: '', name: '' },
    variants: { unit: input.units },
    concrete: 0,
    picture: { kind: 'jars', milk_mL: 0, children: 0 },
    proof: {
      figure: null,
      steps: [],
      columns: [],
      rows: [],
      missing: 0,
      facts: ['school-serving'],
      table: null,
    },
  };
}
