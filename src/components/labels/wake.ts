// Wakes the page of jar labels in the browser: until then it stands as it was built.
import { hydrate } from 'svelte';
import LabelRoom from './LabelRoom.svelte';
import type { LabelProps } from './labelProps.ts';

/** Takes over the built page with the same props that it was built from. */
export function wakeLabels(page: Document): void {
  const target = page.querySelector('#label-room');
  const carried = page.querySelector('#label-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the labels lacks its room or its props.');
  hydrate(LabelRoom, { target, props: JSON.parse(carried) as LabelProps });
}
