// Where a day's pauses for the toilets go, exactly: between which rounds, and when each may begin.
import type { Course } from './course.ts';

/** A chance to go to the toilet: after so many rounds, at the taps; `washed`: after the last washing. */
export interface Chance {
  readonly kind: 'welcome' | 'pause' | 'meal';
  readonly rounds: number;
  readonly washed: boolean;
  /** Minutes after midnight; of a meal, when the first party begins to wash. */
  readonly start: number;
}

/** All chances of a day in order, and when its buses leave. */
export interface Route {
  readonly chances: readonly Chance[];
  readonly roundsBefore: number;
  readonly leave: number;
}

/** What a route is looked for. */
export interface Errand {
  readonly course: Course;
  readonly roundsBefore: number;
  /** When the buses leave; null for as soon as they can. */
  readonly leave: number | null;
  /** Minutes waited after the welcome, so that a milking is seen. */
  readonly hold: number;
  /** Whether food may start later than it should. */
  readonly unhurried: boolean;
}

// A chance by the minutes at which it can have ended: any from `lo` to `hi`, by waiting.
interface Node {
  readonly kind: Chance['kind'];
  readonly rounds: number;
  readonly washed: boolean;
  readonly lo: number;
  readonly hi: number;
  /** Minutes between the end of the chance before, for its last party, and the start of this one, without waiting. */
  readonly away: number;
  readonly before: Node | null;
}

/** How far ahead the end of a day is looked for: what takes longer than a fortnight is told as one. It keeps the search finite. */
export const HORIZON_min = 14 * 24 * 60;

/**
 * The route with the fewest pauses; null where there is none.
 *
 * Waiting is possible anywhere, so the n-th pause at a place can have ended at any minute of a span: its least is the
 * sum of what was done before, its most n times the longest time without a toilet. The most is the same wherever the
 * pauses before were, so of all ways to a place only the one with the least has to be kept.
 */
export function findRoute(errand: Errand): Route | null {
  const { course, roundsBefore, leave } = errand;
  const start = course.arrive + course.buses + course.gateWalk + course.welcome;
  if (start > course.arrive + course.toiletWithin) return null;
  const hi = course.arrive + course.toiletWithin + course.toilets;
  const place = { kind: 'welcome', rounds: 0, washed: false } as const;
  const welcome: Node = {
    ...place,
    lo: start + course.toilets,
    hi,
    away: start - course.arrive,
    before: null,
  };
  if (!course.food) return routeHome(errand, welcome);
  let best: Route | null = null;
  let soonest = Infinity;
  const limit = () => leave ?? Math.min(soonest, course.arrive + HORIZON_min);
  for (const layer of layers(errand, welcome, roundsBefore, limit)) {
    const meal = mealAfter(errand, layer);
    const route = meal && routeHome(errand, meal, soonest);
    if (route && leave !== null) return route;
    if (route) [best, soonest] = [route, route.leave];
  }
  return best;
}

/**
 * From a chance on: the layer of itself, then of one pause more, and so on; a layer has the best way to each place up
 * to so many rounds, as long as the day can then be over by the limit.
 */
function* layers(errand: Errand, from: Node, upTo: number, limit: () => number): Generator<readonly Node[]> {
  const { course } = errand;
  const isLast = !course.food || from.kind === 'meal';
  const isOpenNow = (node: Node) => isOpen(errand, node, isLast, limit());
  let layer: readonly Node[] = [from].filter(isOpenNow);
  while (layer.length > 0) {
    yield layer;
    const next: Node[] = [];
    for (let rounds = from.rounds; rounds <= upTo; rounds++)
      next.push(...pauseAt(errand, layer, rounds, false));
    if (isLast && isSoiled(errand)) next.push(...pauseAt(errand, layer, course.rounds.length, true));
    layer = next.filter(isOpenNow);
  }
}

/** Whether the food is not missed, nor the leaving, if there are no more pauses. */
function isOpen(errand: Errand, node: Node, isLast: boolean, end: number): boolean {
  const { course, roundsBefore, unhurried } = errand;
  if (isLast) return node.lo + untilHome(errand, node) <= end;
  const ready = node.lo + untilTaps(errand, node, roundsBefore);
  const rest = course.walked.at(-1)! - course.walked[roundsBefore]!;
  const isFed = unhurried || ready + course.meal.parties[0]!.washed <= course.food!.to;
  return isFed && ready + course.meal.total + rest + course.tail <= end;
}

/** The pause at a place after one of these chances; the one that can be over soonest, or none. */
function pauseAt(errand: Errand, layer: readonly Node[], rounds: number, washed: boolean): Node[] {
  const { pause, toiletWithin } = errand.course;
  let best: Node | null = null;
  // A layer goes forward through the day, so whatever lies before a chance too far away is too far away as well.
  for (let at = layer.length - 1; at >= 0; at--) {
    const node = layer[at]!;
    if (node.rounds > rounds || (node.washed && !washed)) continue;
    const away = washed ? untilWashed(errand, node) : untilTaps(errand, node, rounds);
    if (away > toiletWithin) break;
    const lo = node.lo + away + pause;
    const hi = node.hi + toiletWithin + pause;
    if (!best || lo < best.lo) best = { kind: 'pause', rounds, washed, lo, hi, away, before: node };
  }
  return best ? [best] : [];
}

