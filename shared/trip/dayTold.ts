// What to expect of the farm on a day: its milk, what each doe does, what children can see, what the sheets are about.
import { BANDS, type Band } from '../quantity/band.ts';
import { stateOn, type DoeState } from './doeOn.ts';
import { groundOn, isKiddingNear, SEASON_DAYS } from './season.ts';
import { instead, kidsOn, type KidsThere } from './programme.ts';
import type { DayGround, TripFarm } from './types.ts';
import type { SeasonDoe, SeasonMilk, TripSeason } from './visitTypes.ts';

/** A doe as she is on the day. */
export interface DoeTold {
  readonly doe: SeasonDoe;
  readonly state: DoeState;
  /** Whether it rests on a kidding that is reckoned and not on record. */
  readonly likely: boolean;
  /** Whether her kidding is near, so that she is left in peace. */
  readonly near: boolean;
}

/** Where a day lies: `beyond` is further ahead than the season tells. */
export type DayWhen = 'past' | 'today' | 'ahead' | 'beyond';

/**
 * What kind of a day it is for a visitor: `milk` only where a milking is sure, `births` where kids are being born and
 * none is, `empty` where the farm has no does in its book.
 */
export type DayKind = 'milk' | 'births' | 'kids' | 'rest' | 'unknown' | 'empty';

/** What children can see. */
export type Sight =
  | 'milking'
  | 'kids at foot'
  | 'kids on bottles'
  | 'young kids'
  | 'pen closed'
  | 'resting does'
  | 'feeding'
  | 'care'
  | 'practice'
  | 'measuring';

/** What the sheets of the day take their numbers and questions from. */
export type SheetTopic = 'milk of the week' | 'last milk' | 'kids' | 'year' | 'feed' | 'bodies' | 'measuring';

/** What to expect on a day. */
export interface DayTold {
  readonly day: number;
  readonly when: DayWhen;
  readonly kind: DayKind;
  readonly ground: DayGround;
  /** Null where the book cannot tell it; never for a day that is not ahead. */
  readonly milk: SeasonMilk | null;
  /** Does whom the milk above leaves out, since the book tells too little of them. */
  readonly without: readonly SeasonDoe[];
  readonly does: readonly DoeTold[];
  /** Whether any of it rests on kiddings that are reckoned from other years. */
  readonly likely: boolean;
  readonly sights: readonly Sight[];
  readonly topics: readonly SheetTopic[];
  /** The stations that the farm would choose for each band on this day, in the order of its loop, stand-ins in place. */
  readonly programme: Readonly<Record<Band, readonly string[]>>;
}

/** What to expect on a day (a day number). */
export function dayTold(farm: TripFarm, season: TripSeason, day: number): DayTold {
  const when = whenOf(season, day);
  const ground = groundOn(farm, season, day);
  const does = season.does.map((doe): DoeTold => {
    const known = when === 'beyond' ? { state: 'unknown' as const, likely: false } : stateOn(doe, day);
    return { doe, ...known, near: isKiddingNear(farm, doe, day) };
  });
  const kind = kindOf(does, ground);
  const kids = when === 'beyond' ? 'none' : kidsOn(season, day);
  return {
    day,
    when,
    kind,
    ground,
    milk: when === 'ahead' ? (season.milk[day - season.asOf - 1] ?? null) : null,
    without: does.flatMap(({ doe }) => (doe.quiet ? [doe] : [])),
    does,
    likely: does.some(({ likely }) => likely),
    sights: sightsOf(kind, ground, kids).filter((sight) => hasPlaceOf(farm, sight)),
    topics: topicsOf(kind, ground, kids),
    programme: programmeOf(farm, ground),
  };
}

function whenOf({ asOf }: TripSeason, day: number): DayWhen {
  if (day < asOf) return 'past';
  if (day === asOf) return 'today';
  return day <= asOf + SEASON_DAYS ? 'ahead' : 'beyond';
}

function kindOf(does: readonly DoeTold[], ground: DayGround): DayKind {
  if (does.length === 0) return 'empty';
  if (ground.milkings.length > 0) return 'milk';
  if (ground.kiddingNear) return 'births';
  const isThere = (states: readonly DoeState[]) => does.some(({ state }) => states.includes(state));
  // One who is milked, though that is not sure.
  if (isThere(['nights apart', 'twice a day']) || !isThere(['with kids', 'dry', 'not kidded']))
    return 'unknown';
  return isThere(['with kids']) ? 'kids' : 'rest';
}

function sightsOf(kind: DayKind, ground: DayGround, kids: KidsThere): Sight[] {
  const closed = ground.kiddingNear;
  return [
    ...(ground.milkings.length > 0 ? (['milking'] as const) : []),
    ...(closed ? (['pen closed'] as const) : kids === 'none' ? [] : ([kids] as const)),
    ...(kind === 'rest' ? (['resting does'] as const) : []),
    ...(kind === 'empty' ? [] : (['feeding', 'care'] as const)),
    ...(ground.milkings.length > 0 ? [] : (['practice'] as const)),
    'measuring',
  ];
}

/** Pailside's own stations at which something is seen that no goat shows by herself. */
const PLACES: Readonly<Partial<Record<Sight, string>>> = {
  practice: 'practice-stand',
  measuring: 'measuring-table',
  'pen closed': 'kid-table',
};

/** Whether the farm has a station for it, where it needs one. */
function hasPlaceOf({ stations }: TripFarm, sight: Sight): boolean {
  if (sight === 'milking') return stations.some(({ milking }) => milking);
  const place = PLACES[sight];
  return place === undefined || stations.some(({ id }) => id === place);
}

function topicsOf(kind: DayKind, ground: DayGround, kids: KidsThere): SheetTopic[] {
  const isMilk = kind === 'milk';
  const isAboutKids = kids !== 'none' || ground.kiddingNear;
  return [
    ...(isMilk ? (['milk of the week'] as const) : kind === 'empty' ? [] : (['last milk'] as const)),
    ...(isAboutKids ? (['kids'] as const) : []),
    ...(isMilk ? [] : (['year'] as const)),
    'feed',
    ...(isMilk ? [] : (['bodies'] as const)),
    'measuring',
  ];
}

/** The farm's choice as it is met: a milking that cannot be watched and a closed pen have given way. */
function programmeOf(farm: TripFarm, ground: DayGround): DayTold['programme'] {
  const usual = ground.usual ?? farm.usual;
  const isClosed = (id: string) => {
    const station = farm.stations.find((one) => one.id === id);
    if (!station) return true;
    return (station.milking && ground.milkings.length === 0) || (station.kidding && ground.kiddingNear);
  };
  return Object.fromEntries(
    BANDS.map((band) => [band, instead(farm, usual[band], isClosed)]),
  ) as unknown as DayTold['programme'];
}
