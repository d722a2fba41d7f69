// A visit on file with the day that is planned for it, as every page and notice about visits needs it.
import { dayNumber } from '../../calendar/day.ts';
import { planTrip } from '../planTrip.ts';
import type { DayGround, TripFarm, TripPlan } from '../types.ts';
import type { Visit } from '../visitTypes.ts';

/** A visit and its plan. */
export interface PlannedVisit {
  readonly visit: Visit;
  readonly plan: TripPlan;
}

/** What the farm is on a day number. */
export type GroundOf = (day: number) => DayGround;

/** Plans a visit with the same function as the Trip plan's page, which alone looks for the changes that would help. */
function planVisit(visit: Visit, farm: TripFarm, groundOf: GroundOf): PlannedVisit {
  const ground = groundOf(dayNumber(visit.wish.date) ?? 0);
  return { visit, plan: planTrip(visit.wish, farm, ground, 'without ways') };
}

/** Plans every visit that has not been called off. */
export function planVisits(visits: readonly Visit[], farm: TripFarm, groundOf: GroundOf): PlannedVisit[] {
  return visits
    .filter(({ state }) => state !== 'called off')
    .map((visit) => planVisit(visit, farm, groundOf));
}
