// What the page of the Lesson bench hands to the bench.
import type { Paper } from '../sheet/pageMeasures.ts';
import type { Grade } from '../tasks/standards.ts';
import type { Words } from '../words/words.ts';
import type { Lesson } from './types.ts';

/** What the page hands to the bench and carries to the browser, as JSON. */
export interface BenchProps {
  /** All lessons of the language, in the order of bands and of a visit. */
  readonly lessons: readonly Lesson[];
  /** Grades that have a lesson, the youngest first. */
  readonly grades: readonly Grade[];
  readonly firstGrade: Grade;
  /** Title and address of each sheet that a step hands out, by its name. */
  readonly sheets: Readonly<Record<string, { readonly title: string; readonly href: string }>>;
  /** The address of the list of lessons; a lesson's page stands below it by its name. */
  readonly lessonsHref: string;
  readonly words: Words;
  readonly farm: string;
  /** The paper of the farm's country, for documents. */
  readonly paper: Paper;
}
