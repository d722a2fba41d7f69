// Who goes together: groups of near-equal size with their adults, and parties that change station together.
import type { BandRules, Group, TripFarm } from './types.ts';

/** How many groups there are, in how many parties. */
export interface Grouping {
  readonly groups: number;
  readonly parties: number;
  /** Children of the largest party. */
  readonly largest: number;
}

/** Groups of one party: how many, and how many of them have one child more than the others. */
interface PartyShape {
  readonly groups: number;
  readonly larger: number;
}

/** Adults who are kept free for first aid and toilet runs. */
export function spareAdults(children: number, farm: TripFarm): number {
  return Math.floor(children / farm.childrenPerSpare);
}

/** The fewest adults who can lead these children: as many groups as cards and adults allow, one adult each. */
function leastLeaders(children: number, rules: BandRules): number {
  return Math.ceil(children / Math.min(rules.perAdult.most, rules.groupMost));
}

/** The fewest adults of a visit with these children, those kept free included. */
export function leastAdults(children: number, farm: TripFarm, rules: BandRules): number {
  return Math.max(farm.leastAdults, leastLeaders(children, rules) + spareAdults(children, farm));
}

/**
 * The grouping that suits best, for at least the fewest leaders: no party larger than the room at the stations,
 * parties as small as one adult's group is meant to be, groups too, and then as few cards as that takes.
 */
export function groupingOf(
  children: number,
  leaders: number,
  stations: number,
  room: number,
  rules: BandRules,
): Grouping {
  const { aim, most } = rules.perAdult;
  const fewest = Math.ceil(children / rules.groupMost);
  let best: Grouping | null = null;
  let bestCost: readonly number[] = [];
  for (let groups = fewest; groups <= Math.min(leaders, children); groups++) {
    const small = Math.floor(children / groups);
    const larger = children % groups;
    const needed = larger * Math.ceil((small + 1) / most) + (groups - larger) * Math.ceil(small / most);
    if (needed > leaders) continue;
    const parties = Math.min(groups, stations);
    const largest = largestParty(children, groups, parties);
    const size = larger > 0 ? small + 1 : small;
    const ratio = size / (Math.ceil(size / most) + Math.floor((leaders - needed) / groups));
    const cost = [Math.max(0, largest - room), Math.max(0, largest - aim), Math.max(0, ratio - aim)];
    if (best && !isLess(cost, bestCost)) continue;
    best = { groups, parties, largest };
    bestCost = cost;
  }
  if (!best) throw new Error(`${leaders} adults cannot lead ${children} children`);
  return best;
}

/**
 * The groups of a grouping: sizes that differ by one child at most, party by party, adults where they are most
 * needed. The wheelchair goes with the first group.
 */
export function groupsOf(
  children: number,
  leaders: number,
  { groups, parties }: Grouping,
  rules: BandRules,
  wheelchair: boolean,
): Group[] {
  const small = Math.floor(children / groups);
  const sizes = shapesOf(children, groups, parties).flatMap((shape, party) =>
    Array.from({ length: shape.groups }, (_, at) => ({ party, size: at < shape.larger ? small + 1 : small })),
  );
  const adults = adultsFor(
    sizes.map(({ size }) => size),
    leaders,
    rules.perAdult.most,
  );
  return sizes.map(({ party, size }, at) => ({
    id: at + 1,
    children: size,
    adults: adults[at]!,
    party,
    wheelchair: wheelchair && at === 0,
  }));
}

/** The adults of each group: as many as it must have, then evenly, the last ones where there are most children for each. */
function adultsFor(sizes: readonly number[], leaders: number, most: number): number[] {
  const must = sizes.map((size) => Math.ceil(size / most));
  const over = leaders - must.reduce((sum, one) => sum + one, 0);
  const adults = must.map((one) => one + Math.floor(over / sizes.length));
  const needy = sizes
    .map((size, at) => ({ at, ratio: size / adults[at]! }))
    .sort((a, b) => b.ratio - a.ratio || a.at - b.at);
  for (const { at } of needy.slice(0, over % sizes.length)) adults[at]!++;
  return adults;
}

/** Parties with a group more than others take the smaller groups first, so that the largest party stays small. */
function shapesOf(children: number, groups: number, parties: number): PartyShape[] {
  const { each, bigParties, inBig, inOthers } = dealt(children, groups, parties);
  return Array.from({ length: parties }, (_, party) =>
    party < bigParties
      ? { groups: each + 1, larger: share(inBig, bigParties, party) }
      : { groups: each, larger: share(inOthers, parties - bigParties, party - bigParties) },
  );
}

function dealt(children: number, groups: number, parties: number) {
  const each = Math.floor(groups / parties);
  const bigParties = groups % parties;
  const largerGroups = children % groups;
  const inBig = Math.max(0, bigParties * (each + 1) - (groups - largerGroups));
  return { each, bigParties, inBig, inOthers: largerGroups - inBig };
}

function largestParty(children: number, groups: number, parties: number): number {
  const small = Math.floor(children / groups);
  const { each, bigParties, inBig, inOthers } = dealt(children, groups, parties);
  const others = each * small + Math.ceil(inOthers / (parties - bigParties));
  return bigParties === 0 ? others : Math.max(others, (each + 1) * small + Math.ceil(inBig / bigParties));
}

/** What the place `at` gets when so many are dealt out to so many places. */
function share(amount: number, places: number, at: number): number {
  return Math.floor(amount / places) + (at < amount % places ? 1 : 0);
}

/** Whether the first number that differs is less. */
export function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((one, place) => one !== b[place]);
  return at >= 0 && a[at]! < b[at]!;
}
