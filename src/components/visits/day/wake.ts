// Wakes the sheet of a day in the browser: until then it shows when the farm is taken.
import { hydrate } from 'svelte';
import type { DayProps } from '../../../../shared/trip/visits/visitsProps.ts';
import DayRoom from './DayRoom.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeDay(page: Document): void {
  const target = page.querySelector('#day-room');
  const carried = page.querySelector('#day-props')?.textContent;
  if (!target || !carried) throw new Error("The page of the day's sheet lacks its room or its props.");
  hydrate(DayRoom, { target, props: JSON.parse(carried) as DayProps });
}
