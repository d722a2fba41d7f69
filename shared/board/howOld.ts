// How old are they? By the birth dates in the farm's list, in whole birthdays.
import { civilFromDay, dayNumber } from '../calendar/day.ts';
import type { Doe } from '../herd/types.ts';
import { trimmedText } from '../quantity/show.ts';
import { dayOf } from './herdOn.ts';
import type { Answer, BoardInput, ProofStep } from './types.ts';

/** Years that does commonly live, and that a few reach. Fact `goat-years`: goat keeping pages and a handbook. */
export const LIFE_YEARS = Object.freeze({ from: 11, to: 12, late: 18 });

/** A doe whose birth date is known, and her age on the day of the figures. */
interface Aged {
  readonly doe: Doe & { readonly born: string };
  readonly day: number;
  readonly years: number;
  readonly months: number;
}

/**
 * Whole months between two day numbers; a month is over on the same day of the month, or on the first of the
 * next one where the month has no such day.
 * @example monthsBetween(19753, 19783) // => 1
 */
export function monthsBetween(born: number, asOf: number): number {
  const from = civilFromDay(born);
  const to = civilFromDay(asOf);
  const months = (to.year - from.year) * 12 + to.month - from.month;
  return to.dayOfMonth < from.dayOfMonth ? months - 1 : months;
}

/** The does' ages; the number is that of the oldest, in years, or in months where no doe has had a birthday. */
export function howOld(input: BoardInput): Answer {
  const aged = agedDoes(input);
  const oldest = aged.toSorted((a, b) => a.day - b.day)[0];
  if (oldest === undefined) return noBirths();
  const unit = oldest.years > 0 ? 'years' : 'months';
  const n = oldest[unit];
  const ages = aged.map((one) => one[unit]).toSorted((a, b) => a - b);
  const youngest = ages[0] ?? n;
  const { name } = oldest.doe;
  return {
    name: 'how-old',
    missing: false,
    live: false,
    face: { id: oldest.doe.id, name, breed: oldest.doe.breed },
    number: String(n),
    slots: {
      n,
      name,
      youngest,
      middle: trimmedText(middleOf(ages), input.lang),
      does: aged.length,
      ...LIFE_YEARS,
    },
    variants: {
      unit: `${unit}${aged.length === 1 ? 'Alone' : ''}`,
      headline: youngest === n ? 'same' : unit,
      'why.second': aged.length > 2 ? unit : 'few',
      concrete: unit,
      think: unit,
    },
    concrete: n,
    picture: { kind: 'goats', goats: { what: 'ages', unit, rows: rowsByAge(aged, unit) } },
    proof: {
      figure: null,
      steps: [...aged.map((one) => ageStep(one, dayOf(input), unit)), { label: '', key: 'oldest', sum: String(n) }],
      columns: ['doe', 'born'],
      rows: aged.map(({ doe }) => ({ cells: [doe.name, doe.born], place: 'does.csv' })),
      missing: 0,
      facts: ['goat-years', 'age-by-teeth'],
      table: null,
    },
  }; // prettier-ignore
}

function agedDoes(input: BoardInput): Aged[] {
  const asOf = dayOf(input);
  return input.does.flatMap((doe) => {
    const day = dayNumber(doe.born ?? '');
    // A doe whose birth date lies ahead is a slip, and has no age.
    if (doe.born === null || day === null || day > asOf) return [];
    const months = monthsBetween(day, asOf);
    return [{ doe: { ...doe, born: doe.born }, day, years: Math.floor(months / 12), months }];
  });
}

function middleOf(inOrder: readonly number[]): number {
  const half = Math.floor(inOrder.length / 2);
  const upper = inOrder[half] ?? 0;
  return inOrder.length % 2 === 1 ? upper : ((inOrder[half - 1] ?? 0) + upper) / 2;
}

function rowsByAge(aged: readonly Aged[], unit: 'years' | 'months') {
  const ages = [...new Set(aged.map((one) => one[unit]))].toSorted((a, b) => a - b);
  return ages.map((age) => ({
    age,
    does: aged
      .filter((one) => one[unit] === age)
      .map(({ doe: { id, name, breed } }) => ({ id, name, breed })),
  }));
}

/** The year of the figures less the year of birth, and one less where her birthday is still to come. */
function ageStep({ doe, day, years, months }: Aged, asOf: number, unit: 'years' | 'months'): ProofStep {
  if (unit === 'months') return { label: doe.name, sum: String(months) };
  const [born, now] = [civilFromDay(day).year, civilFromDay(asOf).year];
  const wait = now - born > years ? ' − 1' : '';
  return { label: doe.name, sum: `${now} − ${born}${wait} = ${years}` };
}

function noBirths(): Answer {
  return {
    name: 'how-old',
    missing: true,
    live: false,
    face: null,
    number: '',
    slots: { n: 0, name: '', youngest: 0, middle: '', does: 0, ...LIFE_YEARS },
    variants: { think: 'years' },
    concrete: 0,
    picture: { kind: 'goats', goats: { what: 'ages', unit: 'years', rows: [] } },
    proof: {
      figure: null,
      steps: [],
      columns: [],
      rows: [],
      missing: 0,
      facts: ['goat-years', 'age-by-teeth'],
      table: null,
    },
  };
}
