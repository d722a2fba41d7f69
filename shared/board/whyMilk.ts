// Why do goats have milk? Counted by the kids that it was made for.
import { civilFromDay, dayNumber, isoDate } from '../calendar/day.ts';
import { dateText } from '../quantity/show.ts';
import type { Answer, BoardInput } from './types.ts';

/** Kids born on the farm in the year of the last day, up to `asOf`, from the kidding rows that say how many. */
export function whyMilk(input: BoardInput): Answer {
  const { week, kiddings, lang } = input;
  const asOf = dayNumber(week.asOf) ?? 0;
  const year = civilFromDay(dayNumber(week.window?.to ?? week.asOf) ?? asOf).year;
  const births = kiddings.filter(
    (kidding) => kidding.day <= asOf && civilFromDay(kidding.day).year === year && kidding.kids !== null,
  );
  const kids = births.reduce((sum, birth) => sum + (birth.kids ?? 0), 0);
  const nameOf = (id: string) => week.does.find((doe) => doe.id === id)?.name ?? id;
  return {
    name: 'why-milk',
    missing: kids === 0,
    live: false,
    face: null,
    number: kids === 0 ? '' : String(kids),
    slots: { n: kids, year, does: new Set(births.map((birth) => birth.doe)).size },
    variants: {},
    concrete: kids,
    picture: { kind: 'nursing', kids },
    proof: {
      figure: null,
      steps: [{ label: '', sum: `${births.map((birth) => birth.kids).join(' + ')} = ${kids}` }],
      columns: ['date', 'doe', 'kids'],
      rows: births.map((birth) => ({
        cells: [dateText(isoDate(birth.day), lang, 'day'), nameOf(birth.doe), String(birth.kids)],
        place: 'kiddings.csv',
      })),
      missing: 0,
      facts: ['newborn-weight', 'litter', 'milk-for-young'],
      table: null,
    },
  };
}
