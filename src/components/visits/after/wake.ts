// Wakes the page of a class's data sheets in the browser.
import { hydrate } from 'svelte';
import type { AfterProps } from '../../../../shared/trip/visits/after/afterProps.ts';
import AfterRoom from './AfterRoom.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeAfter(page: Document): void {
  const target = page.querySelector('#after-room');
  const carried = page.querySelector('#after-props')?.textContent;
  if (!target || !carried) throw new Error('The page after the visit lacks its room or its props.');
  hydrate(AfterRoom, { target, props: JSON.parse(carried) as AfterProps });
}