/** The meal after one of these chances; null where it would be too late for food or toilets. */
function mealAfter(errand: Errand, layer: readonly Node[]): Node | null {
  const { course, roundsBefore, unhurried } = errand;
  const { meal, food, toiletWithin } = course;
  const first = meal.parties[0]!;
  const latest = latestFood(course);
  let best: Node | null = null;
  for (const node of layer) {
    const away = untilTaps(errand, node, roundsBefore);
    if (away + latest > toiletWithin) continue;
    const lo = Math.max(node.lo + away, food!.from - first.washed);
    const hi = Math.min(node.hi + toiletWithin - latest, unhurried ? Infinity : food!.to - first.washed);
    // Of two that are as soon the later place has less waiting before it.
    if (lo > hi || (best && best.lo < lo + first.eaten)) continue;
    const ended = { lo: lo + first.eaten, hi: hi + first.eaten };
    best = { kind: 'meal', rounds: roundsBefore, washed: false, ...ended, away, before: node };
  }
  return best;
}

/** The rest of the day after the meal, or after the welcome where nobody eats; null where it is not over before `before`. */
function routeHome(errand: Errand, from: Node, before = Infinity): Route | null {
  const { course, leave } = errand;
  let soonest = Infinity;
  let best: Node | null = null;
  const limit = () => leave ?? Math.min(soonest, before - 1, course.arrive + HORIZON_min);
  for (const layer of layers(errand, from, course.rounds.length, limit)) {
    for (const node of layer) {
      const tail = untilHome(errand, node);
      const end = Math.max(node.lo + tail, leave ?? 0);
      if (tail > course.toiletWithin || end > Math.min(leave ?? Infinity, node.hi + course.toiletWithin))
        continue;
      // Where there is time to spare, a later pause has less waiting before it, and none is needed after washing.
      if (leave === null ? end < soonest : !best || !node.washed) best = node;
      soonest = Math.min(soonest, end);
    }
    if (best && leave !== null) break;
  }
  return best && timed(errand, best, leave ?? soonest);
}

/** The chances that lead to the last one, each as soon as what comes after it allows. */
function timed(errand: Errand, last: Node, leave: number): Route {
  const { course, roundsBefore } = errand;
  const { toiletWithin } = course;
  const nodes: Node[] = [];
  for (let node: Node | null = last; node; node = node.before) nodes.unshift(node);
  // The least start of each chance that lets the next one come within the time for toilets.
  const needs: number[] = [];
  let next = leave;
  for (const node of nodes.toReversed()) {
    const food = node.kind === 'meal' ? course.food!.from - course.meal.parties[0]!.washed : 0;
    const start = Math.max(food, next - toiletWithin - lengthOf(course, node));
    needs.unshift(start);
    next = start + (node.kind === 'meal' ? latestFood(course) : 0);
  }
  let end = course.arrive;
  const chances = nodes.map((node, at): Chance => {
    const start = Math.max(needs[at]!, end + node.away);
    end = start + lengthOf(course, node);
    return { kind: node.kind, rounds: node.rounds, washed: node.washed, start };
  });
  return { chances, roundsBefore, leave };
}

/** From the start of a chance to its end for the first party, from where on the time without a toilet counts. */
function lengthOf(course: Course, { kind }: Pick<Node, 'kind'>): number {
  if (kind === 'meal') return course.meal.parties[0]!.eaten;
  return kind === 'welcome' ? course.toilets : course.pause;
}

/** From the start of a meal until its last party eats. */
function latestFood({ meal }: Course): number {
  return Math.max(...meal.parties.map(({ washed }) => washed));
}

/** Minutes from the end of a chance until all are at the taps with so many rounds done. */
function untilTaps({ course, hold }: Errand, node: Node, rounds: number): number {
  const lag = lagOf(course, hold, node);
  if (rounds === node.rounds) return lag + (node.kind === 'welcome' ? course.tapsWalk : 0);
  return lag + roundsFrom(course, node, rounds) + course.tapsWalk;
}

function untilWashed(errand: Errand, node: Node): number {
  if (node.washed) return 0;
  return untilTaps(errand, node, errand.course.rounds.length) + errand.course.wash.total;
}

/** Minutes from the end of a chance until the buses can leave, if there is none after it. */
function untilHome(errand: Errand, node: Node): number {
  const { course, hold } = errand;
  if (isSoiled(errand)) return untilWashed(errand, node) + course.tail;
  return lagOf(course, hold, node) + roundsFrom(course, node, course.rounds.length) + course.tail;
}

/** What passes at the place of a chance before all can go on. */
function lagOf({ meal }: Course, hold: number, { kind }: Node): number {
  if (kind === 'meal') return meal.total - meal.parties[0]!.eaten;
  return kind === 'welcome' ? hold : 0;
}

/** The rounds after a chance up to so many, with their walks. */
function roundsFrom(course: Course, { kind, rounds: done }: Node, rounds: number): number {
  if (rounds === done) return 0;
  const first = kind === 'welcome' ? 0 : course.fromTaps - course.change;
  return first + course.walked[rounds]! - course.walked[done]!;
}

/** Whether anybody leaves the clean zone after the last food, or at all where nobody eats. */
function isSoiled({ course, roundsBefore }: Errand): boolean {
  return course.soils.includes(true, course.food ? roundsBefore : 0);
}
