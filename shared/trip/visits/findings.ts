// All that the coordinator must hear of the visits on file: clashes, days that do not work, kiddings near.
import { dayNumber } from '../../calendar/day.ts';
import { groundOn } from '../season.ts';
import type { TripFarm, TripWhy } from '../types.ts';
import type { TripSeason, Visit } from '../visitTypes.ts';
import { visitClashes, type Clash } from './clashes.ts';
import { kiddingsNear, type KiddingNear } from './kiddings.ts';
import { planVisits, type PlannedVisit } from './plannedVisit.ts';

/** One thing about one visit or several on a date (ISO); `visits` are their files. */
export type VisitFinding = { readonly date: string; readonly visits: readonly string[] } & (
  | { readonly kind: 'clash'; readonly clash: Clash }
  | { readonly kind: 'no plan'; readonly whys: readonly TripWhy[] }
  | { readonly kind: 'kidding'; readonly does: readonly KiddingNear[] }
);

/** The visits as they are planned, and what is found about them. */
export interface VisitsView {
  readonly planned: readonly PlannedVisit[];
  /** By date; of one date the clashes first. */
  readonly findings: readonly VisitFinding[];
}

/**
 * Plans the visits that have not been called off and says what is to be said of them. Where all who are meant were
 * here already there is nothing left to change or to tell.
 */
export function viewVisits(visits: readonly Visit[], farm: TripFarm, season: TripSeason): VisitsView {
  const planned = planVisits(visits, farm, (day) => groundOn(farm, season, day));
  const clashes = visitClashes(planned, farm).map((clash): VisitFinding => {
    const { date, visits: files } = clash;
    return { kind: 'clash', date, visits: files, clash };
  });
  const own = planned.flatMap((one) => ownFindings(one, farm, season));
  const held = new Set(visits.flatMap(({ state, file }) => (state === 'held' ? [file] : [])));
  const open = [...clashes, ...own].filter((one) => one.visits.some((file) => !held.has(file)));
  const findings = open.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  return { planned, findings };
}

function ownFindings(
  { visit, plan }: PlannedVisit,
  farm: TripFarm,
  season: Pick<TripSeason, 'does'>,
): VisitFinding[] {
  const { date } = visit.wish;
  const about = { date, visits: [visit.file] };
  const does = kiddingsNear(farm, season, dayNumber(date) ?? 0);
  return [
    ...(plan.ok ? [] : [{ ...about, kind: 'no plan' as const, whys: plan.whys }]),
    ...(does.length === 0 ? [] : [{ ...about, kind: 'kidding' as const, does }]),
  ];
}
