// What a lesson is: its head, and its steps with minutes, text for the class and notes for the teacher.
import type { Band } from '../quantity/grade.ts';

/** Where a lesson is held: in class before the visit, in the barn, in class after it. */
export type Place = 'class' | 'barn' | 'after';
/** All places, in the order of a visit. */
export const PLACES: readonly Place[] = Object.freeze(['class', 'barn', 'after']);

/** What a step is, which also says where in a lesson it belongs: open, talk, look, do, sheet, close. */
export type StepKind = 'open' | 'talk' | 'look' | 'do' | 'sheet' | 'close';
/** All kinds of step, in the order of a lesson. */
export const STEP_KINDS: readonly StepKind[] = Object.freeze([
  'open',
  'talk',
  'look',
  'do',
  'sheet',
  'close',
]);

/** A run of text: plain, or strong, or emphasised. Figures are filled in. */
export interface Run {
  readonly text: string;
  readonly strong?: true;
  readonly emphasis?: true;
}

/** A block of a step's text. `note` is for the teacher; all else is said or read to the class. */
export type Block =
  | { readonly is: 'paragraph'; readonly runs: readonly Run[] }
  | { readonly is: 'list'; readonly ordered: boolean; readonly lines: readonly (readonly Run[])[] }
  | { readonly is: 'note'; readonly runs: readonly Run[] };

/** A step of a lesson. */
export interface LessonStep {
  /** `LESSON.NAME`, unique among all lessons; the part after the point is its name in the file. */
  readonly id: string;
  readonly title: string;
  readonly kind: StepKind;
  /** Usual, shortest and longest time, minutes. */
  readonly minutes: number;
  readonly least: number;
  readonly most: number;
  /** What it is about: names under `lesson.topic`. */
  readonly topics: readonly string[];
  /** Whether a lesson without it makes no sense (washing hands after the animals). */
  readonly must: boolean;
  /** The sheet that it hands out, by its name in content/sheets. */
  readonly sheet: string | null;
  readonly blocks: readonly Block[];
  /** Its text as written, for a lesson that is put together anew. */
  readonly source: string;
}

/** Something to have at hand: so many for each child, each group of so many, or the class. */
export interface Material {
  readonly what: string;
  readonly count: number;
  readonly per: 'child' | 'group' | 'class';
  /** Children in a group; null where it is per child or class. */
  readonly groupOf: number | null;
}

/** A lesson in one language. */
export interface Lesson {
  readonly name: string;
  readonly title: string;
  readonly band: Band;
  readonly place: Place;
  /** Sum of its steps' usual times, minutes. */
  readonly minutes: number;
  readonly aims: readonly string[];
  readonly standards: readonly string[];
  readonly topics: readonly string[];
  /** Words to know and what each means, in the words of the band. */
  readonly words: readonly { readonly word: string; readonly means: string }[];
  readonly materials: readonly Material[];
  /** Names under `lesson.caution`. */
  readonly cautions: readonly string[];
  readonly steps: readonly LessonStep[];
}
