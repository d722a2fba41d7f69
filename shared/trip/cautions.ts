// Which cautions a group must hear: those for everybody, and those that its own wishes or the farm's date ask for.
import { dayNumber, weekday } from '../calendar/day.ts';
import { SEASON_DAYS } from './season.ts';
import { NEEDS, type DayGround, type Need, type TripFarm, type TripPlan, type TripWish } from './types.ts';

/**
 * A caution. Washing, no food near animals, no raw milk: CDC, "Compendium of Measures to Prevent Disease Associated
 * with Animals in Public Settings". `young`: children under five are at higher risk (the same). `kidding`: Q fever and
 * other germs of birth (CDC; gov.uk on pregnancy and animals giving birth). The rest: common practice, no source.
 */
export type Caution = 'wash' | 'food' | 'raw' | 'shoes' | 'young' | 'kidding' | 'rain' | Need;

const KINDERGARTEN = 0;

/** The cautions for a group, the ones that are its own first. */
export function cautionsFor(
  wish: TripWish,
  farm: Pick<TripFarm, 'stations'>,
  ground: DayGround,
  plan: TripPlan,
): readonly Caution[] {
  const own: Caution[] = NEEDS.filter((need) => wish.needs.includes(need));
  if (ground.kiddingNear) own.push('kidding');
  if (wish.grade === KINDERGARTEN) own.push('young');
  if (wish.rain) own.push('rain');
  // What is true of animals is said where the day has some; a day that does not work yet may have them again.
  const meets = !plan.ok || plan.day.stations.some((id) => zoneOf(farm, id) !== 'clean');
  const eats = wish.lunch !== null;
  return [...own, 'wash', ...(meets || eats ? (['food'] as const) : []), 'raw', ...(meets ? (['shoes'] as const) : [])]; // prettier-ignore
}

const zoneOf = (farm: Pick<TripFarm, 'stations'>, id: string) =>
  farm.stations.find((station) => station.id === id)?.zone;

/** What is odd about a date: it lies before the farm's day, beyond what the book can tell, or on a weekend. */
export function oddDate(date: string, asOf: number): 'past' | 'far' | 'weekend' | null {
  const day = dayNumber(date);
  if (day === null) return null;
  if (day < asOf) return 'past';
  if (day > asOf + SEASON_DAYS) return 'far';
  return [0, 6].includes(weekday(day)) ? 'weekend' : null;
}
