// Puts a lesson together: of all choices of steps that fit the time, the one with the best score.
import { allot } from './allot.ts';
import { inOrder } from './order.ts';
import type { PlannedStep, PoolStep } from './pool.ts';
import { compareScores, limitOf, scoreOf, type Score } from './score.ts';
import { searchLessons } from './search.ts';
import type { Lesson } from './types.ts';
import type { Wish } from './wish.ts';

/** From more lessons than this no lesson is put together: it would have no thread. */
export const MOST_LESSONS = 3;

/**
 * The best lesson from a pool: steps of at most `MOST_LESSONS` lessons, all held at the wished place, whose shortest
 * times fit into the minutes, with every `must` that belongs to them (see `wantingMusts`), of the highest `Score`;
 * in the order of `inOrder`, each with its minutes by `allot`. Empty where
 * no step between opening and closing fits. The search is exact: it
 * passes over only what cannot score higher. The same pool and wish give the same lesson.
 */
export function composeLesson(pool: readonly PoolStep[], wish: Wish): PlannedStep[] {
  const steps = inOrder(bestChoice(pool, wish));
  const minutes = allot(
    steps.map(({ step }) => step),
    wish.minutes,
  );
  return steps.map((one, index) => ({ ...one, minutes: minutes[index] ?? one.step.minutes }));
}

// Without a heart, whatever else there is, it is no lesson.
const NO_LESSON: Score = [0, Infinity, 0, 0, 0, 0, 0];

/** Goes through the sets of lessons, the most promising first. */
function bestChoice(pool: readonly PoolStep[], wish: Wish): readonly PoolStep[] {
  const lessons = [...new Set(pool.map(({ lesson }) => lesson))].filter(({ place }) => place === wish.place);
  const sets = setsOf(lessons).map((set) => {
    const steps = pool.filter(({ lesson }) => set.includes(lesson));
    return { steps, limit: limitOf(steps, wish) };
  });
  // Sorting keeps the order of equals, so that fewer and earlier lessons come first.
  sets.sort((a, b) => compareScores(b.limit, a.limit));
  let best: readonly PoolStep[] = [];
  let score = NO_LESSON;
  for (const { steps, limit } of sets) {
    if (compareScores(limit, score) <= 0) break;
    const found = searchLessons(steps, wish, score);
    if (found) [best, score] = [found, scoreOf(found, wish)];
  }
  return best;
}

/** All sets of one to `MOST_LESSONS` lessons, the smaller first. */
function setsOf(lessons: readonly Lesson[]): (readonly Lesson[])[] {
  let last: (readonly Lesson[])[] = [[]];
  const all: (readonly Lesson[])[] = [];
  for (let size = 1; size <= MOST_LESSONS; size += 1) {
    last = last.flatMap((set) => {
      const newest = set.at(-1);
      const from = newest ? lessons.indexOf(newest) + 1 : 0;
      return lessons.slice(from).map((lesson) => [...set, lesson]);
    });
    all.push(...last);
  }
  return all;
}
