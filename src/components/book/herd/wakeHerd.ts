// Wakes the page of the herd in the browser: until then it shows the herd as the site was built from it.
import { hydrate } from 'svelte';
import type { HerdProps } from './herd.ts';
import HerdRoom from './HerdRoom.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeHerd(page: Document): void {
  const target = page.querySelector('#herd-room');
  const carried = page.querySelector('#herd-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the herd lacks its room or its props.');
  hydrate(HerdRoom, { target, props: JSON.parse(carried) as HerdProps });
}
