// Lays a day on the clock: rounds, pauses for the toilets, washing, food, the way back; one line of time for all parties.
import type { Course } from './course.ts';
import type { SlotKind, Span } from './types.ts';

/** A span that all parties spend alike, or each in its turn. */
export interface Beat extends Span {
  readonly kind: Exclude<SlotKind, 'lunch'> | 'meal';
  /** Which round of stations it is, or leads to; -1 for none. */
  readonly round: number;
}

/** Minutes of waiting put before a chance to go to the toilet (0 is the one after the welcome), or after the welcome (-1). */
export interface Hold {
  readonly at: number;
  readonly minutes: number;
}

/** A laid day; it may break the food's window, the toilets' limit or the leaving, and says how far. */
export interface Laid {
  readonly beats: readonly Beat[];
  readonly roundsBefore: number;
  /** When the first party's food starts; null where nobody eats. */
  readonly food: number | null;
  /** The longest time between two chances to go to the toilet. */
  readonly longest: number;
  /** When the buses can leave. */
  readonly end: number;
  /** Minutes to spare before the way back, before any of them was filled. */
  readonly spare: number;
  /** Chances to go to the toilet. */
  readonly chances: number;
}

// What is laid so far.
interface Line {
  readonly course: Course;
  readonly beats: Beat[];
  readonly hold: Hold | null;
  now: number;
  /** End of the last chance to go to the toilet. */
  last: number;
  longest: number;
  chances: number;
  atTaps: boolean;
  soiled: boolean;
  food: number | null;
}

/**
 * The day with so many rounds before the food. Time to spare is put before the way back, up to the buses' leaving;
 * `leave` null lays the shortest day that there is.
 */
export function lay(
  course: Course,
  roundsBefore: number,
  leave: number | null,
  hold: Hold | null = null,
): Laid {
  const line: Line = {
    course,
    beats: [],
    hold,
    now: course.arrive,
    last: course.arrive,
    longest: 0,
    chances: 0,
    atTaps: false,
    soiled: false,
    food: null,
  };
  spend(line, 'unload', course.buses);
  spend(line, 'walk', course.gateWalk);
  spend(line, 'welcome', course.welcome);
  goToToilets(line, course.toilets);
  if (hold?.at === -1) spend(line, 'wait', hold.minutes);
  course.rounds.forEach((_, round) => {
    if (course.food && round === roundsBefore) eat(line, course.food);
    visit(line, round);
  });
  if (course.food && roundsBefore === course.rounds.length) eat(line, course.food);
  const spare = goHome(line, leave);
  const { beats, food, longest, now: end, chances } = line;
  return { beats, roundsBefore, food, longest, end, spare, chances };
}

function spend(line: Line, kind: Beat['kind'], minutes: number, round = -1): void {
  if (minutes <= 0) return;
  line.beats.push({ kind, from: line.now, to: line.now + minutes, round });
  line.now += minutes;
}

function goToToilets(line: Line, minutes: number): void {
  if (line.hold?.at === line.chances) spend(line, 'wait', line.hold.minutes);
  line.chances++;
  line.longest = Math.max(line.longest, line.now - line.last);
  spend(line, 'toilets', minutes);
  line.last = line.now;
}

function goToTaps(line: Line): void {
  if (!line.atTaps) spend(line, 'walk', line.course.tapsWalk);
  line.atTaps = true;
}

/** A round of stations, after a pause where the next chance for one would come too late. */
function visit(line: Line, round: number): void {
  const { course } = line;
  const minutes = course.rounds[round]!;
  const walk = line.atTaps ? course.fromTaps : course.change;
  const nextChance = line.now + walk + minutes + course.tapsWalk;
  if (nextChance - line.last > course.toiletWithin && line.now > line.last) {
    goToTaps(line);
    goToToilets(line, course.pause);
  }
  spend(line, 'walk', line.atTaps ? course.fromTaps : course.change, round);
  spend(line, 'station', minutes, round);
  line.atTaps = false;
  line.soiled ||= course.soils[round]!;
}

/** Washing and food, no sooner than it may start. The last party's food is the chance that counts, then the first one's end. */
function eat(line: Line, food: Span): void {
  const { meal } = line.course;
  const first = meal.parties[0]!;
  const latest = Math.max(...meal.parties.map(({ washed }) => washed));
  goToTaps(line);
  if (line.hold?.at === line.chances) spend(line, 'wait', line.hold.minutes);
  idle(line, food.from - first.washed, latest);
  line.chances++;
  line.longest = Math.max(line.longest, line.now + latest - line.last);
  line.food = line.now + first.washed;
  line.last = line.now + first.eaten;
  spend(line, 'meal', meal.total);
  line.soiled = false;
}

/** Waits until then, with a pause at the toilets wherever the next chance, so long after it, would come too late. */
function idle(line: Line, until: number, ahead: number): void {
  const { toiletWithin, pause } = line.course;
  for (;;) {
    const end = Math.max(line.now, until);
    const start = Math.max(line.now, Math.min(line.last + toiletWithin, until - pause));
    // A pause that would follow the last one at once helps nobody.
    if (end + ahead - line.last <= toiletWithin || start <= line.last)
      return spend(line, 'wait', end - line.now);
    spend(line, 'wait', start - line.now);
    goToToilets(line, pause);
  }
}

/** The last washing and the way back to the buses. Returns the minutes to spare before they were filled. */
function goHome(line: Line, leave: number | null): number {
  const { course } = line;
  const { tail, toiletWithin } = course;
  if (line.soiled) {
    goToTaps(line);
    const washed = line.now + course.wash.total;
    const helps = course.wash.total + tail <= toiletWithin && line.now > line.last;
    if (washed - line.last > toiletWithin || (helps && washed + tail - line.last > toiletWithin))
      goToToilets(line, course.pause);
    spend(line, 'wash', course.wash.total);
  }
  const until = leave === null ? line.now : leave - tail;
  const spare = until - line.now;
  if (Math.max(line.now, until) + tail - line.last > toiletWithin) goToTaps(line);
  idle(line, until, tail);
  line.longest = Math.max(line.longest, line.now + tail - line.last);
  spend(line, 'walk', course.gateWalk);
  spend(line, 'load', course.buses);
  spend(line, 'wait', tail - course.gateWalk - course.buses);
  return spare;
}
