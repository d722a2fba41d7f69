// Wakes the page of the milking routine in the browser: until then its steps can be read, and not ticked.
import { hydrate } from 'svelte';
import RoutineRoom from './RoutineRoom.svelte';
import type { RoutineProps } from './routineProps.ts';

/** Takes over the built page with the same props that it was built from. */
export function wakeRoutine(page: Document): void {
  const target = page.querySelector('#routine-room');
  const carried = page.querySelector('#routine-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the routine lacks its room or its props.');
  hydrate(RoutineRoom, { target, props: JSON.parse(carried) as RoutineProps });
}
