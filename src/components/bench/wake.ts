// Wakes the Lesson bench in the browser: the built page stands as a plan until then.
import { hydrate } from 'svelte';
import type { Lesson } from '../../../shared/lesson/types.ts';
import type { Paper } from '../../../shared/sheet/pageMeasures.ts';
import type { Grade } from '../../../shared/tasks/standards.ts';
import type { Words } from '../../../shared/words/words.ts';
import Bench from './Bench.svelte';

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

/** Takes over the built bench with the same props that it was built from. */
export function wakeBench(page: Document): void {
  const target = page.querySelector('#bench');
  const carried = page.querySelector('#bench-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the bench lacks its bench or its props.');
  hydrate(Bench, { target, props: JSON.parse(carried) as BenchProps });
}
