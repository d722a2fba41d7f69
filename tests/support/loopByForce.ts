// Whether a group can have a day on the loop at all, by trying every place for the meal and for pauses.
import { smallDay, type Common, type SmallCase, type SmallDay } from '../../shared/trip/shortest/smallDay.ts';
import { timeline } from '../../shared/trip/shortest/timeline.ts';

/** What comes one after the other in a day: rounds of stations by their number, pauses, the meal, the last washing. */
type Item = number | 'pause' | 'meal' | 'wash';

/** At most so many pauses come between two rounds, or stand on either side of the meal or of the last washing. */
const MOST_PAUSES = 2;

/**
 * Whether any day in step on the loop keeps the time rules up to the wished leaving: rounds in order, the meal between
 * any two, pauses anywhere, waits anywhere. Groups and stations are as given; nobody is shown a milking.
 */
export function loopExists(small: SmallCase): boolean {
  const day = smallDay(small);
  if (day.meal === 'no seats') return false;
  const rounds = day.minutes.map((_, round) => roundOf(day, round));
  const hasMeal = day.meal !== null;
  for (const order of orders(rounds.length, hasMeal)) if (holds(day, rounds, order)) return true;
  return false;
}

interface Round {
  readonly minutes: number;
  readonly soils: boolean;
}

function roundOf(day: SmallDay, round: number): Round {
  const there = Array.from({ length: day.parties }, (_, party) => (party + round) % day.minutes.length);
  return {
    minutes: Math.max(...there.map((station) => day.minutes[station] ?? 0)),
    soils: there.some((station) => day.dirty[station]),
  };
}

/** Every order of rounds, meal and last washing, with up to two pauses in each place. */
function* orders(rounds: number, hasMeal: boolean): Generator<Item[]> {
  const numbers = Array.from({ length: rounds }, (_, round) => round);
  for (let before = hasMeal ? 0 : rounds; before <= rounds; before += 1) {
    const plain: Item[] = [...numbers.slice(0, before), ...(hasMeal ? (['meal'] as const) : []), ...numbers.slice(before), 'wash']; // prettier-ignore
    yield* withPauses(plain);
  }
}

function* withPauses(items: readonly Item[]): Generator<Item[]> {
  const [first, ...rest] = items;
  for (let count = 0; count <= MOST_PAUSES; count += 1) {
    const pauses = Array.from({ length: count }, () => 'pause' as const);
    if (first === undefined) yield pauses;
    else for (const later of withPauses(rest)) yield [...pauses, first, ...later];
  }
}

/** Whether the day of an order holds. All parties move as one, so each stretch is a sum of minutes. */
function holds(day: SmallDay, rounds: readonly Round[], order: readonly Item[]): boolean {
  const commons: Common[] = [];
  const stretches: Item[][] = [[]];
  let soiled = false;
  let washes = false;
  for (const item of order) {
    if (item === 'pause' || item === 'meal') {
      commons.push(item === 'meal' ? (day.meal as Common) : day.pause);
      stretches.push([]);
      if (item === 'meal') soiled = false;
    } else {
      if (item === 'wash') washes = soiled;
      else soiled ||= rounds[item]?.soils ?? false;
      stretches.at(-1)?.push(item);
    }
  }
  const { together, minutes: washing } = day.lastWash;
  const wash_min = together ? (washing[0] ?? 0) : washing.reduce((sum, one) => sum + one, 0);
  const through = (stretch: number, heads: readonly number[]): number => {
    let now = Math.max(...heads);
    let atTaps = stretch > 0;
    for (const item of stretches[stretch] ?? []) {
      if (typeof item === 'number') {
        now += (atTaps ? day.fromTaps_min : day.first_min) + (rounds[item]?.minutes ?? 0);
        atTaps = false;
      } else if (item === 'wash' && washes) {
        now += (atTaps ? 0 : day.toTaps_min) + wash_min;
        atTaps = true;
      }
    }
    // What comes last waits for the buses, so that the time without a toilet counts up to the leaving.
    if (commons[stretch] === undefined)
      return Math.max(now + day.gateWalk_min, day.leave - day.load_min - day.busSpare_min);
    return now + (atTaps ? 0 : day.toTaps_min);
  };
  return timeline(day, commons.map(inStep), through) !== null;
}

/** In step, all are there when the first begins, and go on when the last is done. */
function inStep(common: Common): Common {
  const [comes, leaves] = [Math.min(...common.comes), Math.max(...common.leaves)];
  return { ...common, comes: common.comes.map(() => comes), leaves: common.leaves.map(() => leaves) };
}
