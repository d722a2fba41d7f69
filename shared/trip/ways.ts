// The smallest changes that make a day work: each is planned again, and only what then holds is offered.
import { withChanges, type Asked } from './changes.ts';
import {
  choicesOf,
  MENDS,
  stepsOf,
  WAY_KINDS,
  wayKind,
  type Reach,
  type Steps,
  type WayKind,
} from './choices.ts';
import { dayHolds, dayMayHold, type Draft } from './draft.ts';
import { gather, type Memo } from './gathered.ts';
import type { DayGround, TripChange, TripWay, TripWhy } from './types.ts';

// Four ways of two changes are a choice; more are a list that nobody reads.
const MOST_PAIRS = 4;
// A page that asks for any wish is answered soon: looking for a day costs about the cube of its stations.
const MOST_EFFORT = 15_000;

interface Search {
  readonly asked: Asked;
  readonly ground: DayGround;
  readonly memo: Memo;
  readonly draft: Draft;
  /** How much of a change is thought of: what schools do gladly, or anything that is possible at all. */
  readonly reach: Reach;
  effortLeft: number;
}

/**
 * Ways out of a day that does not hold, easiest for a school first; two kinds of change only where no single one does,
 * and more than a school does gladly only where nothing less helps.
 */
export function waysFor(asked: Asked, ground: DayGround, draft: Draft, memo: Memo): readonly TripWay[] {
  if (draft.whys.some(({ kind }) => kind === 'no station')) return [];
  for (const reach of ['near', 'far'] as const) {
    const ways = within({ asked, ground, memo, draft, reach, effortLeft: MOST_EFFORT });
    if (ways.length > 0) return ways;
  }
  return [];
}

function within(search: Search): readonly TripWay[] {
  const { draft } = search;
  const singles = WAY_KINDS.flatMap((kind) => {
    if (!draft.whys.every((why) => MENDS[kind].includes(why.kind))) return [];
    const changes = smallest(search, kind, []);
    return changes ? [{ changes }] : [];
  });
  return singles.length > 0 ? singles : pairs(search);
}

/** The smallest change of a kind with which, beside the changes made before, the day holds. */
function smallest(search: Search, kind: WayKind, made: readonly TripChange[]): readonly TripChange[] | null {
  const asked = withChanges(search.asked, made);
  const steps = stepsOf(kind, asked, search.reach);
  if (steps) {
    const mayHold = (amount: number) => may(search, [...made, steps.change(amount)]);
    for (let amount = firstOf(steps, mayHold); amount <= steps.most; amount++)
      if (holds(search, [...made, steps.change(amount)])) return [steps.change(amount)];
    return null;
  }
  // Where a day without food is too long, no hour for the food makes it shorter.
  if (kind === 'lunch' && !may(search, [...made, { kind, at: null }])) return null;
  for (const changes of choicesOf(kind, asked, search.draft.stops))
    if (holds(search, [...made, ...changes])) return changes;
  return null;
}

/** The first amount from which on something may be so, by halving; past `most` where it never is. */
function firstOf({ most }: Steps, may: (amount: number) => boolean): number {
  if (most < 1 || !may(most)) return most + 1;
  let [no, yes] = [0, most];
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (may(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

function may({ asked, ground, memo }: Search, changes: readonly TripChange[]): boolean {
  const { wish, farm } = withChanges(asked, changes);
  return dayMayHold(wish, farm, ground, memo);
}

function holds(search: Search, changes: readonly TripChange[]): boolean {
  const { wish, farm } = withChanges(search.asked, changes);
  if (search.effortLeft < 0 || !dayMayHold(wish, farm, search.ground, search.memo)) return false;
  search.effortLeft -= Math.max(4, wish.stations.length) ** 3;
  return dayHolds(wish, farm, search.ground, search.memo);
}

/** First what brings people and places into order, then what does so with the time. */
function pairs(search: Search): TripWay[] {
  const ways: TripWay[] = [];
  for (const { kind, changes } of firstSteps(search))
    for (const other of WAY_KINDS) {
      if (ways.length === MOST_PAIRS) return ways;
      if (other === kind || ways.some((way) => isSame(way, kind, other))) continue;
      const more = smallest(search, other, changes);
      if (more) ways.push({ changes: [...changes, ...more] });
    }
  return ways;
}

interface Step {
  readonly kind: WayKind;
  readonly changes: readonly TripChange[];
}

/**
 * Changes that mend a reason but not all: the smallest that mend what no clock time does. Where time alone is short,
 * leaving a station out and food elsewhere are the first, since the others come second anyway.
 */
function firstSteps(search: Search): Step[] {
  const { whys, stops } = search.draft;
  const crowded = crowd(search, []);
  return WAY_KINDS.flatMap((kind): Step[] => {
    if (!whys.some((why) => MENDS[kind].includes(why.kind))) return [];
    const eased = (changes: readonly TripChange[]) => {
      const left = crowd(search, changes);
      return left.length < crowded.length && left.every((one) => crowded.includes(one));
    };
    const steps = stepsOf(kind, search.asked, search.reach);
    if (steps) {
      if (crowded.length === 0) return [];
      const amount = firstOf(steps, (one) => eased([steps.change(one)]));
      return amount > steps.most ? [] : [{ kind, changes: [steps.change(amount)] }];
    }
    const choices = [...choicesOf(kind, search.asked, stops)];
    const first = crowded.length > 0 ? choices.find(eased) : kind === 'lunch' ? choices.at(-1) : choices[0];
    return first ? [{ kind, changes: first }] : [];
  });
}

/** The kinds of reasons that no clock time mends. */
function crowd({ asked, ground, memo, draft }: Search, changes: readonly TripChange[]): TripWhy['kind'][] {
  const { wish, farm } = withChanges(asked, changes);
  const chosen = wish.stations.length > 0 ? wish.stations : draft.chosen;
  const { whys } = gather(chosen, wish, farm, ground, ground.milkings.length > 0, memo);
  return [...new Set(whys.map((why) => why.kind))];
}

function isSame({ changes }: TripWay, kind: WayKind, other: WayKind): boolean {
  const kinds = changes.map(wayKind);
  return kinds.includes(kind) && kinds.includes(other);
}
