// Wakes the calendar in the browser: until then it shows when the farm is taken.
import { hydrate } from 'svelte';
import type { VisitsProps } from '../../../shared/trip/visits/visitsProps.ts';
import VisitsRoom from './VisitsRoom.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeVisits(page: Document): void {
  const target = page.querySelector('#visits-room');
  const carried = page.querySelector('#visits-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the visits lacks its room or its props.');
  hydrate(VisitsRoom, { target, props: JSON.parse(carried) as VisitsProps });
}
