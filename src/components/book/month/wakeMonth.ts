// Wakes the page of the month in the browser: until then it shows the month that it was built with.
import { hydrate } from 'svelte';
import type { MonthProps } from './month.ts';
import MonthPage from './MonthPage.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeMonth(page: Document): void {
  const target = page.querySelector('#month-room');
  const carried = page.querySelector('#month-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the month lacks its room or its props.');
  hydrate(MonthPage, { target, props: JSON.parse(carried) as MonthProps });
}
