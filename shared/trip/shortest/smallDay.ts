// A school day in bare numbers, as the search for the shortest one takes it: parties, stations, walks, meal, pauses.
import { bandOfGrade } from '../../tasks/grades.ts';
import type { DayGround, Group, Span, Station, TripFarm, TripWish } from '../types.ts';

/** A station of the day: stand-ins are in place already. */
export interface SmallStation {
  readonly id: string;
  /** The station whose place it takes; else null. */
  readonly for: string | null;
}

/** What the shortest day is looked for: sizes of groups and the choice of stations are settled. */
export interface SmallCase {
  readonly wish: TripWish;
  readonly farm: TripFarm;
  readonly ground: DayGround;
  readonly groups: readonly Group[];
  /** Adults who are kept free. */
  readonly spare: number;
  readonly stations: readonly SmallStation[];
}

/** A thing that all parties do in common at the taps: the meal, or a pause for toilets. Minutes count from its start. */
export interface Common {
  readonly kind: 'meal' | 'pause';
  /** By party: when it must be there, and when it is free again. */
  readonly comes: readonly number[];
  readonly leaves: readonly number[];
  /** The latest that a party's chance to go to the toilet begins, and the earliest that one ends. */
  readonly chanceFrom: number;
  readonly chanceTo: number;
  /** The earliest and the latest minute of the day at which it may start. */
  readonly earliest: number;
  readonly latest: number;
}

/** The meal: washing, then food. */
export interface Meal extends Common {
  /** By party: when its washing begins and ends and its food begins, minutes from the start. */
  readonly washFrom: readonly number[];
  readonly washTo: readonly number[];
  readonly food: readonly number[];
}

/** A day in bare numbers, all whole minutes; clock times after midnight. */
export interface SmallDay {
  readonly parties: number;
  /** By station: minutes, and whether hands must be washed after it (it lies outside the clean zone). */
  readonly minutes: readonly number[];
  readonly dirty: readonly boolean[];
  /** The station at which a doe is milked, and the times for it; null where there is none. */
  readonly milking: { readonly station: number; readonly spans: readonly Span[] } | null;
  /** When the opening can be over, which is when all parties have just had a chance to go to the toilet. */
  readonly ready: number;
  /** When that first chance can begin at the earliest; it must lie within the time for toilets from `arrive`. */
  readonly firstChance: number;
  /** Walks: to the first station, between two stations, from a station to the taps, from the taps to a station. */
  readonly first_min: number;
  readonly between_min: readonly (readonly number[])[];
  readonly toTaps_min: number;
  readonly fromTaps_min: number;
  readonly gateWalk_min: number;
  readonly within_min: number;
  readonly pause: Common;
  /** Null where nobody eats; 'no seats' where people are too many to eat at once. */
  readonly meal: Meal | null | 'no seats';
  /** Washing before leaving: all at once, or by party one after the other. */
  readonly lastWash: { readonly together: boolean; readonly minutes: readonly number[] };
  readonly load_min: number;
  readonly busSpare_min: number;
  readonly arrive: number;
  readonly leave: number;
}

// Sums of doubles pass a whole number by a few units in the last place, which is no minute.
const HAIR = 1e-9;
const NEVER = Number.POSITIVE_INFINITY;

/** The numbers of a case. Whole minutes: lengths that are none are rounded up. */
export function smallDay(small: SmallCase): SmallDay {
  const { wish, farm, ground, groups } = small;
  const rules = farm.rules[bandOfGrade(wish.grade)];
  const stations = small.stations.map(({ id }) => stationOf(farm, id));
  const parties = Math.max(-1, ...groups.map((one) => one.party)) + 1;
  const buses = Math.ceil(wish.buses / farm.busesAtOnce) * rules.bus_min;
  const toilets_s = Math.ceil(wish.children / farm.toilets) * rules.toilet_s;
  const firstChance = wish.arrive + buses + farm.gateWalk_min + rules.welcome_min;
  const milkingAt = stations.findIndex((one) => one.milking);
  const walks = walksOf(farm, stations, rules.headCount_min);
  const pause_min = Math.ceil((toilets_s + rules.wash_s) / 60 - HAIR);
  return {
    parties,
    minutes: stations.map((one) => one.minutes[bandOfGrade(wish.grade)]),
    dirty: stations.map((one) => one.zone !== 'clean'),
    milking: milkingAt < 0 ? null : { station: milkingAt, spans: ground.milkings },
    ready: firstChance + Math.ceil(toilets_s / 60 - HAIR),
    firstChance,
    first_min: walks.first_min,
    between_min: walks.between_min,
    toTaps_min: farm.tapsWalk_min,
    fromTaps_min: Math.max(walks.first_min, rules.headCount_min + farm.tapsWalk_min),
    gateWalk_min: farm.gateWalk_min,
    within_min: rules.toiletWithin_min,
    pause: {
      kind: 'pause',
      comes: Array.from({ length: parties }, () => 0),
      leaves: Array.from({ length: parties }, () => pause_min),
      chanceFrom: 0,
      chanceTo: pause_min,
      earliest: 0,
      latest: NEVER,
    },
    meal: mealOf(small, parties),
    lastWash: washOf(small, parties),
    load_min: buses,
    busSpare_min: farm.busSpare_min,
    arrive: wish.arrive,
    leave: wish.leave,
  };
}

