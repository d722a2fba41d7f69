// Who is resting, and why? By each doe's phase on the day of the figures.
import { isoDate } from '../calendar/day.ts';
import type { Phase } from '../herd/expected.ts';
import { dateText } from '../quantity/show.ts';
import { DRY_DAYS } from '../year/gestation.ts';
import type { DoePlace, NamedDoe } from './goatPicture.ts';
import { countSum, dayOf, phaseNow } from './herdOn.ts';
import type { Answer, BoardInput } from './types.ts';

const PLACES: readonly DoePlace[] = ['milked', 'withKids', 'dry'];
const PLACE_OF: Readonly<Record<Exclude<Phase, 'none'>, DoePlace>> = {
  'with kids': 'withKids',
  'nights apart': 'milked',
  'twice a day': 'milked',
  dry: 'dry',
};

/** Does that nobody milks on the day of the figures: dry, or with their kids all day. Others need a kidding row. */
export function whoRests(input: BoardInput): Answer {
  const told = input.does.flatMap(({ id, name, breed }) => {
    const phase = phaseNow(input, id);
    return phase === 'none' ? [] : [{ doe: { id, name, breed }, place: PLACE_OF[phase] }];
  });
  const at = (place: DoePlace): NamedDoe[] => told.filter((one) => one.place === place).map(({ doe }) => doe);
  const counts = PLACES.map((place) => at(place).length);
  const milked = at('milked').length;
  const n = told.length - milked;
  const next = nextChange(input, n);
  return {
    name: 'who-rests',
    missing: told.length === 0,
    live: false,
    face: null,
    number: told.length === 0 ? '' : String(n),
    slots: { n, milked, rest: DRY_DAYS.usual, name: next.name, date: next.date },
    variants: { headline: n === 0 ? 'none' : milked === 0 ? 'all' : 'some', 'why.third': next.what },
    concrete: milked,
    picture: { kind: 'goats', goats: { what: 'rest', places: PLACES.map((place) => ({ place, does: at(place) })) } },
    proof: {
      figure: null,
      steps: [
        ...PLACES.map((place, index) => ({ label: '', key: `place.${place}`, sum: String(counts[index]) })),
        { label: '', sum: countSum(counts.slice(1)) },
      ],
      columns: ['doe', 'kidded', 'apart', 'weaned', 'dry'],
      rows: told.flatMap(({ doe }) => latestRow(input, doe)),
      missing: 0,
      facts: ['lactation-length', 'dry-off', 'gestation', 'short-day-breeder'],
      table: null,
    },
  }; // prettier-ignore
}

function latestRow(input: BoardInput, doe: NamedDoe) {
  const asOf = dayOf(input);
  const latest = input.kiddings
    .filter((one) => one.doe === doe.id && one.day <= asOf)
    .toSorted((a, b) => b.day - a.day)[0];
  if (latest === undefined) return [];
  const dates = [latest.day, latest.apart, latest.weaned, latest.dry];
  return [
    { cells: [doe.name, ...dates.map((day) => (day === null ? '–' : isoDate(day)))], place: 'kiddings.csv' },
  ];
}

/**
 * What the year tells next: where nobody rests the first doe with a dry date ahead, else the first milk of the
 * season to come. `untold` where the lists do not tell it.
 */
function nextChange(
  input: BoardInput,
  resting: number,
): { what: 'firstToRest' | 'back' | 'untold'; name: string; date: string } {
  const asOf = dayOf(input);
  const dated = (day: number) => dateText(isoDate(day), input.lang);
  if (resting === 0) {
    const first = input.kiddings
      .filter((one) => one.day <= asOf && (one.dry ?? asOf) > asOf)
      .toSorted((a, b) => (a.dry ?? 0) - (b.dry ?? 0))[0];
    const doe = input.does.find(({ id }) => id === first?.doe);
    if (doe && first?.dry) return { what: 'firstToRest', name: doe.name, date: dated(first.dry) };
    return { what: 'untold', name: '', date: '' };
  }
  const { coming } = input.year;
  const days = [...partings(input), ...(coming.ok ? [coming.start.day] : [])].filter((day) => day > asOf);
  if (days.length === 0) return { what: 'untold', name: '', date: '' };
  return { what: 'back', name: '', date: dated(Math.min(...days)) };
}

/** Days of the list from which does that are with their kids now are milked. */
function partings(input: BoardInput): number[] {
  const asOf = dayOf(input);
  return input.kiddings
    .filter((one) => one.day <= asOf && phaseNow(input, one.doe) === 'with kids')
    .flatMap(({ apart, weaned }) => apart ?? weaned ?? []);
}
