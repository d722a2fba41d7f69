// Wakes the pack's page in the browser: until then it says what it is and leads back to the trip.
import { hydrate } from 'svelte';
import type { PackProps } from '../../../../shared/trip/pack/bundle.ts';
import PackRoom from './PackRoom.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakePack(page: Document): void {
  const target = page.querySelector('#pack-room');
  const carried = page.querySelector('#pack-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the pack lacks its room or its props.');
  hydrate(PackRoom, { target, props: JSON.parse(carried) as PackProps });
}
