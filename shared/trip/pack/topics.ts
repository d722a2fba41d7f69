// What a day at the farm is about, and which lessons and sheets are nearest to it.
import type { Lesson, Place } from '../../lesson/types.ts';
import { sheetsFor, type Shelf, type ShelfSheet } from '../../pack/order.ts';
import type { Band } from '../../quantity/grade.ts';
import type { NoMilking, Station } from '../types.ts';

/** Topics with their weight; names are those of `shared/lesson/topics.ts`. */
export type TopicWeights = Readonly<Record<string, number>>;

// What children meet at the stations that Pailside brings along; a farm's own are known by what they are.
const OF_STATION: Readonly<Record<string, readonly string[]>> = {
  'milking-stand': ['milk', 'body'],
  'goat-barn': ['herd', 'body'],
  'kid-pen': ['kids'],
  'pasture-rail': ['herd', 'feed'],
  'hay-loft': ['feed'],
  'hoof-and-coat': ['body', 'herd'],
  'barn-board': ['numbers', 'herd'],
  'measuring-table': ['numbers', 'milk'],
  'practice-stand': ['milk', 'body'],
  'kid-table': ['kids', 'numbers'],
  'kitchen-window': ['kitchen', 'milk'],
};

/** The sheet of each band that asks from memory what was seen weeks ago. */
const RECALL: Readonly<Record<Band, string>> = {
  'k-2': 'do-you-remember',
  '3-5': 'milk-from-memory',
  '6-8': 'the-week-from-memory',
  '9-12': 'three-weeks-later',
};

/** As heavy as two stations: where no doe gives milk, the year is what the day is about. */
const YEAR_WEIGHT = 2;

function topicsOf({ id, milking, kidding, touch, zone }: Station): readonly string[] {
  const known = OF_STATION[id];
  if (known) return known;
  if (milking) return ['milk', 'body'];
  if (kidding) return ['kids'];
  if (touch) return ['body', 'herd'];
  return zone === 'animal' ? ['herd'] : ['numbers'];
}

/**
 * What a day's stations are about, each station with the weight 1, the topic that it names first counting twice as much as
 * the second. Where no doe is milked, the year takes the place of milk.
 */
export function dayTopics(stations: readonly Station[], noMilking: NoMilking | null): TopicWeights {
  const weights: Record<string, number> = {};
  const add = (topic: string, weight: number) => (weights[topic] = (weights[topic] ?? 0) + weight);
  for (const station of stations)
    topicsOf(station).forEach((topic, place) => add(topic, place === 0 ? 2 / 3 : 1 / 3));
  if (noMilking === null) return weights;
  // Most numbers on this farm are of its milk, and there is none to see.
  return { ...weights, milk: 0, numbers: (weights['numbers'] ?? 0) / 2, year: YEAR_WEIGHT };
}

/** How near a lesson is to a day: the mean weight of its topics, by the minutes of its steps. */
export function nearness(lesson: Lesson, weights: TopicWeights): number {
  const sum = lesson.steps.reduce((total, { minutes, topics }) => total + minutes * meanWeight(topics, weights), 0); // prettier-ignore
  return lesson.minutes > 0 ? sum / lesson.minutes : 0;
}

function meanWeight(topics: readonly string[], weights: TopicWeights): number {
  const sum = topics.reduce((total, topic) => total + (weights[topic] ?? 0), 0);
  return topics.length > 0 ? sum / topics.length : 0;
}

/** The lesson of a band and place that is nearest to a day; the first of equals, null where there is none. */
export function lessonFor(
  lessons: readonly Lesson[],
  band: Band,
  place: Place,
  weights: TopicWeights,
): Lesson | null {
  const own = lessons.filter((lesson) => lesson.band === band && lesson.place === place);
  return best(own, (lesson) => nearness(lesson, weights));
}

/** What a pack takes from the shelves: lesson before and after, sheets for the day with the nearest first, and the recall sheet. */
export interface Handouts {
  readonly before: Lesson | null;
  readonly after: Lesson | null;
  readonly at: readonly ShelfSheet[];
  readonly recall: ShelfSheet | null;
}

/** The handouts of a band in a language that are nearest to a day. */
export function handoutsFor(
  lessons: readonly Lesson[],
  shelf: Shelf,
  band: Band,
  lang: string,
  weights: TopicWeights,
): Handouts {
  const ready = sheetsFor(shelf, band, lang);
  // A sheet is about what the step of a lesson is about that hands it out.
  const steps = lessons.filter((lesson) => lesson.band === band).flatMap((lesson) => lesson.steps);
  const weightOf = ({ name }: ShelfSheet) =>
    meanWeight(steps.find(({ sheet }) => sheet === name)?.topics ?? [], weights);
  const at = ready.filter(({ when }) => when === 'at');
  return {
    before: lessonFor(lessons, band, 'class', weights),
    after: lessonFor(lessons, band, 'after', weights),
    at: [...at].sort((a, b) => weightOf(b) - weightOf(a)),
    recall: ready.find(({ name }) => name === RECALL[band]) ?? null,
  };
}

function best<T>(all: readonly T[], scoreOf: (one: T) => number): T | null {
  let found: T | null = null;
  let score = -Infinity;
  for (const one of all) {
    const own = scoreOf(one);
    if (own > score) [found, score] = [one, own];
  }
  return found;
}
