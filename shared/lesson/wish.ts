// What a teacher wishes for: grade, minutes, topics, place, number of children.
import type { Grade } from '../tasks/standards.ts';
import type { LessonStep, Place } from './types.ts';

/** What the bench puts a lesson together for. */
export interface Wish {
  readonly grade: Grade;
  /** Time there is, whole minutes from `LEAST_MIN` to `MOST_MIN`. */
  readonly minutes: number;
  readonly place: Place;
  /** Names of topics; none means that any will do. */
  readonly topics: readonly string[];
  /** Children in the class, 1 to `MOST_CHILDREN`. */
  readonly children: number;
}

/** The shortest and the longest time that can be wished for, minutes. */
export const LEAST_MIN = 5;
export const MOST_MIN = 240;
/** The largest class that materials are counted for. */
export const MOST_CHILDREN = 200;
/** Used where nothing else is said: a class period and a usual class. */
export const USUAL: Omit<Wish, 'grade'> = Object.freeze({
  minutes: 45,
  place: 'class',
  topics: Object.freeze([]),
  children: 24,
});

/** Whether a step is about one of the topics; with no topics named, none is. */
export function isOn(step: LessonStep, topics: readonly string[]): boolean {
  return step.topics.some((topic) => topics.includes(topic));
}
