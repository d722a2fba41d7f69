// Another day instead of an empty one: which stations a farm shows when there are no kids, no milk, or no milking.
import { BANDS, type Band } from '../quantity/band.ts';
import { isMilked, isReared, stateOn } from './doeOn.ts';
import type { Station, TripFarm } from './types.ts';
import type { SeasonDoe, TripSeason } from './visitTypes.ts';

/** Kids that children can see, the youngest care first; `young kids` are weaned and still small. */
export type KidsThere = 'kids at foot' | 'kids on bottles' | 'young kids' | 'none';

// Kids drink for eight weeks (Lu and Potchoiba, on rearing kids); most farms keep them some weeks more. The latter is
// common practice, no source.
const BOTTLE_DAYS = 56;
const YOUNG_DAYS = 112;

/** The kids there are on a day, as far as kiddings on record or reckoned tell. */
export function kidsOn({ does }: Pick<TripSeason, 'does'>, day: number): KidsThere {
  const all = does.map((doe) => kidsOf(doe, day));
  return (
    (['kids at foot', 'kids on bottles', 'young kids'] as const).find((one) => all.includes(one)) ?? 'none'
  );
}

function kidsOf(doe: SeasonDoe, day: number): KidsThere {
  const { due, kiddings, spans, quiet } = doe;
  if (quiet) return 'none';
  const born = [...kiddings, ...(due && due.basis !== 'book' ? [due.day] : [])].filter((one) => one <= day);
  const age_days = day - Math.max(...born, Number.NEGATIVE_INFINITY);
  if (age_days > YOUNG_DAYS) return 'none';
  const { state } = stateOn(doe, day);
  if (isReared(spans, kiddings) && (state === 'with kids' || state === 'nights apart')) return 'kids at foot';
  if (!isReared(spans, kiddings) && age_days <= BOTTLE_DAYS) return 'kids on bottles';
  return 'young kids';
}

// What shows milk itself is empty where there is none. A farm's own stations are not known by what they show.
const SHOWS_MILK: readonly string[] = ['kitchen-window'];

// Taken where a station has no stand-in: what is there in every season.
const ALWAYS: readonly string[] = [
  'hay-loft',
  'hoof-and-coat',
  'kid-table',
  'goat-barn',
  'practice-stand',
  'barn-board',
];

/**
 * What a farm chooses for each band on a day without kids in the pen, or without milk; null where its usual choice
 * holds. Milkings that cannot be watched and pens that are closed are the plan's to tell of.
 */
export function usualOn(farm: TripFarm, season: TripSeason, day: number): Readonly<Record<Band, readonly string[]>> | null {
  if (season.does.length === 0) return null;
  const noKids = kidsOn(season, day) === 'none';
  const noMilk = !season.does.some((doe) => isMilked(stateOn(doe, day).state));
  const isEmpty = (id: string) => {
    const station = farm.stations.find((one) => one.id === id);
    return (noKids && (station?.kidding ?? false)) || (noMilk && SHOWS_MILK.includes(id));
  };
  if (!BANDS.some((band) => farm.usual[band].some(isEmpty))) return null;
  const chosen = BANDS.map((band) => [band, instead(farm, farm.usual[band], isEmpty)] as const);
  return Object.fromEntries(chosen) as Record<Band, readonly string[]>;
} // prettier-ignore

/**
 * Stations with something else in the place of each that has nothing to show: its stand-in, or one that is there in
 * every season. In the order of the loop, none twice.
 */
export function instead(
  { stations }: Pick<TripFarm, 'stations'>,
  chosen: readonly string[],
  isEmpty: (id: string) => boolean,
): readonly string[] {
  const taken = new Set(chosen.filter((id) => !isEmpty(id)));
  for (const id of chosen.filter(isEmpty)) {
    const by = [...standInsOf(stations, id), ...ALWAYS].find(
      (one) => stations.some((station) => station.id === one) && !isEmpty(one) && !taken.has(one),
    );
    if (by !== undefined) taken.add(by);
  }
  return stations.filter(({ id }) => taken.has(id)).map(({ id }) => id);
}

function standInsOf(stations: readonly Station[], from: string): string[] {
  const chain: string[] = [];
  let next = stations.find(({ id }) => id === from)?.standIn ?? null;
  while (next !== null && next !== from && !chain.includes(next)) {
    const id: string = next;
    chain.push(id);
    next = stations.find((one) => one.id === id)?.standIn ?? null;
  }
  return chain;
}
