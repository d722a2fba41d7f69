// How long washing takes, and who washes and eats when: all together, or party by party.
import type { BandRules, TripFarm } from './types.ts';

/**
 * Minutes in which so many people wash at the farm's taps, not rounded: turns at a tap times the seconds of one
 * person, with the farm's addition for queues.
 */
export function washMinutes(people: number, farm: TripFarm, rules: BandRules): number {
  const turns = Math.ceil(people / Math.max(1, farm.taps));
  return (turns * rules.wash_s * (1 + farm.washSpare)) / 60;
}

/** One party's washing and food, in whole minutes after the first party begins to wash. */
export interface Turn {
  readonly wash: number;
  readonly washed: number;
  /** When its food ends; as `washed` where nobody eats. */
  readonly eaten: number;
}

/** The turns of all parties. */
export interface Turns {
  readonly parties: readonly Turn[];
  /** Whether they wash one after the other. */
  readonly inTurn: boolean;
  /** Minutes until the last party is done. */
  readonly total: number;
  /** The most who eat at once. */
  readonly seated: number;
}

/** People of the visit: each party's children with their adults, and all with those kept free. */
export interface People {
  readonly parties: readonly number[];
  readonly all: number;
}

/** Turns for washing alone, without food. */
export function washTurns(people: People, farm: TripFarm, rules: BandRules): Turns {
  return turnsOf(people, farm, rules, 0, Infinity);
}

/**
 * Turns for washing and food. Parties go one after the other where washing together takes longer than the farm
 * wants, and sit down as there are seats; who is kept free eats with any of them.
 */
export function mealTurns(people: People, farm: TripFarm, rules: BandRules): Turns {
  return turnsOf(people, farm, rules, rules.lunch_min, farm.seats);
}

function turnsOf(people: People, farm: TripFarm, rules: BandRules, lunch: number, seats: number): Turns {
  const together = washMinutes(people.all, farm, rules);
  if (together <= farm.washTogether_min + HAIR) {
    const washed = wholeMinutes(together);
    const turn = { wash: 0, washed, eaten: washed + lunch };
    return { parties: people.parties.map(() => turn), inTurn: false, total: turn.eaten, seated: people.all };
  }
  const free = people.all - people.parties.reduce((sum, one) => sum + one, 0);
  const turns: Turn[] = [];
  let seated = 0;
  let tapsFree = 0;
  for (const own of people.parties) {
    const minutes = wholeMinutes(washMinutes(own, farm, rules));
    const eating = (at: number) =>
      turns.reduce((sum, turn, other) => sum + (turn.eaten > at ? people.parties[other]! : 0), own + free);
    // Whoever sat down before this party still sits until it gets up: the party waits for the seats, unwashed.
    const soonest = tapsFree + minutes;
    const rises = turns.map((turn) => turn.eaten).filter((at) => at > soonest);
    const sits = [soonest, ...rises].find((at) => eating(at) <= seats) ?? soonest;
    seated = Math.max(seated, eating(sits));
    turns.push({ wash: sits - minutes, washed: sits, eaten: sits + lunch });
    tapsFree = sits;
  }
  return { parties: turns, inTurn: true, total: tapsFree + lunch, seated };
}

// Sums of doubles pass a whole number by a few units in the last place, which is no minute.
const HAIR = 1e-9;

/** Rounded up to whole minutes. */
export function wholeMinutes(minutes: number): number {
  return Math.ceil(minutes - HAIR);
}
