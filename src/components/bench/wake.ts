// Wakes the Lesson bench in the browser: the built page stands as a plan until then.
import { hydrate } from 'svelte';
import type { BenchProps } from '../../../shared/lesson/benchProps.ts';
import Bench from './Bench.svelte';

/** Takes over the built bench with the same props that it was built from. */
export function wakeBench(page: Document): void {
  const target = page.querySelector('#bench');
  const carried = page.querySelector('#bench-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the bench lacks its bench or its props.');
  hydrate(Bench, { target, props: JSON.parse(carried) as BenchProps });
}
