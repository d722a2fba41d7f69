// Wakes the desk's page in the browser: until then it says that the desk is being asked.
import { hydrate } from 'svelte';
import DeskRoom from './DeskRoom.svelte';
import type { DeskProps } from './deskProps.ts';

/** Takes over the built page with the same props that it was built from. */
export function wakeDesk(page: Document): void {
  const target = page.querySelector('#desk-room');
  const carried = page.querySelector('#desk-props')?.textContent;
  if (!target || !carried) throw new Error("The desk's page lacks its room or its props.");
  hydrate(DeskRoom, { target, props: JSON.parse(carried) as DeskProps });
}