function stationOf(farm: TripFarm, id: string): Station {
  const station = farm.stations.find((one) => one.id === id);
  if (station === undefined) throw new Error(`The farm has no station "${id}".`);
  return station;
}

/** Walks with their head count. The loop is walked one way: from one station to another by all those between. */
function walksOf(farm: TripFarm, stations: readonly Station[], headCount_min: number) {
  const count = farm.stations.length;
  const forward = (from: Station, to: Station) => {
    const start = farm.stations.indexOf(from);
    const steps = (farm.stations.indexOf(to) - start + count - 1) % count;
    let minutes = 0;
    for (let step = 0; step <= steps; step += 1)
      minutes += farm.stations[(start + 1 + step) % count]?.walk_min ?? 0;
    return minutes;
  };
  const inOrder = [...stations].sort((a, b) => farm.stations.indexOf(a) - farm.stations.indexOf(b));
  const longest = Math.max(0, ...inOrder.map((one, at) => forward(inOrder.at(at - 1) ?? one, one)));
  const between_min = stations.map((from) =>
    stations.map((to) => headCount_min + Math.max(longest, from === to ? 0 : forward(from, to))),
  );
  return { first_min: headCount_min + longest, between_min };
}

const peopleOf = (groups: readonly Group[], party: number) =>
  groups.filter((one) => one.party === party).reduce((sum, one) => sum + one.children + one.adults, 0);

/** Washing of everybody at once where that is short enough, else of each party; whole minutes. */
function washOf({ wish, farm, groups }: SmallCase, parties: number): SmallDay['lastWash'] {
  const { wash_s } = farm.rules[bandOfGrade(wish.grade)];
  const minutes = (people: number) => (Math.ceil(people / farm.taps) * wash_s * (1 + farm.washSpare)) / 60;
  const all_min = minutes(wish.children + wish.adults);
  const together = all_min <= farm.washTogether_min + HAIR;
  const each = Array.from({ length: parties }, (_, party) =>
    Math.ceil((together ? all_min : minutes(peopleOf(groups, party))) - HAIR),
  );
  return { together, minutes: each };
}

/** The meal. Parties in turn wash one after the other, each so that it sits down right after, once there are seats. */
function mealOf(small: SmallCase, parties: number): SmallDay['meal'] {
  const { wish, farm, groups, spare } = small;
  if (wish.lunch === null) return null;
  const { lunch_min } = farm.rules[bandOfGrade(wish.grade)];
  const { together, minutes } = washOf(small, parties);
  const people = Array.from({ length: parties }, (_, party) => peopleOf(groups, party));
  const most = together ? wish.children + wish.adults : Math.max(...people) + spare;
  if (most > farm.seats) return 'no seats';
  const food: number[] = [];
  for (let party = 0; party < parties; party += 1) {
    const own_min = minutes[party] ?? 0;
    // Adults who are kept free eat with any of the parties, so that their seats are always taken.
    const taken = (minute: number) =>
      food.reduce((sum, from, one) => (minute < from + lunch_min ? sum + (people[one] ?? 0) : sum), spare);
    let sits = together ? own_min : (food[party - 1] ?? 0) + own_min;
    while (!together && taken(sits) + (people[party] ?? 0) > farm.seats) sits += 1;
    food.push(sits);
  }
  const first = food[0] ?? 0;
  const washFrom = food.map((sits, party) => sits - (minutes[party] ?? 0));
  return {
    kind: 'meal',
    washFrom,
    washTo: food,
    food,
    comes: washFrom,
    leaves: food.map((from) => from + lunch_min),
    chanceFrom: Math.max(...food),
    chanceTo: first + lunch_min,
    earliest: wish.lunch - first,
    latest: wish.lunch + farm.lunchSlack_min - first,
  };
}
