// Lessons made up for tests: a few by hand, and random ones.
import fc from 'fast-check';
import { TOPICS } from '../../shared/lesson/topics.ts';
import { PLACES, STEP_KINDS, type Lesson, type LessonStep } from '../../shared/lesson/types.ts';
import { USUAL, type Wish } from '../../shared/lesson/wish.ts';
import type { Grade } from '../../shared/tasks/standards.ts';

/** A step of 5 to 15 minutes, usually 10, about milk, where nothing else is said. */
export function stepOf(id: string, parts: Partial<LessonStep> = {}): LessonStep {
  const text = `Text of ${id}.`;
  return {
    id,
    title: `Title of ${id}`,
    kind: 'talk',
    minutes: 10,
    least: 5,
    most: 15,
    topics: ['milk'],
    must: false,
    sheet: null,
    blocks: [{ is: 'paragraph', runs: [{ text }] }],
    source: text,
    ...parts,
  };
}

/** A lesson of such steps, by the names of its steps; for K-2 in class where nothing else is said. */
export function lessonOf(
  name: string,
  steps: Readonly<Record<string, Partial<LessonStep>>>,
  parts: Partial<Lesson> = {},
): Lesson {
  const own = Object.entries(steps).map(([step, more]) => stepOf(`${name}.${step}`, more));
  return {
    name,
    title: `Lesson ${name}`,
    band: 'k-2',
    place: 'class',
    minutes: own.reduce((sum, { minutes }) => sum + minutes, 0),
    aims: [`Aim of ${name}.`],
    standards: [],
    topics: TOPICS.filter((topic) => own.some(({ topics }) => topics.includes(topic))),
    words: [],
    materials: [],
    cautions: [],
    ...parts,
    steps: own,
  };
}

/** A wish of a second grade for what is usual. */
export function wishOf(parts: Partial<Wish> = {}): Wish {
  return { ...USUAL, grade: 2, ...parts };
}

const anyStep = fc
  .record({
    kind: fc.constantFrom(...STEP_KINDS),
    times: fc.tuple(fc.integer({ min: 1, max: 12 }), fc.nat(6), fc.nat(8)),
    topics: fc.subarray(TOPICS.slice(0, 4), { maxLength: 2 }),
    must: fc.nat(5).map((one) => one === 0),
  })
  .map(({ kind, times: [least, more, most], topics, must }) => ({
    kind,
    least,
    minutes: least + more,
    most: least + more + most,
    topics,
    must,
  }));

/** Lessons for K-2 at any place, of a few random steps each; at least half as many of either as the most. */
export function anyLessons(most: { lessons: number; steps: number }): fc.Arbitrary<Lesson[]> {
  const atLeast = (number: number) => Math.floor(number / 2);
  const lesson = fc.record({
    steps: fc.array(anyStep, { minLength: atLeast(most.steps), maxLength: most.steps, size: 'max' }),
    // Most are held at one place, so that there is something to choose from.
    place: fc.constantFrom('class' as const, 'class' as const, 'class' as const, ...PLACES),
  });
  return fc
    .array(lesson, { minLength: atLeast(most.lessons), maxLength: most.lessons, size: 'max' })
    .map((all) =>
      all.map(({ steps, place }, index) =>
        lessonOf(`lesson-${index + 1}`, Object.fromEntries(steps.map((step, at) => [`s${at + 1}`, step])), {
          place,
        }),
      ),
    );
}

/** Any wish of K-2 for such lessons. */
export const anyWish: fc.Arbitrary<Wish> = fc.record({
  grade: fc.constantFrom<Grade[]>(0, 1, 2),
  minutes: fc.integer({ min: 5, max: 60 }),
  place: fc.constant('class' as const),
  topics: fc.subarray(TOPICS.slice(0, 4), { maxLength: 2 }),
  children: fc.integer({ min: 1, max: 60 }),
});
