// Which does' kiddings close the pen on a date: for the farm by name, for a school without one.
import type { Basis } from '../../year/nextKidding.ts';
import { isKiddingNear } from '../season.ts';
import type { TripFarm } from '../types.ts';
import type { SeasonDoe, TripSeason } from '../visitTypes.ts';

/** A doe whose pen is closed. */
export interface KiddingNear {
  readonly id: string;
  readonly name: string;
  /** Day number of the kidding: the one on record that is nearest, else the day that is reckoned. */
  readonly day: number;
  /** What a day to come rests on; `record` where it is in the book. */
  readonly basis: Basis | 'record';
}

/** The does whose kiddings close the pen on a day number, in the herd's order; none exactly where the ground says that no kidding is near. */
export function kiddingsNear(
  farm: Pick<TripFarm, 'kiddingDays'>,
  season: Pick<TripSeason, 'does'>,
  day: number,
): KiddingNear[] {
  return season.does.filter((doe) => isKiddingNear(farm, doe, day)).map((doe) => nearestOf(farm, doe, day));
}

function nearestOf(farm: Pick<TripFarm, 'kiddingDays'>, doe: SeasonDoe, day: number): KiddingNear {
  const { id, name, kiddings, due } = doe;
  const onRecord = kiddings
    .filter((one) => isKiddingNear(farm, { ...doe, kiddings: [one], due: null }, day))
    .sort((a, b) => Math.abs(a - day) - Math.abs(b - day))
    .at(0);
  if (onRecord !== undefined) return { id, name, day: onRecord, basis: 'record' };
  return { id, name, day: due?.day ?? day, basis: due?.basis ?? 'record' };
}
