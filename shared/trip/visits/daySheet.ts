// The farm's sheet of a day with visits: who comes when, which place is used by whom, how many helpers that takes.
import type { Group, Span, TripFarm } from '../types.ts';
import type { PlannedVisit } from './plannedVisit.ts';
import { partySizes, usesOf, type PlaceKind, type Use } from './uses.ts';

/** A visit on the sheet. Letters stand for it where there is little room; they go by the time of coming. */
export interface DayVisit {
  readonly letter: string;
  readonly planned: PlannedVisit;
  readonly people: number;
  /** Adults who are kept free; 0 where there is no plan. */
  readonly spare: number;
}

/** A visit's groups at a place, for a span. */
export interface DayUse extends Span {
  readonly letter: string;
  /** Numbers of the groups; empty where they are all of the visit's. */
  readonly groups: readonly number[];
  readonly children: number;
  readonly people: number;
}

/** A place of the day with all that happens there, in order of time. */
export interface DayPlace extends Span {
  readonly kind: PlaceKind;
  readonly station: string | null;
  readonly uses: readonly DayUse[];
}

/** The sheet. */
export interface DaySheet {
  readonly date: string;
  readonly visits: readonly DayVisit[];
  /** Stations in the order of the loop, then taps, seats, toilets, yard; only those that are used. */
  readonly places: readonly DayPlace[];
  /** From the first coming to the last leaving; null where nobody comes. */
  readonly span: Span | null;
  /** The most stations that are open at one time, each of which wants a helper, and from when. */
  readonly most: { readonly stations: number; readonly from: number } | null;
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const AFTER_STATIONS: readonly PlaceKind[] = ['taps', 'seats', 'toilets', 'yard'];

/** Lays out the sheet of a date from the visits that are planned for it. */
export function daySheet(date: string, planned: readonly PlannedVisit[], farm: TripFarm): DaySheet {
  const own = planned
    .filter(({ visit }) => visit.wish.date === date && visit.state !== 'called off')
    .toSorted((a, b) => a.visit.wish.arrive - b.visit.wish.arrive);
  const visits = own.map((one, index): DayVisit => {
    const { children, adults } = one.visit.wish;
    const spare = one.plan.ok ? one.plan.day.spare : 0;
    return { letter: letterOf(index), planned: one, people: children + adults, spare };
  });
  const places = placesOf(visits, farm);
  const span =
    own.length === 0
      ? null
      : {
          from: Math.min(...own.map(({ visit }) => visit.wish.arrive)),
          to: Math.max(...own.map(({ visit }) => visit.wish.leave)),
        };
  return { date, visits, places, span, most: mostOpen(places) };
}

const letterOf = (index: number) => LETTERS[index] ?? `A${index - LETTERS.length + 1}`;

function placesOf(visits: readonly DayVisit[], farm: TripFarm): DayPlace[] {
  const uses = visits.flatMap(({ letter, planned }) => usesOf(planned, farm).map((use) => ({ letter, planned, use })));
  const at = (kinds: readonly PlaceKind[], station: string | null): DayPlace[] => {
    const here = uses.filter(({ use }) => kinds.includes(use.kind) && use.station === station);
    const [first] = here;
    if (!first) return [];
    // Parties of a visit that are there for the same span are told together.
    const together = [...Map.groupBy(here, ({ letter, use }) => `${letter} ${use.from} ${use.to}`).values()];
    const told = together
      .map((same) => usedBy(same.map(({ use }) => use), same[0] as (typeof same)[number]))
      .sort((a, b) => a.from - b.from || (a.letter < b.letter ? -1 : 1));
    const [from, to] = [Math.min(...told.map((one) => one.from)), Math.max(...told.map((one) => one.to))];
    return [{ kind: first.use.kind, station, from, to, uses: told }];
  };
  return [
    ...farm.stations.flatMap(({ id }) => at(['station', 'milking'], id)),
    ...AFTER_STATIONS.flatMap((kind) => at([kind], null)),
  ];
} // prettier-ignore

function usedBy(
  uses: readonly Use[],
  { letter, planned }: { letter: string; planned: PlannedVisit },
): DayUse {
  const { from, to } = uses[0] as Use;
  const day = planned.plan.ok ? planned.plan.day : null;
  const parties = new Set(uses.map(({ party }) => party));
  const isAll = day !== null && parties.size === partySizes(day).length;
  const groups = (day?.groups ?? []).filter((group: Group) => parties.has(group.party)).map(({ id }) => id);
  const sum = (read: (use: Use) => number) => uses.reduce((all, use) => all + read(use), 0);
  return {
    letter,
    groups: isAll ? [] : groups,
    from,
    to,
    children: sum(({ children }) => children),
    people: sum(({ people }) => people),
  };
}

/** A station is open from its first group to its last one. */
function mostOpen(places: readonly DayPlace[]): DaySheet['most'] {
  const stations = places.filter(({ station }) => station !== null);
  let most: DaySheet['most'] = null;
  for (const { from } of stations) {
    const open = stations.filter((one) => one.from <= from && one.to > from).length;
    if (most === null || open > most.stations || (open === most.stations && from < most.from))
      most = { stations: open, from };
  }
  return most;
}
