// Lays a day on the clock along its route: one line of time for all parties, since they change station together.
import type { Course } from './course.ts';
import type { Route } from './route.ts';
import type { SlotKind, Span } from './types.ts';

/** A span that all parties spend alike, or each in its turn (`meal`, `wash`). */
export interface Beat extends Span {
  readonly kind: Exclude<SlotKind, 'lunch'> | 'meal';
  /** Which round of stations it is, or leads to; -1 for none. */
  readonly round: number;
}

// What is laid so far.
interface Line {
  readonly course: Course;
  readonly beats: Beat[];
  now: number;
  rounds: number;
  atTaps: boolean;
  soiled: boolean;
}

/** The beats of a route from arriving to leaving, with waiting before chances and before the way back. */
export function lay(course: Course, route: Route, hold: number): Beat[] {
  const line: Line = { course, beats: [], now: course.arrive, rounds: 0, atTaps: false, soiled: false };
  spend(line, 'unload', course.buses);
  spend(line, 'walk', course.gateWalk);
  spend(line, 'welcome', course.welcome);
  for (const { kind, rounds, washed, start } of route.chances) {
    if (kind !== 'welcome') {
      visit(line, rounds);
      goToTaps(line);
      if (washed) wash(line);
    }
    spend(line, 'wait', start - line.now);
    if (kind === 'meal') eat(line);
    else spend(line, 'toilets', kind === 'welcome' ? course.toilets : course.pause);
    if (kind === 'welcome') spend(line, 'wait', hold);
  }
  visit(line, course.rounds.length);
  wash(line);
  spend(line, 'wait', route.leave - course.tail - line.now);
  spend(line, 'walk', course.gateWalk);
  spend(line, 'load', course.buses);
  spend(line, 'wait', route.leave - line.now);
  return line.beats;
}

function spend(line: Line, kind: Beat['kind'], minutes: number, round = -1): void {
  if (minutes <= 0) return;
  line.beats.push({ kind, from: line.now, to: line.now + minutes, round });
  line.now += minutes;
}

/** The rounds up to so many in all. */
function visit(line: Line, rounds: number): void {
  const { course } = line;
  for (; line.rounds < rounds; line.rounds++) {
    spend(line, 'walk', line.atTaps ? course.fromTaps : course.change, line.rounds);
    spend(line, 'station', course.rounds[line.rounds]!, line.rounds);
    line.atTaps = false;
    line.soiled ||= course.soils[line.rounds]!;
  }
}

function goToTaps(line: Line): void {
  if (!line.atTaps) spend(line, 'walk', line.course.tapsWalk);
  line.atTaps = true;
}

function eat(line: Line): void {
  spend(line, 'meal', line.course.meal.total);
  line.soiled = false;
}

/** The last washing, for whoever was outside the clean zone. */
function wash(line: Line): void {
  if (!line.soiled) return;
  goToTaps(line);
  spend(line, 'wash', line.course.wash.total);
  line.soiled = false;
}
