// Why is there less milk in winter, and when does it come back? The herd's months of milk, and the days until the next.
import { dayNumber, isoDate } from '../calendar/day.ts';
import { monthText } from '../quantity/monthText.ts';
import { dateText, decimalText, wholeParts } from '../quantity/show.ts';
import { KIDDING_INTERVAL_DAYS } from '../year/defaults.ts';
import { DRY_DAYS, GESTATION_DAYS } from '../year/gestation.ts';
import type { BoardMonth } from './boardYear.ts';
import { exactText, jarAmount } from './shown.ts';
import type { FoodPicture } from './foodPicture.ts';
import type { Answer, BoardInput, ProofStep } from './types.ts';

/** Months that the answer looks back on; the running one is the last. */
export const LOOKED_BACK = 12;

const MANY_JARS = 100;
const FACTS: readonly string[] = Object.freeze([
  'short-day-breeder',
  'gestation',
  'peak-weeks',
  'lactation-length',
  'dry-off',
  'once-a-year',
  'kids-with-mother',
]);

/** Days until milk likely returns where the herd rests; else the months, of the last twelve, that gave milk. */
export function winter(input: BoardInput): Answer {
  const { lang, week, year } = input;
  const asOf = dayNumber(week.asOf) ?? 0;
  const months = year.months.slice(-LOOKED_BACK);
  const withMilk = months.filter((month) => month.total_mL > 0);
  const rests = week.state === 'resting' && !week.expectedNow;
  const start = year.coming.ok && year.coming.start.day > asOf ? year.coming.start : null;
  const until = rests && start ? start.day - asOf : 0;
  const n = until > 0 ? until : withMilk.length;
  const stops = year.stop.ok ? monthText(isoDate(year.stop.day), lang, 'long') : null;
  const returns = start ? monthText(isoDate(start.day), lang, 'long') : null;
  const date = (number: number | undefined) => (number === undefined ? '' : dateText(isoDate(number), lang));
  const best = bestOf(months);
  const shape = until > 0 ? 'rests' : !rests && stops && returns ? 'gives' : 'open';
  return {
    name: 'winter',
    missing: withMilk.length === 0 && until === 0,
    live: false,
    face: null,
    number: n === 0 ? '' : String(n),
    slots: {
      n,
      stops: stops ?? '',
      returns: returns ?? '',
      returnsDay: date(start?.day),
      from: date(start?.from),
      to: date(start?.to),
      carry: GESTATION_DAYS.usual,
      rest: DRY_DAYS.usual,
      between: KIDDING_INTERVAL_DAYS.usual,
      best: best ? monthText(best.month, lang, 'long') : '',
      bestJars: best ? jarsText(input, best.total_mL) : '',
    },
    variants: {
      unit: until > 0 ? 'until' : 'months',
      headline: shape,
      rule: until > 0 ? 'until' : 'months',
      concrete: best ? 'milk' : 'none',
    },
    concrete: months.length - withMilk.length,
    picture: { kind: 'food', food: monthsPicture(input, months, stops, returns) },
    proof: {
      figure: null,
      steps: stepsOf(input, months, start && until > 0 ? start.day : null),
      columns: ['amount'],
      rows: [],
      missing: 0,
      facts: FACTS,
      table: null,
    },
  };
}

function bestOf(months: readonly BoardMonth[]): BoardMonth | null {
  return months.reduce<BoardMonth | null>(
    (best, month) => (month.total_mL > (best?.total_mL ?? 0) ? month : best),
    null,
  );
}

function monthsPicture(
  input: BoardInput,
  months: readonly BoardMonth[],
  stops: string | null,
  returns: string | null,
): FoodPicture {
  const most_mL = Math.max(...months.map((month) => month.total_mL), 0);
  return {
    kind: 'months',
    months: months.map(({ month, total_mL, rows }) => ({
      month,
      name: monthText(month, input.lang, 'short'),
      fill: most_mL > 0 ? total_mL / most_mL : 0,
      jars: rows === 0 ? '' : jarsText(input, total_mL),
    })),
    stops,
    returns,
  };
}

/** Jars of a month: halves are told of a few jars, not of hundreds. */
function jarsText(input: BoardInput, total_mL: number): string {
  const { n, text } = jarAmount(input, total_mL);
  return n < MANY_JARS ? text : decimalText(wholeParts(total_mL / input.jar_mL), 0, input.lang);
}

/** One line a month with its milkings in brackets, then the count of months, then the days where the herd rests. */
function stepsOf(input: BoardInput, months: readonly BoardMonth[], start: number | null): ProofStep[] {
  const { lang, week } = input;
  const lines = months.map(({ month, total_mL, rows }) => ({
    label: monthText(month, lang, 'year'),
    sum: `${exactText(input, total_mL)} (${rows})`,
  }));
  const withMilk = months.filter((month) => month.total_mL > 0).length;
  const asOf = dayNumber(week.asOf) ?? 0;
  return [
    ...lines,
    { label: '', key: 'winter.months', sum: String(withMilk) },
    ...(start === null
      ? []
      : [{ label: '', key: 'winter.days', sum: `${isoDate(start)} − ${week.asOf} = ${start - asOf}` }]),
  ];
}
