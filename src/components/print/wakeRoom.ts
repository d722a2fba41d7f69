// Wakes the print room in the browser: until then its page lists the sheets, each with a page of its own to print.
import { hydrate } from 'svelte';
import PrintRoom from './PrintRoom.svelte';
import type { RoomProps } from './room.ts';

/** Takes over the built page with the same props that it was built from. */
export function wakeRoom(page: Document): void {
  const target = page.querySelector('#print-room');
  const carried = page.querySelector('#room-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the print room lacks its room or its props.');
  hydrate(PrintRoom, { target, props: JSON.parse(carried) as RoomProps });
}
