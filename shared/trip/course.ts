// The lengths that a day is laid from: bus, walks, rounds, washing, food, toilets; whole minutes, before any clock time.
import type { Band } from '../quantity/grade.ts';
import { longestWalk, type Stop } from './stationsOn.ts';
import type { BandRules, Span, TripFarm, TripWish } from './types.ts';
import { mealTurns, washTurns, wholeMinutes, type People, type Turns } from './wash.ts';

/** What a day is laid from. All parties share it, since they change station together. */
export interface Course {
  readonly arrive: number;
  readonly leave: number;
  /** Unloading, and loading, all buses. */
  readonly buses: number;
  readonly gateWalk: number;
  readonly tapsWalk: number;
  readonly welcome: number;
  /** Everybody at the toilets once after arriving, and on a pause, where hands are washed too. */
  readonly toilets: number;
  readonly pause: number;
  readonly toiletWithin: number;
  /** Changing station with a head count, and coming from the taps to a station. */
  readonly change: number;
  readonly fromTaps: number;
  /** Minutes at each stop, and of each round: of its longest station. */
  readonly minutes: readonly number[];
  readonly rounds: readonly number[];
  /** Minutes of the first so many rounds, with a change before each. */
  readonly walked: readonly number[];
  /** Whether anybody leaves the clean zone in that round. */
  readonly soils: readonly boolean[];
  /** When food may start; null where nobody eats. */
  readonly food: Span | null;
  readonly meal: Turns;
  readonly wash: Turns;
  /** From the last thing at the taps until the buses leave: walk, loading, what is spared. */
  readonly tail: number;
  readonly stops: readonly Stop[];
  readonly parties: number;
}

/** The station, by its place among the stops, where a party is in a round of the loop. */
export function stopIn(party: number, round: number, stops: number): number {
  return (party + round) % stops;
}

/**
 * Whether no day of this course can be done between its arriving and leaving, or none with its food in time: a bound
 * that is cheap to ask before looking for any.
 */
export function isHopeless(course: Course): boolean {
  const { arrive, leave, food, meal, wash, tail, tapsWalk, toilets, toiletWithin } = course;
  const opening = course.buses + course.gateWalk + course.welcome + toilets;
  const done = opening + course.walked.at(-1)! + tail;
  const first = meal.parties[0]!;
  const atTaps = food ? tapsWalk + meal.total : course.soils.includes(true) ? tapsWalk + wash.total : 0;
  // Between chances no more than the time for toilets may pass, so a long day has pauses.
  const latest = Math.max(...meal.parties.map(({ washed }) => washed));
  const away = done + atTaps - toilets - (food ? first.eaten - latest : 0);
  const pauses = Math.max(0, Math.ceil(away / toiletWithin) - (food ? 3 : 2));
  if (arrive + done + atTaps + pauses * course.pause > leave) return true;
  if (!food) return false;
  return (
    arrive + opening + tapsWalk + first.washed > food.to ||
    food.from + meal.total - first.washed + tail > leave
  );
}

/** The lengths of a day with these stops and people. */
export function courseOf(
  wish: TripWish,
  farm: TripFarm,
  band: Band,
  stops: readonly Stop[],
  people: People,
): Course {
  const rules = farm.rules[band];
  const parties = people.parties.length;
  const inRound = stops.map((_, round) =>
    people.parties.map((_, party) => stops[stopIn(party, round, stops.length)]!.station),
  );
  const walk = longestWalk(stops, farm);
  const rounds = inRound.map((stations) => Math.max(...stations.map(({ minutes }) => minutes[band])));
  const change = rules.headCount_min + walk;
  const walked = [0];
  for (const minutes of rounds) walked.push(walked.at(-1)! + change + minutes);
  const buses = Math.ceil(wish.buses / Math.max(1, farm.busesAtOnce)) * rules.bus_min;
  return {
    arrive: wish.arrive,
    leave: wish.leave,
    buses,
    gateWalk: farm.gateWalk_min,
    tapsWalk: farm.tapsWalk_min,
    welcome: rules.welcome_min,
    toilets: wholeMinutes(toilets_s(wish.children, farm, rules) / 60),
    pause: Math.max(1, wholeMinutes((toilets_s(wish.children, farm, rules) + rules.wash_s) / 60)),
    toiletWithin: rules.toiletWithin_min,
    change,
    fromTaps: rules.headCount_min + Math.max(walk, farm.tapsWalk_min),
    minutes: stops.map(({ station }) => station.minutes[band]),
    rounds,
    walked,
    soils: inRound.map((stations) => stations.some(({ zone }) => zone !== 'clean')),
    food: wish.lunch === null ? null : { from: wish.lunch, to: wish.lunch + farm.lunchSlack_min },
    meal: mealTurns(people, farm, rules),
    wash: washTurns(people, farm, rules),
    tail: farm.gateWalk_min + buses + farm.busSpare_min,
    stops,
    parties,
  };
}

function toilets_s(children: number, farm: TripFarm, rules: BandRules): number {
  return Math.ceil(children / Math.max(1, farm.toilets)) * rules.toilet_s;
}
