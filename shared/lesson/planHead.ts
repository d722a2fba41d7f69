// What a lesson on the bench says of itself: aims, standards, materials, words and cautions of what is in.
import { materialsFor, type Needed } from './materials.ts';
import type { PlannedStep } from './pool.ts';
import type { Lesson, Material, Place } from './types.ts';

/** Aims, standards, materials, words and cautions of the lessons whose steps are in. */
export interface PlanHead {
  readonly lessons: readonly Lesson[];
  readonly aims: readonly string[];
  readonly standards: readonly string[];
  readonly words: Lesson['words'];
  readonly materials: readonly Material[];
  readonly needed: readonly Needed[];
  readonly cautions: readonly string[];
  readonly topics: readonly string[];
}

/**
 * What the steps add up to for so many children. Materials, words and cautions are those of every lesson that a step
 * comes from; in the barn there is always the caution to wash hands. Aims and standards are claimed only for lessons of
 * which at least half (by usual minutes) is in, or, where there is none, for the one of which the most is in.
 */
export function planHead(steps: readonly PlannedStep[], children: number, place: Place): PlanHead {
  const lessons = [...new Set(steps.map(({ lesson }) => lesson))];
  const taught = lessonsTaught(lessons, steps);
  const materials = lessons.flatMap((one) => one.materials);
  const words = lessons.flatMap((one) => one.words);
  return {
    lessons,
    aims: once(taught.flatMap(({ aims }) => aims)),
    standards: once(taught.flatMap(({ standards }) => standards)),
    words: words.filter(
      ({ word }, index) => words.findIndex((one) => one.word.toLowerCase() === word.toLowerCase()) === index,
    ),
    materials,
    needed: materialsFor(materials, children),
    cautions: once([...(place === 'barn' ? ['wash'] : []), ...lessons.flatMap(({ cautions }) => cautions)]),
    topics: once(steps.flatMap(({ step }) => step.topics)),
  };
}

function lessonsTaught(lessons: readonly Lesson[], steps: readonly PlannedStep[]): readonly Lesson[] {
  const shareOf = (lesson: Lesson) => {
    const own = steps.filter((one) => one.lesson === lesson).reduce((sum, { step }) => sum + step.minutes, 0);
    const whole = lesson.steps.reduce((sum, { minutes }) => sum + minutes, 0);
    return own / whole;
  };
  const taught = lessons.filter((lesson) => shareOf(lesson) >= 0.5);
  if (taught.length > 0) return taught;
  return [...lessons].sort((a, b) => shareOf(b) - shareOf(a)).slice(0, 1);
}

const once = <T>(all: readonly T[]): T[] => [...new Set(all)];

/** Whether a lesson in the barn has no step that must be done and is about clean hands. */
export function washIsMissing(steps: readonly PlannedStep[], place: Place): boolean {
  return place === 'barn' && !steps.some(({ step }) => step.must && step.topics.includes('hands'));
}
