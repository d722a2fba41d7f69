// Where are the kids, and what do they drink? By the phase that each mother's kidding row gives for the day.
import { isoDate } from '../calendar/day.ts';
import { phaseOn, phaseSpans } from '../herd/expected.ts';
import { dateText } from '../quantity/show.ts';
import { NIGHTS_APART_DAYS, WITH_KIDS_DAYS } from '../year/defaults.ts';
import type { KidPlace } from './goatPicture.ts';
import { birthsOfYear, countSum, dayOf, doeNamed, kidsOf, kidYear, type KnownBirth } from './herdOn.ts';
import type { Answer, BoardInput } from './types.ts';

const PLACES: readonly KidPlace[] = ['mother', 'apart', 'bottle', 'weaned'];

/**
 * Days after which bottle kids count as weaned, since no row says when: the longest that other kids commonly
 * get milk. Facts `kids-with-mother` and `nights-apart`: common practice, no source.
 */
export const BOTTLE_DAYS = WITH_KIDS_DAYS + NIGHTS_APART_DAYS.high;

/**
 * Where the kids of a birth are on a day. A row with neither `apart` nor `weaned` is of kids reared by bottle, from
 * the day after their birth on.
 */
export function kidPlace(birth: KnownBirth, asOf: number): KidPlace {
  const phase = phaseOn(phaseSpans([birth]), asOf);
  if (phase === 'with kids') return 'mother';
  if (phase === 'nights apart') return 'apart';
  const onBottle = birth.apart === null && birth.weaned === null;
  return onBottle && asOf - birth.day <= BOTTLE_DAYS ? 'bottle' : 'weaned';
}

/** The kids of the year and where they are; the headline speaks of the place of more than half of them. */
export function whereKids(input: BoardInput): Answer {
  const births = birthsOfYear(input);
  const asOf = dayOf(input);
  const n = kidsOf(births);
  const at = (place: KidPlace) => kidsOf(births.filter((birth) => kidPlace(birth, asOf) === place));
  const places = PLACES.map((place) => ({ place, kids: at(place) }));
  const most = places.find(({ kids }) => kids * 2 > n)?.place ?? 'mixed';
  const weaned = at('weaned');
  return {
    name: 'where-kids',
    missing: n === 0,
    live: false,
    face: null,
    number: n === 0 ? '' : String(n),
    slots: {
      n,
      year: kidYear(input),
      mothers: new Set(births.map(({ doe }) => doe)).size,
      weaned,
      bottle: BOTTLE_DAYS,
    },
    variants: { headline: most },
    concrete: weaned,
    picture: { kind: 'goats', goats: { what: 'kids', places } },
    proof: {
      figure: null,
      steps: [
        ...places.map(({ place, kids }) => ({ label: '', key: `kids.${place}`, sum: String(kids) })),
        { label: '', sum: countSum(places.map(({ kids }) => kids)) },
      ],
      columns: ['date', 'doe', 'kids', 'apart', 'weaned'],
      rows: births.map((birth) => ({
        cells: [
          dateText(isoDate(birth.day), input.lang, 'day'),
          doeNamed(input, birth.doe).name,
          String(birth.kids),
          ...[birth.apart, birth.weaned].map((day) => (day === null ? '–' : isoDate(day))),
        ],
        place: 'kiddings.csv',
      })),
      missing: 0,
      facts: [
        'colostrum',
        'kids-with-mother',
        'nights-apart',
        'weaning-rule',
        'kid-milk',
        'birth-and-q-fever',
      ],
      table: null,
    },
  };
}
