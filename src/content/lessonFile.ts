// Reads one lesson of content/lessons: a head, and below it steps in MDX.
import type { Lesson } from '../../shared/lesson/types.ts';
import { TOPICS } from '../../shared/lesson/topics.ts';
import type { ContentFault } from './contentFault.ts';
import { readHead } from './frontMatter.ts';
import { headFaults, lessonShape } from './lessonHead.ts';
import type { LessonKnown, WrittenStep } from './lessonParts.ts';
import { readSteps } from './lessonSteps.ts';

/** A lesson in one language, as written: figures are still to be filled in. */
export interface LessonFile extends Omit<Lesson, 'steps'> {
  readonly file: string;
  readonly steps: readonly WrittenStep[];
  /** The line of a field of the head, for faults that are found later. */
  readonly lineOf: (path: readonly PropertyKey[]) => number;
}

/** A lesson, or everything that is wrong with it. */
export type LessonReading =
  | { readonly ok: true; readonly lesson: LessonFile }
  | { readonly ok: false; readonly faults: readonly ContentFault[] };

/** Reads one lesson. `file` is the name that faults are told by, `name` the lesson's own. */
export function readLessonFile(
  file: string,
  name: string,
  written: string,
  known: LessonKnown,
): LessonReading {
  const reading = readHead(file, written, lessonShape);
  if (!reading.ok) {
    const below = reading.body === null ? [] : readSteps(reading.body, reading.bodyLine, null, known).faults;
    return { ok: false, faults: [...reading.faults, ...below.map((one) => ({ file, ...one }))] };
  }
  const { head, body, bodyLine, lineOf } = reading;
  const { steps, faults: found } = readSteps(body, bodyLine, head.band, known);
  const faults: ContentFault[] = [
    ...headFaults(file, head, lineOf),
    ...found.map((one) => ({ file, ...one })),
  ];
  if (head.place === 'barn' && found.length === 0 && !steps.some(washesHands))
    faults.push({
      file,
      line: bodyLine,
      column: null,
      text: 'a lesson in the barn ends with washed hands: give one step the topic "hands" and the word must.',
    });
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    lesson: {
      ...head,
      file,
      name,
      minutes: steps.reduce((sum, step) => sum + step.minutes, 0),
      topics: TOPICS.filter((topic) => steps.some(({ topics }) => topics.includes(topic))),
      steps,
      lineOf,
    },
  };
}

const washesHands = ({ must, topics }: WrittenStep) => must && topics.includes('hands');
